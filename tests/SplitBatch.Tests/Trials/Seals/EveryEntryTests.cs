using System.Text.RegularExpressions;

namespace SplitBatch.Trials.Seals;

/// <summary>
/// Each entry of a sealed plan is changed, one by one: before the first ballot it can be amended, after it the sealed plan decides and
/// the change goes before the result.
/// </summary>
public class EveryEntryTests
{
    private const string Fixed = "triangle", Directed = "paired directional";

    /// <summary>
    /// Which panel, entry as check names it, what stands in trial.json, what is put there, what was sealed and what stands there then.
    /// </summary>
    public static TheoryData<string, string, string, string, string, string> Entries => new()
    {
        { Fixed, "question", "pale ale fermented cool from one", "pale ale brewed cool from one",
            "Can tasters tell a pale ale fermented cool from one fermented warm?",
            "Can tasters tell a pale ale brewed cool from one fermented warm?" },
        { Fixed, "variable", "\"fermentation temperature\"", "\"yeast\"", "fermentation temperature", "yeast" },
        { Fixed, "beers.A", "\"A\": \"cool\"", "\"A\": \"cold\"", "cool", "cold" },
        { Fixed, "beers.B", "\"B\": \"warm\"", "\"B\": \"hot\"", "warm", "hot" },
        { Fixed, "hop variable", "\"form\"", "\"storage\"", "form", "storage" },
        { Fixed, "would change my mind", "\"a difference shown\"", "\"nothing\"", "a difference shown", "nothing" },
        { Fixed, "held equal", "[\"one mash\"]", "[\"one mash\", \"one yeast\"]", "one mash", "one mash; one yeast" },
        { Fixed, "follows from the variable", "[\"days to final gravity\"]", "[\"final gravity\"]", "days to final gravity",
            "final gravity" },
        { Fixed, "panel that decides", "\"panel that decides\": \"main\"", "\"panel that decides\": \"second\"", "main", "second" },
        { Fixed, "panels together", "side by side", "stratified", "side by side", "stratified" },
        { Fixed, "lab.precision", "\"value [BU]\": 0.7", "\"value [BU]\": 0.2",
            "[{\"analyte\":\"bitterness\",\"kind\":\"standard deviation\",\"condition\":\"repeatability\",\"value [BU]\":0.7}]",
            "[{\"analyte\":\"bitterness\",\"kind\":\"standard deviation\",\"condition\":\"repeatability\",\"value [BU]\":0.2}]" },
        { Fixed, "lab.just noticeable difference.low [BU]", "\"low [BU]\": 3", "\"low [BU]\": 1", "3", "1" },
        { Fixed, "lab.just noticeable difference.high [BU]", "\"high [BU]\": 5", "\"high [BU]\": 8", "5", "8" },
        { Fixed, "lab.just noticeable difference.source", "an invented one", "another one", "an invented one", "another one" },
        { Fixed, "panels.main.protocol", "\"protocol\": \"triangle\", \"tasters\": 24", "\"protocol\": \"duo-trio\", \"tasters\": 24",
            "triangle", "duo-trio" },
        { Fixed, "panels.main.tasters", "\"tasters\": 24", "\"tasters\": 30", "24", "30" },
        { Fixed, "panels.main.replicates", "\"replicates\": 1", "\"replicates\": 2", "1", "2" },
        { Fixed, "panels.main.sessions", "\"sessions\": 1", "\"sessions\": 2", "1", "2" },
        { Fixed, "panels.main.alpha", "\"alpha\": 0.05", "\"alpha\": 0.3", "0.05", "0.3" },
        { Fixed, "panels.main.power", "\"power\": 0.8", "\"power\": 0.6", "0.8", "0.6" },
        { Fixed, "panels.main.margin", "\"margin\": 0.25", "\"margin\": 0.3", "0.25", "0.3" },
        { Fixed, "panels.main.beta", "\"beta\": 0.05", "\"beta\": 0.2", "0.05", "0.2" },
        { Fixed, "panels.main.stopping", "\"stopping\": \"fixed\"", "\"stopping\": \"sequential\"", "fixed", "sequential" },
        { Fixed, "panels.main.seed", "\"seed\": 7", "\"seed\": 9", "7", "9" },
        { Fixed, "panels.main.prior.a", "\"a\": 1", "\"a\": 3", "1", "3" },
        { Fixed, "panels.main.prior.b", "\"b\": 1", "\"b\": 9", "1", "9" },
        { Fixed, "panels.main.asked beside", "[\"liking\"]", "[\"bitterness\", \"liking\"]", "liking", "bitterness; liking" },
        { Fixed, "panels.main.rules.duplicates", "\"duplicates\": \"first\"", "\"duplicates\": \"last\"", "first", "last" },
        { Fixed, "panels.main.rules.knew variable", "\"knew variable\": \"exclude\"", "\"knew variable\": \"count\"", "exclude", "count" },
        { Fixed, "panels.main.rules.brewer", "\"brewer\": \"exclude\"", "\"brewer\": \"count\"", "exclude", "count" },
        { Fixed, "panels.main.rules.late", "\"late\": \"exclude\"", "\"late\": \"count\"", "exclude", "count" },
        { Fixed, "panels.main.rules.no usable answer", "\"no usable answer\": \"exclude\"", "\"no usable answer\": \"count as wrong\"",
            "exclude", "count as wrong" },
        { Fixed, "panels.main.rules.missing", "\"missing\": \"exclude\"", "\"missing\": \"count as wrong\"", "exclude", "count as wrong" },
        { Fixed, "panels.main.rules.closes", "2026-05-02 23:00", "2026-05-03 23:00", "2026-05-02T23:00:00+00:00",
            "2026-05-03T23:00:00+00:00" },
        { Fixed, "panels.main.rules.brewers", "[\"T23\"]", "[]", "T23", "" },
        { Fixed, "panels.main.rules.tasters who knew", "[\"T24\"]", "[\"T01\"]", "T24", "T01" },
        { Fixed, "panels.main.the panel itself", "\"name\": \"main\"", "\"name\": \"mine\"", "declared", "" },
        { Directed, "panels.main.expected", "\"expected\": \"B\"", "\"expected\": \"A\"", "B", "A" },
        { Directed, "panels.main.attribute", "\"attribute\": \"fruity\"", "\"attribute\": \"bitter\"", "fruity", "bitter" },
    };

