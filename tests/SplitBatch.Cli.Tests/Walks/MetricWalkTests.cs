using System.Globalization;
using System.Text.RegularExpressions;

namespace SplitBatch.Cli.Walks;

/// <summary>
/// A metric trial from <c>new</c> to the write-up, its files saved by a spreadsheet that writes decimal commas. All data are invented.
/// Checked against: Tinseth 1997 (worked out again below), ISO 5725-6 (critical difference of two means of two),
/// ISO 4120 (13 of 24) and the exact binomial (15 or more of 24 at 1/3 have a chance of 0.00323, added up term by term outside this
/// project).
/// </summary>
public sealed partial class MetricWalkTests
{
    [Fact]
    public async Task A_metric_trial_goes_from_nothing_to_a_difference_shown()
    {
        using var walk = new Walk();
        await Walk.Call(
            0, "new", walk.Folder, "--title", "Pale ale: first wort or 60 minutes?", "--variable", "moment of the bittering addition",
            "--half-a", "60 minutes",
            "--half-b", "first wort", "--decimals", "comma", "--volume", "20", "--gravity", "1,050", "--tasters", "24", "--margin", "0,40",
            "--allergens", "none but barley", "--yes");

        // From the first minute every notebook runs, and says what is not there yet.
        Assert.Matches("2-hop-charges: [0-9]+ cells in [0-9.]+ s, [0-9]+ waiting for data\n(.*\n)*[0-9]+ cells wait for data that are not "
            + "there yet; each page says what is missing and which step makes it.", await walk.RunNotebooks());
        Assert.Contains("of its cells wait for data that are not there yet", File.ReadAllText(Path.Combine(walk.Pages, "index.html")),
            StringComparison.Ordinal);
        Assert.Equal(
            [
                "Not yet. This trial holds no serving plan for panel main yet: make it with splitbatch serve, or in a cell with "
                    + "trial.Serve(\"main\"), which writes serving-main.csv (see notebook 1-design).",
                "Not yet. This trial holds no hop lot yet: list your lots in hops.csv (see notebook 1-design).",
                "Not yet. This trial holds no lab result of both halves for bitterness yet: log the lab's return in lab-returns.csv, or "
                    + "put its file into incoming (see notebook 3-lab-return).",
                "Not yet. This trial holds no past beer with hop charges and a lab return yet: log both, here or in a trial beside it, "
                    + "and this chart learns from them (see notebook 3-lab-return).",
            ],
            walk.NotYet());
        Assert.Contains("60 minutes or first wort? No panel is counted yet, so nothing is known about the taste.",
            walk.Says("5-write-up"));

        // The hops; the spreadsheet has rewritten a date, and a percent sign has crept in.
        var sheet = new Spreadsheet(walk.Folder, ';');
        sheet.Add("hops.csv", ["bittering pellets", "pellets", "6,2 %", "0,3", "4,4", "", "2025", "20.10.2025", "4", "barrier"]);
        sheet.Add("charges.csv", ["A", "bittering pellets", "42,5", "boil", "60"], ["B", "bittering pellets", "42,5", "first wort", "20"]);
        var said = await Walk.Call(1, "check", walk.Folder);
        Assert.Contains("fault: hops.csv, row 8, alpha [%] = \"6,2 %\": The unit stands in the header; write the number without a "
            + "percent sign.", said, StringComparison.Ordinal);
        Assert.Contains("fault: hops.csv, row 8, assay date = \"20.10.2025\": The date cannot be read without guessing the order of day "
            + "and month. Accepted: year-month-day, as 2026-03-14.", said, StringComparison.Ordinal);
        sheet.Replace("hops.csv", "6,2 %", "6,2");
        sheet.Replace("hops.csv", "20.10.2025", "2025-10-20");

        // Brewing day, fermentation, packaging; then the lab's return, the key of the samples, and the plan sealed.
        string[][] measured =
        [
            ["original gravity", "1,050", "1,050", "SG", "0,001", "2026-03-14"], ["volume into fermenter", "18,5", "18,4", "L", "0,2",
                "2026-03-14"],
            ["pitching temperature", "18,5", "18,5", "°C", "0,5", "2026-03-14"], ["yeast lot", "Y-1", "Y-1", "", "", "2026-03-14"],
            ["pitching date", "2026-03-14", "2026-03-14", "", "", "2026-03-14"], ["final gravity", "1,011", "1,012", "SG", "0,001",
                "2026-03-30"],
        ];
        sheet.Add("batch-log.csv",
            [.. measured.SelectMany((line, index) => new[] { (Half: "A", Value: line[1]), (Half: "B", Value: line[2]) }.Select(half =>
                new[] { $"{index + 1}{half.Half}", line[5], "me", half.Half, line[0], half.Value, line[3], line[4] }))]);
        sheet.Add("lab-returns.csv",
            [.. new[] { ("S1", 1, "24,1"), ("S1", 2, "24,5"), ("S2", 1, "26,9"), ("S2", 2, "27,3") }.Select(result =>
                new[] { $"R-1/{result.Item1}/{result.Item2}", "2026-04-20", result.Item1, "", "bitterness", $"{result.Item2}",
                    result.Item3, "BU", "", "some lab" })]);
        sheet.Replace("trial.json", "\"samples\": {}", "\"samples\": { \"S1\": \"A\", \"S2\": \"B\" }");
        sheet.Replace("trial.json", "\"precision\": []",
            "\"precision\": [ { \"analyte\": \"bitterness\", \"kind\": \"standard deviation\", \"condition\": \"repeatability\", \"value "
                + "[BU]\": 0.5 } ]");
        Assert.Contains("no sealed plan for panel main yet", await Walk.Call(1, "serve", walk.Folder), StringComparison.Ordinal);
        Assert.Contains("Nothing is sealed. Nobody is there to ask", await Walk.Call(2, "declare", walk.Folder), StringComparison.Ordinal);
        var declared = await Walk.Call(0, "declare", walk.Folder, "--yes");
        Assert.Contains("13 right answers or more show a difference", declared, StringComparison.Ordinal);
        Assert.Contains("beer A: 36 cups, 1.80 L in the cups", declared, StringComparison.Ordinal);
        var served = await Walk.Call(0, "serve", walk.Folder);
        var print = Fingerprint().Match(served).Groups[1].Value;
        Assert.Contains("24 sets, each of 6 orders 4 times.", served, StringComparison.Ordinal);
        Assert.StartsWith($"Before you pour, publish the fingerprint of the plan, as only that proves to a stranger when it was fixed: "
            + $"{print} (to read aloud:", served.TrimEnd().Split('\n')[^1], StringComparison.Ordinal);
        Assert.Contains(print, File.ReadAllText(Path.Combine(walk.Folder, "sheets", "briefing.html")), StringComparison.Ordinal);
        Assert.Equal(["ballots.html", "briefing.html", "labels.html", "trays.html"],
            Directory.GetFiles(Path.Combine(walk.Folder, "sheets")).Select(Path.GetFileName).Order());

        // The evening of the panel: 15 of 24 pick the odd cup.
        sheet.Add("ballots-main.csv", walk.Ballots(right: 15));
        Assert.StartsWith("Panel main is closed.\n24 blind sets", await Walk.Call(0, "close", walk.Folder, "--who", "me"),
            StringComparison.Ordinal);
        Assert.Contains("The fingerprint you gave is that of seal-1.json.",
            await Walk.Call(0, "verify-seal", walk.Folder, "--fingerprint", print), StringComparison.Ordinal);
        Assert.Matches("^mine: nothing wrong and nothing doubtful.\nThe plan: seal-1.json, sealed 20[0-9-]+ [0-9:]+ UTC: ([0-9a-f]{4} "
            + "?){5}.$", (await Walk.Call(0, "check", walk.Folder)).Trim());

        Assert.DoesNotContain("waiting", await walk.RunNotebooks(), StringComparison.Ordinal);
        Assert.Empty(walk.NotYet());
        var doses = Assert.Single(walk.Says("2-hop-charges"),
            text => text.StartsWith("A 42.5 g bittering pellets and B 42.5 g", StringComparison.Ordinal));
        // 1.07: pellets over cones, as the library states
        var tinseth = 42.5 * 62 / 20 * 1.65 * Math.Pow(0.000125, 0.050) * (1 - Math.Exp(-0.04 * 60)) / 4.15 * 1.07;
        Assert.Equal(tinseth, double.Parse(Estimate().Match(doses).Groups[1].Value, CultureInfo.InvariantCulture), 0.06);
        var critical = 1.96 * Math.Sqrt(2) * 0.5 * Math.Sqrt((1.0 / 2 + 1.0 / 2) / 2);
        Assert.Contains(walk.Says("3-lab-return"),
            text => text.StartsWith("A 24.3 BU (mean of 2) and B 27.1 BU (mean of 2) differ by 2.8 BU", StringComparison.Ordinal)
                && text.Contains(string.Create(CultureInfo.InvariantCulture, $"lie within {critical:0.0} BU of each other"),
                    StringComparison.Ordinal));
        Assert.Contains("15 right of 24 (triangle): a difference is shown at 5 % (p = 0.003; 13 needed).",
            walk.Says("4-panel-statistics"));
        Assert.Contains("60 minutes or first wort? Tasters could tell them apart: 15 of 24 blind triangles were right, where guessing "
            + "gives 8.", string.Join(" ", walk.Says("5-write-up")), StringComparison.Ordinal);
        Assert.Contains("2 beers of 1 trial with an estimate and a lab value", walk.Says("6-learn"));
        var report = File.ReadAllText(Path.Combine(walk.Pages, "mine", "write-up", "write-up.md"));
        Assert.Contains("Pale ale: first wort or 60 minutes?", report, StringComparison.Ordinal);
        Assert.Contains("15", report, StringComparison.Ordinal);
        Assert.False(Directory.Exists(Path.Combine(walk.Folder, "write-up")), "A headless run leaves the trial's own folder as it was.");
    }

    [GeneratedRegex("when it was fixed: ([0-9a-f]{64}) \\(to read aloud:")]
    private static partial Regex Fingerprint();

    [GeneratedRegex(@": ([0-9.]+) and [0-9.]+ IBU by Tinseth")]
    private static partial Regex Estimate();
}
