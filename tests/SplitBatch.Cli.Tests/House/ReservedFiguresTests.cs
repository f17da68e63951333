using System.Text.RegularExpressions;

namespace SplitBatch.Cli.House;

/// <summary>
/// Some figures are check values from common practice without a source. They may stand in classes called CommonPracticeTests and nowhere
/// else: no example, exercise, text or reference script is built on them.
/// </summary>
public partial class ReservedFiguresTests
{
    private static readonly string[] Texts = [".cs", ".md", ".json", ".csv", ".ipynb", ".R", ".py", ".mjs", ".java", ".props", ".csproj",
        ".svg", ".txt"];

    /// <summary>Each figure with the words that it stands among, so that the same digits elsewhere are left alone.</summary>
    public static TheoryData<string, string> Figures => new()
    {
        { "a panel of twenty with seven right",
            @"(?i)\b(?:7|seven)(?: right)?(?: out)? of(?: the)? (?:20|twenty)\b|tasters: ?20, ?correct: ?7\b|\b20, ?7\b(?=[,)])" },
        { "two people with five sets each",
            @"(?i)\b(?:8|eight)(?: right)?(?: out)? of (?:the )?(?:10|ten)\b|"
                + @"\b5, ?(?:Correct: ?)?5\), ?new\((?:Sets: ?)?5, ?(?:Correct: ?)?3\)|two friends" },
        { "an alpha acid", @"(?<![\d.,])4[.,]7 ?%(?! of their mean)|(?:alphaPercent: ?|FromPercent\(|""cones"", ?)4\.7\b|"
            + @"(?<![\d.,])0[.,]047(?!\d)" },
        { "two weights", @"(?<![\d.,])(?:64|24)(?:\.0)? ?g\b|FromGrams\((?:64|24)\)" },
        { "a strong hop", @"(?i)(?:alpha|cone|pellet|hop).{0,60}(?<![\d.,])12[.,]5 ?%|(?<![\d.,])12[.,]5 ?%.{0,60}(?:alpha|cone|pellet|"
            + @"hop)|alphaPercent: ?12\.5\b" },
        { "two lab values", @"(?<![\d.,])25(?:[.,]0)?(?![\d.,]\d|\d).{0,40}(?<![\d.,])21[.,]5(?!\d)|"
            + @"(?<![\d.,])21[.,]5(?!\d).{0,40}(?<![\d.,])25(?:[.,]0)?(?![.,]\d|\d)" },
        { "a house's beers", @"new\(""[^""]*"", ?40, ?(?:25|21\.5)\)|new\(""[^""]*"", ?24, ?[79]\)|\b(?:25|21\.5) ?/ ?40\b|"
            + @"\b[79] ?/ ?24\b" },
        { "a stated precision", @"(?<![\d.,])4[.,]3 ?(?:to|–|-|, ""up to [^""]*"":) ?10\b|Percent\(4\.3, ?10\)" },
    };

    [Theory]
    [MemberData(nameof(Figures))]
    public void A_reserved_figure_stands_only_among_check_values(string figure, string pattern)
    {
        var search = new Regex(pattern, RegexOptions.None, TimeSpan.FromSeconds(10));
        var found =
            from file in Files()
            from line in File.ReadLines(file).Index()
            let text = Markup().Replace(line.Item, " ")
            where search.IsMatch(text)
            select $"{Path.GetRelativePath(Repository.Root, file)}, line {line.Index + 1}: {search.Match(text).Value}";
        Assert.Equal(figure + ":", string.Join('\n', found.Prepend(figure + ":")));
    }

    /// <summary>A pattern that no longer finds its figure would let everything pass.</summary>
    [Theory]
    [MemberData(nameof(Figures))]
    public void The_check_values_themselves_are_found(string figure, string pattern) => Assert.True(
        Directory.EnumerateFiles(Repository.Path("tests"), "CommonPracticeTests.cs", SearchOption.AllDirectories)
            .SelectMany(File.ReadLines).Any(line => Regex.IsMatch(line, pattern, RegexOptions.None, TimeSpan.FromSeconds(10))), figure);

    private static IEnumerable<string> Files() =>
        new DirectoryInfo(Repository.Root)
            .EnumerateFiles("*", new EnumerationOptions { RecurseSubdirectories = true, AttributesToSkip = FileAttributes.ReparsePoint })
            .Where(file => Texts.Contains(file.Extension)
                && !Made().IsMatch(Path.GetRelativePath(Repository.Root, file.FullName).Replace('\\', '/')))
            .Where(file => file.Name is not ("CommonPracticeTests.cs" or "ReservedFiguresTests.cs" or "package-lock.json"))
            .Select(file => file.FullName);

    /// <summary>
    /// Folders that are built, fetched or written on this machine and are not part of the project; and measured rates, which fall as they
    /// fall.
    /// </summary>
    [GeneratedRegex(@"(?:^|/)(?:bin|obj|node_modules|out|work|StrykerOutput|TestResults|\.git|\.vs)/|^tests/reports/error-rates\.md$")]
    private static partial Regex Made();

    /// <summary>Drawings hold coordinates, which are no figures.</summary>
    [GeneratedRegex("<[^>]*>")]
    private static partial Regex Markup();
}
