using System.Diagnostics;
using System.Text.RegularExpressions;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using SplitBatch.Display.Browser;
using SplitBatch.Panel.Protocols;
using SplitBatch.Panel.Serving;
using SplitBatch.Trials;
using SplitBatch.Trials.Files;
using SplitBatch.Trials.Reading;

namespace SplitBatch.Display.Sheets;

public class PanelSheetsTests
{
    public static TheoryData<string> Protocols => [.. Protocol.All.Select(protocol => protocol.Name)];

    private static readonly PourOptions Named = new() { Allergens = Allergens.Of("barley", "lactose") };

    private static PourPlan Pour(Protocol protocol, int tasters = 9) =>
        PourPlan.For(ServingPlan.Balanced(protocol, tasters, seed: 7, sessions: 2, servers: 2, replicates: 2, panel: "main"), 5.1,
            5.0, Named);

    private static AngleSharp.Html.Dom.IHtmlDocument Parse(PrintableSheet sheet) => new HtmlParser().ParseDocument(sheet.Html);

    [Theory]
    [MemberData(nameof(Protocols))]
    public void Every_code_stands_once_on_each_sheet_that_needs_it(string name)
    {
        var pour = Pour(Protocol.Parse(name));
        string[] codes = [.. pour.Plan.Sets.SelectMany(set => set.Cups).Select(cup => cup.Code).Order()];
        var sheets = PanelSheets.For(pour);
        foreach (var sheet in new[] { sheets.Trays, sheets.Ballots, sheets.Labels, sheets.Pouring, sheets.Key })
            Assert.Equal(codes, Parse(sheet).QuerySelectorAll(".code").Select(code => code.TextContent).Order());
    }

    /// <summary>All but the one whose reference is beer A by definition, so that its beers cannot change places.</summary>
    public static TheoryData<string> ProtocolsThatCanBeSwapped =>
        [.. Protocol.All.Where(protocol => protocol != Protocol.DuoTrioConstantReference).Select(protocol => protocol.Name)];

    [Theory]
    [MemberData(nameof(ProtocolsThatCanBeSwapped))]
    public void What_servers_and_tasters_see_is_the_same_whichever_beer_is_in_the_cup(string name)
    {
        var plan = Pour(Protocol.Parse(name)).Plan;
        var swapped = ServingKey.ToPlan([.. plan.Key.Select(row => row with { Beer = row.Beer == Side.A ? Side.B : Side.A })], plan.Seed,
            expected: Side.A);
        PanelSheets one = PanelSheets.For(PourPlan.For(plan, 5, 5, Named)), other = PanelSheets.For(PourPlan.For(swapped, 5, 5, Named));
        Assert.Equal(one.Trays, other.Trays);
        Assert.Equal(one.Ballots, other.Ballots);
        Assert.Equal(one.Labels, other.Labels);
        Assert.NotEqual(one.Key, other.Key);
        Assert.NotEqual(one.Pouring, other.Pouring);
    }

    [Fact]
    public void The_key_and_the_pouring_sheet_agree_with_the_plan_and_lie_apart()
    {
        var pour = Pour(Protocol.Triangle);
        var sheets = PanelSheets.For(pour);
        string[] wanted = [.. pour.Plan.Sets.SelectMany(set => set.Cups).Select(cup => $"{cup.Code} {cup.Beer}")];
        foreach (var sheet in new[] { sheets.Key, sheets.Pouring })
        {
            Assert.True(sheet.IsSealed);
            Assert.StartsWith("sealed/", sheet.FileName, StringComparison.Ordinal);
            Assert.Contains("Not for servers or tasters", sheet.Html, StringComparison.Ordinal);
            Assert.Equal(wanted, Parse(sheet).QuerySelectorAll("td.middle:has(.code)")
                .Select(cell => Regex.Replace(cell.TextContent.Trim(), @"\s+", " ")));
        }
        Assert.All(new[] { sheets.Briefing, sheets.Trays, sheets.Ballots, sheets.Labels }, sheet => Assert.False(sheet.IsSealed));
    }