    [Fact]
    public void No_entry_of_a_plan_is_left_out()
    {
        using var one = new SealedFolder();
        using var two = new SealedFolder(SealedFolder.Directed);
        var all = new[] { one, two }.SelectMany(folder => PlanEntry.Of(folder.Open().Plan.Now)).Where(entry => entry.Panel != "second")
            .Select(entry => entry.Panel is null ? entry.Name : $"panels.{entry.Panel}.{entry.Name}").Distinct();
        Assert.Empty(all.Except(Entries.Select(row => (string)row[1])));
    }

    [Theory]
    [MemberData(nameof(Entries))]
    public void Before_the_first_ballot_a_change_is_named_stops_serving_and_can_be_amended(string protocol, string entry, string old,
        string by, string before, string after)
    {
        using var folder = Sealed(protocol);
        Change(folder, entry, old, by);
        var line = Assert.Single(folder.Warnings(), text => text.StartsWith($"trial.json, {entry}", StringComparison.Ordinal));
        Assert.Contains($": {Shown(before)} in the seal (seal-1.json), {Shown(after)} here. No ballot is in yet, so it can still be "
            + $"amended.", line, StringComparison.Ordinal);
        Assert.EndsWith("Put it back, or put the change on record: splitbatch amend, with --because.", line, StringComparison.Ordinal);
        if (!entry.EndsWith("itself", StringComparison.Ordinal))
            Assert.Contains("Put it back, or amend the plan", Assert.Throws<InvalidOperationException>(() => folder.Serve()).Message,
                StringComparison.Ordinal);

        var amended = folder.Open().Amend("we thought again", SealedFolder.At(1));
        Assert.Equal(2, amended.LatestSeal!.Number);
        Assert.Empty(amended.Plan.Unrecorded);
        Assert.DoesNotContain(folder.Warnings(), text => text.Contains("in the seal (", StringComparison.Ordinal));
        Assert.All(amended.Panels, panel => Assert.Empty(panel.Custody.Changes));
        if (entry.StartsWith("panels.main.", StringComparison.Ordinal) && !entry.EndsWith("itself", StringComparison.Ordinal))
        {
            Assert.Contains($"was changed to {Shown(after)} on 2026-05-02 13:00 UTC, because: we thought again",
                Assert.Single(amended.Panel().Custody.Amendments).ToString(), StringComparison.Ordinal);
        }
    }

