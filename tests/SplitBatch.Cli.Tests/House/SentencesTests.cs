using System.Text.RegularExpressions;

namespace SplitBatch.Cli.House;

/// <summary>Phrases that were struck out of the texts that a user can read.</summary>
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
}
