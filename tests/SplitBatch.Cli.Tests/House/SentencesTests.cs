using System.Text.RegularExpressions;

namespace SplitBatch.Cli.House;

/// <summary>
/// Every sentence that the tool can print, and every one that stands in a notebook, in one file that was read line by line. A changed
/// sentence fails until it is taken over with SPLITBATCH_ACCEPT=1 and the difference read.
/// </summary>
public class SentencesTests
{
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
        SourceTexts.Sentences().Where(found => Regex.IsMatch(found.Text, pattern, RegexOptions.None, TimeSpan.FromSeconds(5)))
            .Select(found => $"{found.Room}: {found.Text}"));

    [Fact]
    public void Every_sentence_is_one_that_was_read()
    {
        var file = Repository.Path("tests", "SplitBatch.Cli.Tests", "House", "Sentences.approved.txt");
        var now = SourceTexts.Sentences().GroupBy(found => found.Room, found => found.Text)
            .OrderBy(room => room.Key, StringComparer.Ordinal)
            .Select(room => string.Join('\n',
                room.Distinct().Order(StringComparer.Ordinal).Select(text => "    " + text).Prepend(room.Key)));
        var text = string.Join("\n\n", now) + "\n";
        if (Environment.GetEnvironmentVariable("SPLITBATCH_ACCEPT") == "1") File.WriteAllText(file, text);
        var read = File.ReadLines(file).ToHashSet();
        Assert.All(text.Split('\n'), line => Assert.Contains(line, read));
        Assert.Equal(File.ReadAllText(file), text);
    }
}
