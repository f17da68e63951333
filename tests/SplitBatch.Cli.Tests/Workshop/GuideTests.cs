using System.Globalization;
using System.Text.RegularExpressions;
using SplitBatch.Panel;

namespace SplitBatch.Cli.Workshop;

/// <summary>The instructor's guide: its numbers are those that the library gives, and what it points to is there.</summary>
public partial class GuideTests
{
    private static string Guide => File.ReadAllText(Repository.Path("notebooks", "workshop", "README.md"));

    [Fact]
    public void The_pouring_table_is_what_the_library_says()
    {
        var rows = PouringRow().Matches(Guide);
        Assert.Equal(5, rows.Count);
        foreach (Match row in rows)
        {
            int tasters = int.Parse(row.Groups[1].Value, CultureInfo.InvariantCulture);
            var pour = PourPlan.For(ServingPlan.Balanced(Protocol.Triangle, tasters, seed: 1), alcoholA: 5, alcoholB: 5).ToString();
            Assert.Contains($"beer A: {row.Groups[2].Value} cups", pour, StringComparison.Ordinal);
            Assert.Contains($"{row.Groups[3].Value} L with spare", pour, StringComparison.Ordinal);
            Assert.Equal(3 * tasters, int.Parse(row.Groups[4].Value, CultureInfo.InvariantCulture));
        }
    }

    [Fact]
    public void What_the_guide_points_to_is_there() => Assert.All(
        Link().Matches(Guide).Select(match => match.Groups[1].Value).Where(link => !link.StartsWith('#')),
        link => Assert.True(Path.Exists(Repository.Path("notebooks", "workshop", link)), link));

    [Fact]
    public void Each_heading_that_the_contents_name_is_there()
    {
        var headings = Heading().Matches(Guide).Select(match => new string([.. match.Groups[1].Value.ToLowerInvariant().Replace(' ', '-').Where(c => char.IsLetterOrDigit(c) || c == '-')])).ToHashSet();
        Assert.All(Link().Matches(Guide).Select(match => match.Groups[1].Value).Where(link => link.StartsWith('#')), link => Assert.Contains(link[1..], headings));
    }

    [GeneratedRegex(@"^\| (\d+) \| (\d+) \| ([\d.]+) \| (\d+) \|", RegexOptions.Multiline)]
    private static partial Regex PouringRow();

    [GeneratedRegex(@"\]\(([^)]+)\)")]
    private static partial Regex Link();

    [GeneratedRegex("^## (.+?)\r?$", RegexOptions.Multiline)]
    private static partial Regex Heading();
}