    [Fact]
    public void Nothing_is_fetched_and_nothing_runs()
    {
        foreach (var sheet in PanelSheets.For(Pour(Protocol.DuoTrio), PaperSize.Letter).All)
        {
            var page = Parse(sheet);
            Assert.Empty(page.QuerySelectorAll("script, link, img, iframe, object"));
            Assert.DoesNotContain("url(", sheet.Html, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain("http", sheet.Html, StringComparison.OrdinalIgnoreCase);
            Assert.Contains("@page{size:letter portrait", sheet.Html, StringComparison.Ordinal);
            Assert.Equal("en", page.DocumentElement.GetAttribute("lang"));
            Assert.False(string.IsNullOrWhiteSpace(page.Title));
        }
        Assert.Contains("@page{size:A4 portrait", PanelSheets.For(Pour(Protocol.DuoTrio)).Ballots.Html, StringComparison.Ordinal);
    }

    [Fact]
    public void Names_with_marks_stay_names()
    {
        var plan = ServingPlan.Balanced(Protocol.Triangle, 2, seed: 1,
            new ServingOptions { Tasters = ["<b>Fern</b>", "Moss & Reed"], Panel = "a<i>b" });
        foreach (var sheet in PanelSheets.For(PourPlan.For(plan, 5, 5, Named)).All)
        {
            Assert.DoesNotContain("<b>Fern", sheet.Html, StringComparison.Ordinal);
            Assert.DoesNotContain("a<i>b", sheet.Html, StringComparison.Ordinal);
        }
        Assert.Contains("Moss & Reed", Parse(PanelSheets.For(PourPlan.For(plan, 5, 5, Named)).Ballots).Body!.TextContent,
            StringComparison.Ordinal);
    }

    [Fact]
    public void A_ballot_asks_for_everything_that_is_counted()
    {
        var ballots = Parse(PanelSheets.For(Pour(Protocol.Triangle)).Ballots).QuerySelectorAll(".ballot");
        Assert.Equal(18, ballots.Length);
        Assert.All(ballots, ballot =>
        {
            foreach (string words in new[] { "Taster T", "Session ", "Set ", "odd one", "How sure", "What did you notice",
                "I know what was changed", "I helped to brew", "Handed in at", "lactose (milk sugar)" })
                Assert.Contains(words, ballot.TextContent, StringComparison.Ordinal);
            Assert.Equal(3, ballot.QuerySelectorAll(".cup .box").Length);
        });
    }

    [Fact]
    public void The_briefing_reads_out_allergens_alcohol_and_who_must_not_drink()
    {
        string text = Parse(PanelSheets.For(Pour(Protocol.Triangle)).Briefing).Body!.TextContent;
        foreach (string words in new[] { "barley (gluten), lactose (milk sugar)", " g) of alcohol", "pregnant", "drives", "Local law",
            "Adults only", "stop at any time", "Rest 4 min" })
            Assert.Contains(words, text, StringComparison.Ordinal);
        Assert.DoesNotContain("beer A", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_word_on_allergens_no_sheet_is_made() =>
        Assert.StartsWith("The sheets name the allergens in the beers, and nobody has said which there are",
            Assert.Throws<ArgumentException>(
                () => PanelSheets.For(PourPlan.For(ServingPlan.Balanced(Protocol.Triangle, 6, seed: 1), 5, 5))).Message,
                StringComparison.Ordinal);

    /// <summary>A folder of version 0.1 has no such entry. It opens, and its sheets say what is missing.</summary>
    [Fact]
    public void A_trial_that_names_no_allergens_opens_and_prints_nothing_until_it_does()
    {
        string folder = Directory.CreateTempSubdirectory("splitbatch-allergens-").FullName;
        try
        {
            var copy = new TrialFolder(WriteUp.ThreeWriteUps.Trial("amber-cone-or-pellet")).CopyTo(Path.Combine(folder, "amber"));
            string json = copy.PathOf("trial.json"), named = File.ReadAllText(json);
            File.WriteAllText(json, named.Replace("\"allergens\": [\"none but barley\"],", "", StringComparison.Ordinal));
            Assert.StartsWith("This trial holds no word on allergens yet: write what is in the beers into trial.json",
                Assert.Throws<TrialIncompleteException>(() => PanelSheets.Of(Trial.Open(copy.Path))).Message, StringComparison.Ordinal);
            File.WriteAllText(json, named.Replace("none but barley", "lactose", StringComparison.Ordinal));
            var sheets = PanelSheets.Of(Trial.Open(copy.Path));
            Assert.Contains("The beers contain lactose (milk sugar).", sheets.Briefing.Html, StringComparison.Ordinal);
            Assert.Equal(24, Regex.Count(sheets.Ballots.Html, @"The beers contain lactose \(milk sugar\)\."));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public void Sheets_are_written_with_the_sealed_ones_in_their_own_folder()
    {
        string folder = Directory.CreateTempSubdirectory("splitbatch-sheets-").FullName;
        try
        {
            PanelSheets.For(Pour(Protocol.Triangle)).SaveTo(folder);
            Assert.Equal(["ballots.html", "briefing.html", "labels.html", "trays.html"],
                Directory.GetFiles(folder).Select(Path.GetFileName).Order(StringComparer.Ordinal));
            Assert.Equal(["key.html", "pouring.html"],
                Directory.GetFiles(Path.Combine(folder, "sealed")).Select(Path.GetFileName).Order(StringComparer.Ordinal));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [BrowserFact]
    public void Two_ballots_fit_on_a_page_of_either_size()
    {
        string folder = Directory.CreateTempSubdirectory("splitbatch-print-").FullName;
        try
        {
            foreach (var paper in Enum.GetValues<PaperSize>())
            {
                // The protocol with the longest task and the most cups; 18 ballots.
                string html = PanelSheets.For(Pour(Protocol.TwoOutOfFive), paper).Ballots
                    .SaveTo(folder), pdf = Path.Combine(folder, $"{paper}.pdf");
                using var chromium = Process.Start(new ProcessStartInfo(Chromium.Path!,
                    ["--headless", "--no-sandbox", "--disable-gpu", $"--user-data-dir={folder}/profile", "--no-pdf-header-footer",
                        $"--print-to-pdf={pdf}", html]) { RedirectStandardError = true, RedirectStandardOutput = true })!;
                chromium.ErrorDataReceived += (_, _) => { };
                chromium.BeginErrorReadLine();
                Assert.True(chromium.WaitForExit(120_000), "chromium did not end");
                string printed = System.Text.Encoding.Latin1.GetString(File.ReadAllBytes(pdf));
                Assert.Equal(9, Regex.Count(printed, "/Type /Page[^s]"));
            }
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
