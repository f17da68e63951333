using System.Globalization;
using System.Text.RegularExpressions;
using SplitBatch.Panel.Protocols;
using SplitBatch.Panel.Serving;

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
    public void The_memory_of_a_seat_is_what_was_measured()
    {
        var measured = File.ReadAllText(Repository.Path("tests", "reference", "jupyter", "seats.csv"));
        var seat = Seat().Match(measured);
        var all = Together().Match(measured);
        Assert.True(seat.Success && all.Success, measured);
        Assert.Contains("; 10 seats, ", measured, StringComparison.Ordinal);
        Assert.Contains("; errors 0", measured, StringComparison.Ordinal);
        Assert.Contains($"| one seat, what it really takes | {seat.Groups[2].Value} |", Guide, StringComparison.Ordinal);
        Assert.Contains($"| one seat, as a process list shows it | {seat.Groups[1].Value} |", Guide, StringComparison.Ordinal);
        Assert.Contains($"| ten seats together | {all.Groups[1].Value} |", Guide, StringComparison.Ordinal);
        Assert.Contains($"| the server for all of them | {all.Groups[2].Value} |", Guide, StringComparison.Ordinal);
    }

    [Fact]
    public void What_the_guide_points_to_is_there() => Assert.All(
        Link().Matches(Guide).Select(match => match.Groups[1].Value).Where(link => !link.StartsWith('#')),
        link => Assert.True(Path.Exists(Repository.Path("notebooks", "workshop", link)), link));

    [Fact]
    public void Each_heading_that_the_contents_name_is_there()
    {
        var headings = Heading().Matches(Guide)
            .Select(match =>
                new string([.. match.Groups[1].Value.ToLowerInvariant().Replace(' ', '-')
                    .Where(c => char.IsLetterOrDigit(c) || c == '-')])).ToHashSet();
        Assert.All(Link().Matches(Guide).Select(match => match.Groups[1].Value).Where(link => link.StartsWith('#')),
            link => Assert.Contains(link[1..], headings));
    }

    [GeneratedRegex(@"rss (\d+ \(\d+ to \d+\)) MiB, pss (\d+ \(\d+ to \d+\)) MiB")]
    private static partial Regex Seat();

    [GeneratedRegex(@"together: pss (\d+) MiB; the server: pss (\d+) MiB")]
    private static partial Regex Together();

    [GeneratedRegex(@"^\| (\d+) \| (\d+) \| ([\d.]+) \| (\d+) \|", RegexOptions.Multiline)]
    private static partial Regex PouringRow();

    [GeneratedRegex(@"\]\(([^)]+)\)")]
    private static partial Regex Link();

    [GeneratedRegex("^## (.+?)\r?$", RegexOptions.Multiline)]
    private static partial Regex Heading();
}
