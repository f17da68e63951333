using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace SplitBatch.Cli.House;

/// <summary>Lines, files and folders that a reader can take in at a glance.</summary>
public class FileSizeTests
{
    private const int LongestLine = 139, LongestFile = 250, FewestFiles = 5, MostFiles = 25;

    /// <summary>Longer than others: cases of one thing, one after another.</summary>
    private static readonly HashSet<string> LongFiles =
    [
        "tests/SplitBatch.Tests/Bitterness/DoubtEdgesTests.cs",
        "tests/SplitBatch.Tests/Evidence/ThirteenMendsTests.cs",
        "tests/SplitBatch.Tests/Panel/PanelSentencesTests.cs",
        "tests/SplitBatch.Tests/Trials/Checks/TrialChecksTests.cs",
        "tests/SplitBatch.Tests/Trials/EveryMessageTests.cs",
        "tests/SplitBatch.Tests/Trials/PanelOfATrialTests.cs",
        "tests/SplitBatch.Tests/Trials/Seals/PanelLifeTests.cs",
        "tests/SplitBatch.Tests/Trials/TrialLabTests.cs",
    ];

    /// <summary>Folders with fewer or more files than others.</summary>
    private static readonly Dictionary<string, string> OtherFolders = new()
    {
        ["src/SplitBatch.Display"] = "the one front of its rooms",
        ["src/SplitBatch/Lab"] = "one value, one file",
    };

    [Fact]
    public void No_line_is_longer_than_the_screen()
    {
        var longer = from file in Sources()
                     let text = File.ReadAllText(Repository.Path(file))
                     where text.Split('\n').Any(line => line.TrimEnd('\r').Length > LongestLine)
                     from line in TooLong(text)
                     select $"{file}, line {line + 1}";
        Assert.Empty(longer);
    }

    [Fact]
    public void No_file_is_longer_than_a_few_screens() => Assert.Empty(
        from file in Sources()
        let lines = File.ReadLines(Repository.Path(file)).Count()
        where lines > LongestFile && !LongFiles.Contains(file)
        select $"{file}: {lines} lines");

    [Fact]
    public void Every_folder_of_the_sources_holds_a_handful_of_files() => Assert.Empty(
        from folder in Sources().Where(file => file.StartsWith("src/", StringComparison.Ordinal))
            .CountBy(file => file[..file.LastIndexOf('/')])
        where folder.Value is < FewestFiles or > MostFiles && !OtherFolders.ContainsKey(folder.Key)
        select $"{folder.Key}: {folder.Value} files");

    [Fact]
    public void No_exception_is_kept_that_nothing_needs() => Assert.Empty(
        LongFiles.Where(file => File.ReadLines(Repository.Path(file)).Count() <= LongestFile)
            .Concat(OtherFolders.Keys.Where(folder =>
                Sources().Count(file => file[..file.LastIndexOf('/')] == folder) is >= FewestFiles and <= MostFiles)));

    /// <summary>The long lines of a file, but for those of a text of several lines, which are the text's own.</summary>
    private static IEnumerable<int> TooLong(string text)
    {
        var tree = CSharpSyntaxTree.ParseText(text);
        var root = tree.GetRoot();
        var texts = root.DescendantNodes().Where(node => node is LiteralExpressionSyntax or InterpolatedStringExpressionSyntax)
            .Select(node => tree.GetLineSpan(node.Span))
            .Where(span => span.EndLinePosition.Line > span.StartLinePosition.Line)
            .ToList();
        foreach (var line in tree.GetText().Lines.Where(line => line.Span.Length > LongestLine))
        {
            if (!texts.Exists(span => line.LineNumber > span.StartLinePosition.Line && line.LineNumber <= span.EndLinePosition.Line))
                yield return line.LineNumber;
        }
    }

    private static List<string> Sources() =>
    [
        .. new[] { "src", "tests" }
            .SelectMany(folder => Directory.EnumerateFiles(Repository.Path(folder), "*.cs", SearchOption.AllDirectories))
            .Select(file => Path.GetRelativePath(Repository.Path("."), file).Replace('\\', '/'))
            .Where(file => !file.Contains("/obj/", StringComparison.Ordinal) && !file.Contains("/bin/", StringComparison.Ordinal))
            .Order(StringComparer.Ordinal),
    ];
}
