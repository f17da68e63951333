using System.Globalization;
using System.Text.RegularExpressions;

namespace SplitBatch.Cli.Walks;

/// <summary>
/// A trial in US units from <c>new</c> to the write-up. All data are invented.
/// Checked against: Tinseth 1997 (worked out again below with 28.3495 g and 3.78541 L), and the exact binomial
/// (13 of 36 or fewer at 8/15 has a chance of 0.028, 14 of 0.058: so 13 is the most that rules 30 % out at 5 %).
/// </summary>
public sealed partial class UsWalkTests
{
    [Fact]
    public async Task A_trial_in_gallons_and_ounces_goes_from_nothing_to_a_margin_ruled_out()
    {
        using var walk = new Walk();
        await Walk.Call(
            0, "new", walk.Folder, "--title", "Amber: cones or pellets?", "--variable", "form of the hop", "--half-a", "cones",
            "--half-b", "pellets",
            "--units", "us", "--volume", "5", "--gravity", "1.052", "--tasters", "36", "--allergens", "barley, lactose", "--yes");
        Assert.Contains("no fault, 1 warning", await Walk.Call(0, "check", walk.Folder), StringComparison.Ordinal);

        // The hops, with a form and a lot misspelt; the check offers the nearest.
        var sheet = new Spreadsheet(walk.Folder, ',');
        sheet.Add("hops.csv", ["garden cones", "whole cone", "5.4", "0.3", "", "", "2025", "2025-10-20", "38"],
            ["garden pellets", "pellets", "6.0", "0.3", "", "", "2025", "2025-10-20", "38"]);
        sheet.Add("charges.csv", ["A", "garden cones", "1.95", "boil", "60"], ["B", "garden pelets", "1.64", "boil", "60"]);
        var said = await Walk.Call(1, "check", walk.Folder);
        Assert.Contains("form = \"whole cone\": The word is not known here.", said, StringComparison.Ordinal);
        Assert.Contains("Did you mean \"whole cones\"?", said, StringComparison.Ordinal);
        Assert.Contains("lot = \"garden pelets\": No lot of this name stands in hops.csv. Accepted: garden cones, garden pellets. Did you "
            + "mean \"garden pellets\"?", said, StringComparison.Ordinal);
        sheet.Replace("hops.csv", "whole cone,", "whole cones,");
        sheet.Replace("charges.csv", "garden pelets", "garden pellets");

        string[][] measured =
        [
            ["original gravity", "1.052", "1.052", "SG", "0.001"], ["final gravity", "1.012", "1.012", "SG", "0.001"],
            ["pitching temperature", "66", "67", "°F", "1"], ["yeast lot", "Y-7", "Y-7", "", ""],
        ];
        sheet.Add("batch-log.csv",
            [.. measured.SelectMany((line, index) => new[] { (Half: "A", Value: line[1]), (Half: "B", Value: line[2]) }.Select(half =>
                new[] { $"{index + 1}{half.Half}", "2026-03-14", "me", half.Half, line[0], half.Value, line[3], line[4] }))]);
        await Walk.Call(0, "declare", walk.Folder, "--yes");
        await Walk.Call(0, "serve", walk.Folder);
        foreach (var name in new[] { "briefing.html", "ballots.html" })
            Assert.Contains("barley (gluten), lactose (milk sugar)", File.ReadAllText(Path.Combine(walk.Folder, "sheets", name)),
                StringComparison.Ordinal);
        sheet.Add("ballots-main.csv", walk.Ballots(right: 11));
        Assert.Matches("^mine: nothing wrong and nothing doubtful.\nThe plan: seal-1.json, sealed 20[0-9-]+ [0-9:]+ UTC: ([0-9a-f]{4} "
            + "?){5}.$", (await Walk.Call(0, "check", walk.Folder)).Trim());

        // No lab was asked: the notebooks run all the same, and the write-up says so.
        await walk.RunNotebooks();
        Assert.Equal(2, walk.NotYet().Count);
        var doses = Assert.Single(walk.Says("2-hop-charges"),
            text => text.Contains("garden cones and B", StringComparison.Ordinal) && text.Contains("1.95", StringComparison.Ordinal));
        var found = Estimate().Match(doses);
        Assert.Equal(Tinseth(1.95, 5.4), Number(found.Groups[1]), 0.06);
        Assert.Equal(Tinseth(1.64, 6.0) * 1.07, Number(found.Groups[2]), 0.06); // 1.07: pellets over cones, as the library states
        Assert.Contains(walk.Says("3-lab-return"),
            text => text.Contains("66 ± 1 °F", StringComparison.Ordinal)
                && text.Contains("within what the instruments can tell", StringComparison.Ordinal));
        Assert.Contains(walk.Says("4-panel-statistics"),
            text => text.StartsWith("11 right of 36 (triangle): 30 % or more discriminators are ruled out at 5 %",
                StringComparison.Ordinal));
        var verdict = walk.Says("5-write-up")[0];
        Assert.DoesNotContain(" the same", verdict, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("ruled out", verdict, StringComparison.Ordinal);
        var report = File.ReadAllText(Path.Combine(walk.Pages, "mine", "write-up", "write-up.md"));
        Assert.Contains("oz", report, StringComparison.Ordinal);
        Assert.Contains("No lab return is logged", report, StringComparison.Ordinal);
    }

    private static double Tinseth(double ounces, double alphaPercent) =>
        ounces * 28.349523125 * alphaPercent * 10 / (5 * 3.785411784) * 1.65 * Math.Pow(0.000125, 0.052)
            * (1 - Math.Exp(-0.04 * 60)) / 4.15;

    private static double Number(Group group) => double.Parse(group.Value, CultureInfo.InvariantCulture);

    [GeneratedRegex(@": ([0-9.]+) and ([0-9.]+) IBU by Tinseth")]
    private static partial Regex Estimate();
}
