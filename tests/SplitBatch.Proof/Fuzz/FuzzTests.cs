namespace SplitBatch.Proof.Fuzz;

/// <summary>The short fuzz runs; the long one is recorded beside this project. Every find of a long run is a seed here.</summary>
[Collection("fuzz")]
public class FuzzTests
{
    [Theory]
    [InlineData("trial folder", 600)]
    [InlineData("notebook runner", 1000)]
    [InlineData("command line", 120)]
    [InlineData("Jupyter socket", 1500)]
    public async Task Spoilt_input_is_answered_and_never_breaks_anything(string target, int cases)
    {
        var finds = await FuzzRun.OneAsync(target, Enumerable.Range(1, cases), TimeSpan.FromSeconds(120));
        Assert.True(finds.Count == 0, string.Join('\n', finds));
    }
}

/// <summary>
/// The command line is tried in a current folder of its own, of which a process has only one, so nothing else runs beside.
/// </summary>
[CollectionDefinition("fuzz", DisableParallelization = true)]
public sealed class FuzzAlone;
