using System.Reflection;
using System.Runtime.CompilerServices;
using PublicApiGenerator;

namespace SplitBatch.Cli.House;

/// <summary>
/// What notebooks can call is written down, so that a new or lost public member shows in review. To take a change over, run this test with
/// SPLITBATCH_ACCEPT=1 and look at the difference before committing it.
/// </summary>
public class PublicApiTests
{
    [Theory]
    [InlineData("SplitBatch")]
    [InlineData("SplitBatch.Display")]
    public void Public_members_are_those_that_were_reviewed(string assembly)
    {
        var options = new ApiGeneratorOptions
        {
            IncludeAssemblyAttributes = false,
            ExcludeAttributes = ["System.Runtime.CompilerServices.NullableContextAttribute",
                "System.Runtime.CompilerServices.NullableAttribute", "System.Diagnostics.CodeAnalysis.RequiresUnreferencedCodeAttribute"],
        };
        string now = Assembly.Load(assembly).GeneratePublicApi(options).ReplaceLineEndings("\n");
        string file = Path.Combine(Path.GetDirectoryName(Here())!, $"{assembly}.api.txt");
        if (Environment.GetEnvironmentVariable("SPLITBATCH_ACCEPT") == "1") File.WriteAllText(file, now);
        string reviewed = File.Exists(file) ? File.ReadAllText(file).ReplaceLineEndings("\n") : "";
        string[] lost = [.. reviewed.Split('\n').Except(now.Split('\n'))], added = [.. now.Split('\n').Except(reviewed.Split('\n'))];
        Assert.True(reviewed == now, $"The public members of {assembly} differ from "
            + $"{Path.GetFileName(file)}.\nNew:\n{string.Join('\n', added)}\nGone:\n{string.Join('\n', lost)}");
    }

    private static string Here([CallerFilePath] string path = "") => path;
}