    [Theory]
    [MemberData(nameof(Entries))]
    public void After_the_first_ballot_the_sealed_plan_decides_and_the_change_goes_before_the_result(string protocol, string entry,
        string old, string by, string before, string after)
    {
        using var folder = Sealed(protocol);
        folder.Serve();
        folder.Answer(right: 12);
        var clean = folder.Open().Verdict();
        Assert.True(clean.KeptToPlan);

        Change(folder, entry, old, by);
        var line = Assert.Single(folder.Warnings(), text => text.StartsWith($"trial.json, {entry}", StringComparison.Ordinal));
        Assert.Contains($": {Shown(before)} in the seal (seal-1.json), {Shown(after)} here. Ballots of panel main are in, so this is a "
            + $"departure: it goes before the result, which is a lead and not a test. The sealed plan decides.", line,
            StringComparison.Ordinal);
        var changed = folder.Open();
        var verdict = changed.Verdict();
        Assert.Equal(clean.Answer, verdict.Answer);
        Assert.Equal((clean.Evidence.NameA, clean.Evidence.NameB, clean.Evidence.Variable),
            (verdict.Evidence.NameA, verdict.Evidence.NameB, verdict.Evidence.Variable));
        var now = changed.Plan.Now;
        Assert.Empty(PlanDifference.Between(now with { Panels = [clean.Main!.Plan] }, now with { Panels = [verdict.Main!.Plan] }));
        Assert.False(verdict.KeptToPlan);
        Assert.Equal("main", changed.Panels[0].Name);
        Assert.All(changed.Panel().Custody.Changes,
            change => Assert.Contains("at a time that nobody recorded", change.ToString(), StringComparison.Ordinal));
        AssertLeads(changed, before, after, "at a time that nobody recorded");

        // On record it is a departure as well, and says when and why.
        var recorded = folder.Open().Amend("we thought again", SealedFolder.At(6));
        Assert.Equal(clean.Answer, recorded.Verdict().Answer);
        Assert.False(recorded.Verdict().KeptToPlan);
        AssertLeads(recorded, before, after, "on 2026-05-02 18:00 UTC, because: we thought again");
        Assert.Contains(folder.Warnings(),
            text => text.Contains($" from {Shown(before)} to {Shown(after)} after the first ballot, on 2026-05-02 18:00 UTC, because: we "
                + $"thought again. This departure goes before the result, which is a lead and not a test. The sealed plan decides.",
                StringComparison.Ordinal));
    }

    [Fact]
    public void A_precision_that_the_lab_states_only_with_its_return_is_no_departure_of_the_panel()
    {
        using var folder = new SealedFolder();
        folder.Edit("trial.json", "\"precision\": [ { \"analyte\": \"bitterness\", \"kind\": \"standard deviation\", \"condition\": "
            + "\"repeatability\", \"value [BU]\": 0.7 } ],", "\"precision\": [],");
        folder.Seal();
        folder.Serve();
        folder.Answer(right: 13);
        folder.Edit("trial.json", "\"precision\": []",
            "\"precision\": [ { \"kind\": \"standard deviation\", \"condition\": \"repeatability\", \"value [BU]\": 0.7 } ]");
        Assert.Contains(folder.Warnings(),
            text => text.Contains("It was said only after the plan was sealed, so what the lab's difference means was not fixed "
                + "beforehand.", StringComparison.Ordinal));
        Assert.Empty(folder.Open().Panel().Custody.Changes);
        Assert.True(folder.Open().Verdict().KeptToPlan);
    }

    /// <summary>
    /// The headline opens with what was changed and when, and gives the result by the sealed plan first and the other second; the list of
    /// departures says it whole.
    /// </summary>
    private static void AssertLeads(Trial trial, string before, string after, string when)
    {
        var verdict = trial.Verdict();
        Assert.Matches($"^A lead to follow, not a test: somebody changed .* from .* to .* after the first ballot, {Regex.Escape(when)}(, "
            + $"and [0-9]+ more departures? from the sealed plan)?\\. By the sealed plan, ", verdict.Headline);
        var whole = $"was changed from {Shown(before)} to {Shown(after)} after the first ballot, {when}";
        var kept = trial.Panel().Custody.Changes
            .Select(change => $"was changed from {change.From} to {change.To} after the first ballot, {change.WhenAndWhy}");
        Assert.Contains(whole, kept);
        if (trial.Plan.Now.Panel("main") is not null || verdict.Evidence.Changed is { Panels.Count: > 0 })
            Assert.Contains(" By the changed plan, ", verdict.Headline, StringComparison.Ordinal);
        Assert.Contains(verdict.Limitations,
            limit => limit.Sentence.StartsWith("Panel main departed from its plan. ", StringComparison.Ordinal)
                && limit.Sentence
                    .Contains($"planned {Shown(before)}, done {Shown(after)}. It was changed after the first ballot, {when}, so the "
                        + $"result is a lead to follow and not a test; the sealed plan computes the verdict.", StringComparison.Ordinal));
    }

    private static SealedFolder Sealed(string protocol)
    {
        var folder = new SealedFolder(protocol == Directed ? SealedFolder.Directed : SealedFolder.Triangle);
        folder.Seal();
        return folder;
    }

    private static void Change(SealedFolder folder, string entry, string old, string by)
    {
        folder.Edit("trial.json", old, by);

        // A panel with another name can no longer be the one that decides.
        if (entry.EndsWith("itself", StringComparison.Ordinal)) folder.Edit("trial.json", "\"panel that decides\": \"main\",", "");
    }

    private static string Shown(string value) => value.Length == 0 ? "nothing" : value;
}
