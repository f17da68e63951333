using System.Runtime.CompilerServices;

namespace SplitBatch.Cli.House;

/// <summary>
/// Every sentence that the tool can print is written down, so that a new one is read before it is printed. To take a change over, run this
/// test with SPLITBATCH_ACCEPT=1, and read the difference as an editor before committing it.
/// </summary>
public class SentencesTests
{
    [Fact]
    public void Every_sentence_is_one_that_was_read()
    {
        var now = string.Join("\n", SourceTexts.Sentences().Distinct().GroupBy(found => found.Room).OrderBy(room => room.Key, StringComparer.Ordinal)
            .Select(room => $"## {room.Key}\n\n{string.Join('\n', room.Select(found => found.Text).Order(StringComparer.Ordinal))}\n"));
        var file = Path.Combine(Path.GetDirectoryName(Here())!, "Sentences.approved.txt");
        if (Environment.GetEnvironmentVariable("SPLITBATCH_ACCEPT") == "1") File.WriteAllText(file, now);
        var read = File.Exists(file) ? File.ReadAllText(file).ReplaceLineEndings("\n") : "";
        string[] lost = [.. read.Split('\n').Except(now.Split('\n'))], added = [.. now.Split('\n').Except(read.Split('\n'))];
        Assert.True(read == now, $"The sentences differ from {Path.GetFileName(file)}.\nNew:\n{string.Join('\n', added)}\nGone:\n{string.Join('\n', lost)}");
    }

    /// <summary>Words that a native editor struck out once are not to come back.</summary>
    [Theory]
    [InlineData(@"power saws|curve saws")]
    [InlineData("the other way about")]
    [InlineData("With which chance|with which chance")]
    [InlineData("belongs? into")]
    [InlineData("foretold|foretell")]
    [InlineData(@"\bAsked (?:is|are)\b")]
    [InlineData("one and the same beer")]
    [InlineData(@"\bB less A\b|\bA less B\b")]
    [InlineData(@"(?<![\w\d.:/-])-\d+(?:\.\d+)? (?:IBU|BU|°C|°F|%|m|g|L)\b")]
    public void Phrases_that_were_struck_out_stay_out(string pattern) => Assert.Empty(
        SourceTexts.Sentences().Where(found => System.Text.RegularExpressions.Regex.IsMatch(found.Text, pattern, System.Text.RegularExpressions.RegexOptions.None, TimeSpan.FromSeconds(5)))
            .Select(found => $"{found.Room}: {found.Text}"));

    private static string Here([CallerFilePath] string path = "") => path;
}
