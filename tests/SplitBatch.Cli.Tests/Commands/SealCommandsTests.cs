using System.Text.RegularExpressions;
using SplitBatch.Cli.Walks;
using SplitBatch.Trials;

namespace SplitBatch.Cli.Commands;

/// <summary>
/// A plan from <c>declare</c> to <c>close</c> as a person at the command line changes it, looks, and lists it. All data are invented.
/// </summary>
public sealed partial class SealCommandsTests : IDisposable
{
    private readonly Walk walk = new();

    public void Dispose() => walk.Dispose();

    [Fact]
    public async Task Declaring_shows_a_short_fingerprint_and_says_where_all_of_it_stands()
    {
        await New();
        var said = await Walk.Call(0, "declare", walk.Folder, "--yes");
        var seal = Trial.Open(walk.Folder).LatestSeal!;
        Assert.Contains($"Its fingerprint: {seal.Fingerprint!.Spoken}\nThese are its first 20 digits.", said, StringComparison.Ordinal);
        Assert.DoesNotContain(seal.Fingerprint.Digits, said, StringComparison.Ordinal);
        Assert.Contains("in what sha256sum seal-1.json prints", said, StringComparison.Ordinal);
        Assert.Contains(seal.Fingerprint.Digits, await Walk.Call(0, "serve", walk.Folder), StringComparison.Ordinal);
        Assert.StartsWith("Sealed already: seal-1.json", await Walk.Call(0, "declare", walk.Folder), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_change_before_the_first_ballot_stops_serving_until_it_is_amended_with_a_reason()
    {
        await New();
        Assert.Contains("nothing to amend; seal it first", await Walk.Call(1, "amend", walk.Folder, "--because", "two are ill"),
            StringComparison.Ordinal);
        await Walk.Call(0, "declare", walk.Folder, "--yes");
        Assert.StartsWith("Nothing to amend", await Walk.Call(0, "amend", walk.Folder, "--because", "two are ill"),
            StringComparison.Ordinal);
        Change("\"tasters\": 24", "\"tasters\": 22");
        Assert.Contains("Put it back, or amend the plan", await Walk.Call(1, "serve", walk.Folder), StringComparison.Ordinal);
        Assert.Contains("Say why the plan is changed", await Walk.Call(2, "amend", walk.Folder, "--because", " "),
            StringComparison.Ordinal);
        var said = await Walk.Call(0, "amend", walk.Folder, "--because", "two are ill");
        Assert.StartsWith("tasters of panel main: 24 was sealed, 22 stands there now.\nSealed: seal-2.json", said,
            StringComparison.Ordinal);
        Assert.DoesNotContain("departure", said, StringComparison.Ordinal);
        Assert.Contains("22 sets", await Walk.Call(0, "serve", walk.Folder), StringComparison.Ordinal);
        Change("\"alpha\": 0.05", "\"alpha\": 0.1");
        Assert.Contains("what was printed before carries the fingerprint of the seal before",
            await Walk.Call(0, "amend", walk.Folder, "--because", "so few"), StringComparison.Ordinal);
        Assert.Contains(Trial.Open(walk.Folder).LatestSeal!.Fingerprint!.Digits, await Walk.Call(0, "serve", walk.Folder),
            StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_change_after_the_first_ballot_says_at_once_what_it_does_to_the_result()
    {
        await Served();
        Ballots(right: 9, of: 10);
        Change("\"alpha\": 0.05", "\"alpha\": 0.3");
        Assert.Contains("this is a departure: it goes before the result", await Walk.Call(0, "check", walk.Folder),
            StringComparison.Ordinal);
        var said = await Walk.Call(0, "amend", walk.Folder, "--because", "it pleases");
        Assert.Contains("Ballots of panel main were in already, so this is a departure: it goes before the result, which is now a lead "
            + "and not a test.", said, StringComparison.Ordinal);
        Assert.Contains("The plan sealed before the first ballot decides.", said, StringComparison.Ordinal);
        Assert.DoesNotContain("before you pour", said, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Whoever_looks_early_is_shown_the_count_and_the_close_opens_with_it()
    {
        await Served();
        Ballots(right: 9, of: 10);
        Assert.Contains("Say why the count cannot wait", await Walk.Call(2, "look-early", walk.Folder, "--because", ""),
            StringComparison.Ordinal);
        Assert.Equal(
            "9 right of 10 so far in panel main. That the count was looked at is kept in panel-log.csv, and will stand before the result.",
            (await Walk.Call(0, "look-early", walk.Folder, "--because", "the room is shut at ten", "--who", "the host")).Trim());
        Assert.EndsWith("This will stand before the result, as a departure from the sealed plan: looks.",
            Trial.Open(walk.Folder).Tally().ToString(), StringComparison.Ordinal);
        Ballots(right: 15, of: 24);
        var lines = (await Walk.Call(0, "close", walk.Folder)).Split('\n');
        Assert.Equal("Panel main is closed.", lines[0]);
        Assert.StartsWith("Panel main departed from its plan. Looks: planned none before the close, done the host looked on ", lines[1],
            StringComparison.Ordinal);
        Assert.Contains("so the result is a lead to follow and not a test. 24 blind sets were tasted", lines[1], StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_panel_closed_early_names_the_error_of_stopping_at_will_before_its_count()
    {
        await Served();
        Ballots(right: 6, of: 8);
        var lines = (await Walk.Call(0, "close", walk.Folder, "--day", "2026-05-02")).Split('\n');
        Assert.StartsWith("Panel main departed from its plan. Ballots: planned 24, done 8. The panel ended early. Whoever knows the count "
            + "after each ballot and stops at the first difference finds a false one in 14 % of panels, and not in 5 %.", lines[1],
            StringComparison.Ordinal);
        Assert.StartsWith("A lead to follow, not a test: 8 of 24 sealed ballots came in", Trial.Open(walk.Folder).Verdict().Headline,
            StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_list_says_what_was_tested_and_what_was_declared_and_never_reported()
    {
        await Served();
        var open = await Walk.Call(0, "list", Path.GetDirectoryName(walk.Folder)!);
        Assert.Contains("its panel is open.", open, StringComparison.Ordinal);
        Assert.EndsWith("1 trial: 0 tested; 1 sealed, of which 1 was never reported (mine).", open.TrimEnd(), StringComparison.Ordinal);
        Ballots(right: 15, of: 24);
        await Walk.Call(0, "close", walk.Folder);
        Assert.Contains("1 trial: 1 tested; 1 sealed, of which 1 was never reported (mine).",
            await Walk.Call(0, "list", Path.GetDirectoryName(walk.Folder)!), StringComparison.Ordinal);
        await Walk.Call(2, "list", Path.Combine(walk.Folder, "nowhere"));
    }

    [Fact]
    public async Task Before_the_close_nothing_that_is_printed_depends_on_how_anybody_answered()
    {
        await Served();
        var (right, wrong) = (await Printed(right: 23), await Printed(right: 0));
        Assert.Equal(right.Keys, wrong.Keys);
        Assert.All(right, pair => Assert.True(pair.Value == wrong[pair.Key], $"{pair.Key} tells how people answered."));
        Assert.Contains("its count is hidden until the last ballot is in or somebody closes it", right["4-panel-statistics.ipynb"],
            StringComparison.Ordinal);

        // What is compared would tell, if it were told.
        await Walk.Call(0, "close", walk.Folder);
        Assert.NotEqual(wrong["write-up"], (await Printed(right: 0))["write-up"]);
    }

    /// <summary>What check, list, the tally, the write-up and the notebooks that count say of 23 of 24 ballots.</summary>
    private async Task<Dictionary<string, string>> Printed(int right)
    {
        Ballots(right, of: 23);
        var beside = Path.Combine(walk.Folder, "..", "out");
        await Walk.Call(0, "write-up", walk.Folder, "--out", beside);
        string[] notebooks = ["4-panel-statistics", "5-write-up"];
        foreach (var name in notebooks)
            await Walk.Call(0, "run", Path.Combine(walk.Folder, "notebooks", name + ".ipynb"), "--out", walk.Pages);
        var said = new Dictionary<string, string>
        {
            ["check"] = await Walk.Call(0, "check", walk.Folder),
            ["list"] = await Walk.Call(0, "list", Path.GetDirectoryName(walk.Folder)!),
            ["tally"] = Trial.Open(walk.Folder).Tally().ToString(),
            ["write-up"] = WithoutFingerprint(File.ReadAllText(Directory.GetFiles(beside, "write-up.md", SearchOption.AllDirectories)[0])),
        };
        foreach (var name in notebooks) said[name + ".ipynb"] = WithoutFingerprint(string.Join("\n", walk.Says(name)));
        return said;

        // The write-up lists the SHA-256 of each file, and that of the ballots is another.
        static string WithoutFingerprint(string text) =>
            string.Join("\n", text.Split('\n')
                .Where(line => !(line.Contains("ballots-main.csv", StringComparison.Ordinal) && Digits().IsMatch(line))));
    }

    [GeneratedRegex("[0-9a-f]{64}")]
    private static partial Regex Digits();

    private Task<string> New() => Walk.Call(
        0, "new", walk.Folder, "--title", "Cool or warm fermentation?", "--variable", "fermentation temperature", "--half-a", "cool",
        "--half-b", "warm",
        "--tasters", "24", "--margin", "0.40", "--allergens", "none but barley", "--yes");

    private async Task Served()
    {
        await New();
        await Walk.Call(0, "declare", walk.Folder, "--yes");
        await Walk.Call(0, "serve", walk.Folder);
    }

    private void Ballots(int right, int of)
    {
        var rows = walk.Ballots(right).Take(of).Select(cells => string.Join(',', cells) + "\n");
        File.WriteAllText(Path.Combine(walk.Folder, "ballots-main.csv"), "taster,session,set,answer,when\n" + string.Concat(rows));
    }

    private void Change(string old, string by)
    {
        var file = Path.Combine(walk.Folder, "trial.json");
        Assert.Contains(old, File.ReadAllText(file), StringComparison.Ordinal);
        File.WriteAllText(file, File.ReadAllText(file).Replace(old, by, StringComparison.Ordinal));
    }
}
