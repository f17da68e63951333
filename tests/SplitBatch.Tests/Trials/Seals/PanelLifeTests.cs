using SplitBatch.Panel.Deciding;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Planning;
using SplitBatch.Trials.Files;
using SplitBatch.Trials.Reading;

namespace SplitBatch.Trials.Seals;

/// <summary>A sealed panel from its key to its close: what is hidden, what is kept, and what changes its result.</summary>
public class PanelLifeTests
{
    // By the exact binomial, as in the panel's own tests: 13 of 24 triangles show a difference at 5 %, 12 do not.
    [Fact]
    public void Nothing_is_served_before_the_plan_is_sealed()
    {
        using var folder = new SealedFolder();
        Assert.Contains("This trial holds no sealed plan for panel main yet: when the plan is final, seal it (splitbatch declare, or "
            + "trial.Seal())", Assert.Throws<TrialIncompleteException>(() => folder.Serve()).Message, StringComparison.Ordinal);
        folder.Seal();
        Assert.Equal(24, folder.Serve().Panel().Serving!.Sets.Count);
        var served = Assert.Single(folder.Open().Plan.Of("main", PanelEventKind.Served));
        Assert.Equal(folder.Open().LatestSeal!.Fingerprint, served.Seal);
        Assert.Equal(Fingerprint.Of(File.ReadAllBytes(folder.Folder.PathOf("serving-main.csv"))), served.Key);
    }

