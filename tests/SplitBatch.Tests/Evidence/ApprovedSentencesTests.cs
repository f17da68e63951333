using System.Runtime.CompilerServices;

namespace SplitBatch.Evidence;

/// <summary>
/// Whole sentences against the approved files. To take a change of wording over, run these tests with SPLITBATCH_ACCEPT=1, and read the
/// difference sentence by sentence before committing it.
/// </summary>
public class ApprovedSentencesTests
{
    public static TheoryData<string> Files => [.. SentenceGrid.Files.Keys];

    [Theory]
    [MemberData(nameof(Files))]
    public void Every_sentence_is_as_approved(string name)
    {
        var file = Path.Combine(Folder(), $"{name}.approved.txt");
        var text = string.Concat(SentenceGrid.Files[name].Select(one => one.Say()));
        if (Environment.GetEnvironmentVariable("SPLITBATCH_ACCEPT") == "1") File.WriteAllText(file, text);
        string[] approved = File.Exists(file) ? File.ReadAllLines(file) : [], now = text.TrimEnd('\n').Split('\n');
        var changed = Enumerable.Range(0, Math.Max(approved.Length, now.Length))
            .FirstOrDefault(i => approved.ElementAtOrDefault(i) != now.ElementAtOrDefault(i), -1);
        Assert.True(approved.AsSpan().TrimEnd("").SequenceEqual(now.AsSpan().TrimEnd("")),
            $"{name}.approved.txt, line {changed + 1}:\napproved: {approved.ElementAtOrDefault(changed)}\nnow:      "
                + $"{now.ElementAtOrDefault(changed)}");
    }

    [Fact]
    public void No_headline_is_longer_than_sixty_words() =>
        Assert.All(HeadlineCases.All().Select(one => Verdict.Of(one.Evidence).Headline),
            headline => Assert.True(headline.Split(' ').Length <= 60, headline));

    private static string Folder([CallerFilePath] string here = "") => Path.GetDirectoryName(here)!;
}