    [Fact]
    public void No_call_shows_a_count_before_the_close()
    {
        using var folder = Served();
        folder.Answer(right: 9, of: 20);
        var trial = folder.Open();
        var panel = trial.Panel();
        Assert.True(panel.IsOpen);
        Assert.False(panel.HasCount);
        foreach (var call in new Action[]
        {
            () => _ = panel.Scored, () => _ = panel.Reading, () => _ = panel.InWords, () => _ = panel.Bias, () => _ = panel.Bayes,
            () => _ = panel.Departures,
            () => _ = panel.Remarks, () => _ = panel.HasRepeats, () => panel.AsPanelCount(), () => trial.Forest(),
            () => _ = trial.CountedPanels, () => _ = panel.Ratings,
        })
        {
            Assert.Contains("its count is hidden until the last ballot is in or somebody closes it",
                Assert.Throws<TrialIncompleteException>(call).Message, StringComparison.Ordinal);
        }

        Assert.EndsWith("Not counted yet.", panel.ToString(), StringComparison.Ordinal);
        Assert.Null(trial.Verdict().Answer);
        Assert.Null(trial.Together());
        var tally = trial.Tally();
        Assert.Equal((20, 4, false), (tally.Answered, tally.StillOut, tally.IsOver));
        Assert.Null(tally.Verdict);
        Assert.DoesNotContain("right", tally.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain(folder.Warnings(), text => text.Contains("right", StringComparison.Ordinal));
        Assert.DoesNotContain(typeof(LiveTally).GetProperties(),
            property => property.Name is "Correct" or "Counted" or "Scored" or "Course");
    }

    [Fact]
    public void With_the_last_ballot_the_panel_is_over_and_the_close_is_kept()
    {
        using var folder = Served();
        var sets = folder.Open().Panel().Serving!.Sets;
        folder.Answer(right: 13, of: 23);
        var trial = folder.Open();
        Assert.True(trial.Panel().IsOpen);
        var last = sets[23];
        var tally = trial.Enter(last.Taster, last.CodedCups.First().Code);
        Assert.True(tally.IsOver);
        Assert.Equal((24, "the last ballot is in"),
            Assert.Single(folder.Open().Plan.Of("main", PanelEventKind.Closed)) is var closed
                ? (closed.Ballots, closed.Because)
                : default);
        Assert.True(folder.Open().Panel().HasCount);
        Assert.True(folder.Open().Verdict().KeptToPlan);
    }

    [Fact]
    public void A_panel_that_ended_early_is_a_lead_and_the_price_of_stopping_at_will_is_exact()
    {
        using var folder = Served();
        folder.Answer(right: 6, of: 8);
        var trial = folder.Open().Close("main", new DateOnly(2026, 5, 2), who: "the host", clock: SealedFolder.At(7));
        var verdict = trial.Verdict();
        Assert.False(verdict.KeptToPlan);
        var departure = Assert.Single(verdict.Main!.Departures);
        Assert.Equal(("ballots", "24", "8", Severity.Error), (departure.What, departure.Planned, departure.Done, departure.Severity));
        // 13.7 %: a look after each of 24 triangles, 5 % at each (exact path counting; the same value by R and by SciPy in
        // tests/reference/methods).
        Assert.Equal(0.137, EarlyLooks.At(trial.Panel().Plan.Protocol, 0.05, [.. Enumerable.Range(1, 24)]).TrueAlpha, 3);
        Assert.Equal("The panel ended early. Whoever knows the count after each ballot and stops at the first difference finds a false "
            + "one in 14 % of panels, and not in 5 %. Nobody can tell from outside why it ended, so the result is a lead to follow and "
            + "not a test.", departure.Meaning);
        Assert.StartsWith(
            "A lead to follow, not a test: 8 of 24 sealed ballots came in, and stopping when one likes finds a false difference in 14 % "
                + "of panels. By the sealed plan, ",
            verdict.Headline, StringComparison.Ordinal);
        Assert.StartsWith("Panel main departed from its plan. Ballots: planned 24, done 8. The panel ended early.", trial.Panel().InWords,
            StringComparison.Ordinal);
        Assert.Contains(folder.Warnings(),
            text => text.StartsWith("ballots-main.csv: Panel main, ballots: planned 24, done 8.", StringComparison.Ordinal));
        Assert.Equal(new DateOnly(2026, 5, 2), trial.Panel().Custody.Closed);
    }

    [Fact]
    public void A_few_missing_ballots_make_no_lead_where_they_could_not_have_turned_the_answer()
    {
        using var folder = Served();
        folder.Answer(right: 18, of: 22);
        var verdict = folder.Open().Close().Verdict();
        Assert.Equal(PanelAnswer.DifferenceShown, verdict.Answer);
        Assert.True(verdict.KeptToPlan);
        Assert.Equal(Severity.Warning, Assert.Single(verdict.Main!.Departures).Severity);
        Assert.Equal("Fewer came in than were sealed, and whatever the missing ones had answered, the result would be the same.",
            verdict.Main!.Departures[0].Meaning);
        Assert.Contains(" 22 of 24 sealed ballots came in; what is missing could not have changed the answer. ", verdict.Headline,
            StringComparison.Ordinal);
    }

    [Fact]
    public void A_changed_plan_that_says_the_same_is_not_told_twice()
    {
        using var folder = Served();
        folder.Answer(right: 15);
        folder.Edit("trial.json", "\"alpha\": 0.05", "\"alpha\": 0.06");
        var headline = folder.Open().Verdict().Headline;
        Assert.StartsWith("A lead to follow, not a test: somebody changed alpha of panel main from 0.05 to 0.06 after the first ballot,",
            headline, StringComparison.Ordinal);
        Assert.Contains("15 of 24 blind triangles were right, where guessing gives 8. By the changed plan, the result is the same.",
            headline, StringComparison.Ordinal);
    }

    [Fact]
    public void A_missing_ballot_that_could_turn_the_answer_makes_a_lead()
    {
        using var folder = Served();
        folder.Answer(right: 12, of: 23);
        Assert.False(folder.Open().Close().Verdict().KeptToPlan);
    }

    [Fact]
    public void Counting_missing_ballots_as_wrong_does_not_make_an_early_end_rule_anything_out()
    {
        using var folder = new SealedFolder(
            SealedFolder.Plain.Replace("\"missing\": \"exclude\"", "\"missing\": \"count as wrong\"", StringComparison.Ordinal));
        folder.Seal();
        folder.Serve();
        folder.Answer(right: 4, of: 8);
        var verdict = folder.Open().Close().Verdict();
        Assert.False(verdict.KeptToPlan);
    }

    [Fact]
    public void Extra_ballots_are_kept_and_the_first_ones_decide()
    {
        // Six more people walk in; the key is drawn for them as well.
        using var folder = new SealedFolder(SealedFolder.Plain);
        folder.Edit("trial.json", "\"tasters\": 24", "\"tasters\": 30");
        var large = Serving(folder);
        folder.Edit("trial.json", "\"tasters\": 30", "\"tasters\": 24");
        folder.Seal();
        folder.Write("serving-main.csv", large);
        folder.Answer([.. folder.Open().Panel().Serving!.Sets.Select((set, i) => SealedFolder.Row(set, right: i is < 12 or > 23, i))]);
        var trial = folder.Open();
        Assert.Equal((24, 12), (trial.Panel().Scored.Counted, trial.Panel().Scored.Correct));
        var departure = Assert.Single(trial.Verdict().Main!.Departures, departure => departure.What == "ballots");
        Assert.Equal(("24", "30", Severity.Error), (departure.Planned, departure.Done, departure.Severity));
        Assert.Equal("More came in than were sealed. The first 24 decide; more ballots until the count pleases show what is not there, so "
            + "the result is a lead to follow and not a test.", departure.Meaning);
        Assert.False(trial.Verdict().KeptToPlan);
    }

    [Fact]
    public void What_is_asked_beside_and_was_not_sealed_is_a_lead()
    {
        using var folder = Served();
        folder.Answer(right: 13);
        var set = folder.Open().Panel().Serving!.Sets[0];
        folder.Write("ratings-main.csv",
            "taster,code,liking,fruity\n" + string.Concat(set.CodedCups.Select(cup => $"{set.Taster},{cup.Code},4,5\n")));
        Assert.Contains("Asked beside and not sealed beforehand, so a lead and not a test: fruity.", folder.Open().Panel().Remarks);
        Assert.True(folder.Open().Verdict().KeptToPlan);
    }

    [Fact]
    public void Somebody_whom_the_key_does_not_know_is_not_counted_and_named()
    {
        using var folder = Served();
        folder.Answer(right: 12);
        File.AppendAllText(folder.Folder.PathOf("ballots-main.csv"), "T77,,453,2026-05-02 19:40\n");
        var trial = folder.Open();
        Assert.Equal((24, 12), (trial.Panel().Scored.Counted, trial.Panel().Scored.Correct));
        Assert.Contains(trial.Panel().Remarks, remark => remark.StartsWith("A ballot of T77 is not counted", StringComparison.Ordinal));
        Assert.True(trial.Verdict().KeptToPlan);
        Assert.Contains("Nothing was written", Assert.Throws<ArgumentException>(() => trial.Enter("T78", "453")).Message,
            StringComparison.Ordinal);
    }

    [Fact]
    public void A_walk_in_written_into_the_key_by_hand_breaks_it()
    {
        using var folder = Served();
        folder.Answer(right: 12);
        var more = string.Concat(new[] { "1,123,A", "2,234,A", "3,345,B" }.Select(cup => $"main,triangle,1,S1,T77,1,25,{cup}\n"));
        File.AppendAllText(folder.Folder.PathOf("serving-main.csv"), more);
        var trial = folder.Open();
        Assert.Contains("The key of panel main is not the one that was drawn", Assert.Single(trial.Panel().Custody.Breaks),
            StringComparison.Ordinal);
        Assert.False(trial.Verdict().KeptToPlan);
        Assert.Contains(folder.Warnings(),
            text => text.StartsWith("panel-log.csv: The key of panel main is not the one that was drawn", StringComparison.Ordinal));
    }

    [Fact]
    public void A_ballot_after_the_close_is_kept_and_not_counted()
    {
        using var folder = Served();
        folder.Answer(right: 18, of: 22);
        folder.Open().Close();
        folder.Answer(right: 18, of: 23);
        var trial = folder.Open();
        Assert.Equal((22, 18), (trial.Panel().Scored.Counted, trial.Panel().Scored.Correct));
        var departure = Assert.Single(trial.Verdict().Main!.Departures,
            departure => departure is { What: "close", Done: "1 ballot", Severity: Severity.Error });
        Assert.Equal("They came in when the count could be known and are not counted; so the result is a lead to follow and not a test.",
            departure.Meaning);
    }

    [Fact]
    public void Panels_that_trade_places_still_stand_as_they_were_sealed()
    {
        using var folder = Served();
        folder.Serve("second");
        folder.Answer(right: 8);
        folder.Answer(right: 10, of: 12, panel: "second");
        Assert.Equal("main", folder.Open().Verdict().Main!.Plan.Name);
        folder.Edit("trial.json", "\"panel that decides\": \"main\"", "\"panel that decides\": \"second\"");
        var verdict = folder.Open().Verdict();
        Assert.Equal(("main", PanelAnswer.Inconclusive, false), (verdict.Main!.Plan.Name, verdict.Answer!.Value, verdict.KeptToPlan));
    }

    [Fact]
    public void Whoever_looks_early_has_to_say_so_and_it_is_kept()
    {
        using var folder = Served();
        folder.Answer(right: 9, of: 20);
        Assert.Throws<ArgumentException>(() => folder.Open().LookEarly("main", " "));
        var seen = folder.Open().LookEarly("main", "the room has to be left", "the host", SealedFolder.At(6));
        Assert.Equal("9 right of 20 so far in panel main. That the count was looked at is kept in panel-log.csv, and will stand before "
            + "the result.", seen.ToString());
        folder.Open().LookEarly("main", "again");
        folder.Answer(right: 13);
        var trial = folder.Open();
        Assert.Equal(2, trial.Panel().Custody.Looks.Count);
        Assert.Equal("the host looked on 2026-05-02 18:00 UTC, with 20 ballots in, because: the room has to be left",
            trial.Panel().Custody.Looks[0]);
        Assert.False(trial.Verdict().KeptToPlan);
        Assert.Contains("panel-log.csv: Panel main: the host looked on 2026-05-02 18:00 UTC, with 20 ballots in, because: the room has to "
            + "be left. This departure goes before the result, which is a lead and not a test.", folder.Warnings());
        Assert.False(trial.LookEarly("main", "it is over").IsKept);
        Assert.Equal(2, folder.Open().Panel().Custody.Looks.Count);
    }

    [Fact]
    public void A_sequential_panel_says_only_pour_on_or_stop_until_it_is_over()
    {
        using var folder = new SealedFolder(
            """{ "name": "main", "protocol": "triangle", "tasters": 60, "stopping": "sequential", "seed": 3 }""");
        folder.Seal();
        var sets = folder.Serve().Panel().Serving!.Sets;
        var tally = folder.Open().Tally();
        var said = new List<string>();
        foreach (var set in sets)
        {
            tally = folder.Open().Enter(set.Taster, set.CodedCups.First(cup => cup.Beer == set.Order.OddBeer).Code);
            if (tally.IsOver) break;
            said.Add(tally.ToString());
            Assert.Null(folder.Open().Verdict().Answer);
        }

        Assert.All(said, text => Assert.Matches("^[0-9]+ of 60 ballots are in: pour on.$", text));
        Assert.InRange(said.Count, 2, 20);
        Assert.Equal(PanelAnswer.DifferenceShown, folder.Open().Verdict().Answer);
        Assert.True(folder.Open().Verdict().KeptToPlan);
        Assert.Equal("the sequential plan has reached a line",
            Assert.Single(folder.Open().Plan.Of("main", PanelEventKind.Closed)).Because);
    }

    [Fact]
    public void A_key_kept_apart_is_nowhere_in_the_trial_until_the_close_and_is_asked_for_then()
    {
        using var folder = new SealedFolder(SealedFolder.Plain.Replace("\"seed\": 7, ", "", StringComparison.Ordinal));
        using var apart = new TemporaryFolder();
        folder.Seal();
        var trial = folder.Serve(keyFolder: apart.Path);
        Assert.Null(trial.Panel().Serving);
        Assert.False(folder.Holds("serving-main.csv"));
        Assert.DoesNotContain(",A\n", folder.Read("codes-main.csv"), StringComparison.Ordinal);
        Assert.All(Directory.GetFiles(folder.Path),
            file => Assert.DoesNotContain("drawn with seed", File.ReadAllText(file), StringComparison.Ordinal));

        // Those who enter need the codes and not the key.
        var key = trial.KeyKeptIn(apart.Path);
        Assert.Throws<ArgumentException>(() => trial.Enter("T01", "000"));
        Assert.Equal(1, trial.Enter(key.Sets[0].Taster, key.Sets[0].CodedCups.First().Code).Answered);
        folder.Answer([.. key.Sets.Select((set, i) => SealedFolder.Row(set, i < 13, i))]);
        Assert.Equal((24, false), folder.Open().Tally() is var tally ? (tally.Answered, tally.IsOver) : default);
        Assert.Contains("kept apart", Assert.Throws<TrialIncompleteException>(() => folder.Open().Panel().Scored).Message,
            StringComparison.Ordinal);
        Assert.Contains("say in which folder serving-main.csv lies",
            Assert.Throws<TrialIncompleteException>(() => folder.Open().Close()).Message, StringComparison.Ordinal);

        // Another key than the one that was drawn is refused, whatever it looks like.
        var whole = File.ReadAllText(apart.PathOf("serving-main.csv"));
        apart.Write("serving-main.csv", whole + "\n");
        Assert.Contains("is not the one that was drawn for panel main",
            Assert.Throws<InvalidOperationException>(() => folder.Open().Close(keyFolder: apart.Path)).Message, StringComparison.Ordinal);
        apart.Write("serving-main.csv", whole);
        var closed = folder.Open().Close(keyFolder: apart.Path);
        Assert.Equal((24, 13), (closed.Panel().Scored.Counted, closed.Panel().Scored.Correct));
        Assert.True(closed.Verdict().KeptToPlan);
        Assert.Equal(whole, folder.Read("serving-main.csv"));
    }

    [Fact]
    public void A_seed_that_stands_in_the_trial_cannot_be_kept_apart()
    {
        using var folder = new SealedFolder();
        using var apart = new TemporaryFolder();
        folder.Seal();
        Assert.Contains("whoever reads that can draw the key from it",
            Assert.Throws<InvalidOperationException>(() => folder.Serve(keyFolder: apart.Path)).Message, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFiles(apart.Path));
    }

    [Fact]
    public void A_plan_that_is_sealed_when_ballots_are_in_stays_not_sealed()
    {
        using var folder = new SealedFolder(SealedFolder.Plain);
        folder.Write("serving-main.csv", Serving(folder));
        folder.Answer(right: 13);
        folder.Seal();
        Assert.False(folder.Open().Panel().Custody.IsSealed);
        Assert.Contains(folder.Warnings(),
            text => text.StartsWith("seal-1.json: The plan of panel main was sealed only after its first ballot, so nobody can check that "
                + "it was fixed beforehand. If the ballots bear a wrong time, mend that.", StringComparison.Ordinal));
    }

    [Fact]
    public void A_folder_of_version_0_1_is_counted_as_before_and_called_not_sealed()
    {
        using var folder = new PanelFolder("triangle", 24);
        folder.Answer(right: 13, change: (set, row) => set.Number == 24 ? null : row);
        var trial = folder.Open();
        Assert.False(trial.Panel().Custody.IsSealed);
        Assert.False(trial.Panel().IsOpen);
        Assert.Equal((23, 13), (trial.Panel().Scored.Counted, trial.Panel().Scored.Correct));
        Assert.Equal("Not sealed.", trial.Panel().Custody.ToString());
        Assert.Equal(Severity.Warning, Assert.Single(trial.Panel().Departures).Severity);
        Assert.True(trial.Verdict().KeptToPlan);
        Assert.Contains(folder.Check(),
            fault => fault.Problem == "The plan of panel main was not sealed before its first ballot, so nobody can check that it was "
                + "fixed beforehand.");
    }

    private static SealedFolder Served()
    {
        var folder = new SealedFolder(SealedFolder.Plain);
        folder.Seal();
        folder.Serve();
        return folder;
    }

    private static string Serving(SealedFolder folder) =>
        ServingKeyFile.Write(SplitBatch.Panel.Serving.ServingPlan.Balanced(folder.Open().Panel().Plan));
}
