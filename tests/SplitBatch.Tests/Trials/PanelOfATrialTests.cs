using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;
using SplitBatch.Panel.Liking;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;
using SplitBatch.Panel.Serving;
using SplitBatch.Trials.Files;
using SplitBatch.Trials.Reading;

namespace SplitBatch.Trials;

/// <summary>
/// What a trial makes of its panels' files: directions, repeats, sequential plans, ratings, words, forms, several panels.
/// </summary>
public class PanelOfATrialTests
{
    private const string Directional = "\"expected\": \"A\", \"attribute\": \"malty\"";
    private static readonly ServingOptions ExpectsA = new() { Expected = Side.A };

    [Theory]
    [InlineData("paired directional")]
    [InlineData("3-AFC")]
    public void The_key_keeps_the_expected_half_and_the_plan_must_agree(string protocol)
    {
        using var folder = new PanelFolder(protocol, 12, Directional, ExpectsA);
        folder.Answer(right: 9);
        var trial = folder.Open();
        Assert.Equal(9, trial.Panel().Scored.Correct);
        Assert.Equal(Side.A, trial.Panel().Key.Expected);
        Assert.Contains("malty", trial.Panel().Key.Design.Task, StringComparison.Ordinal);

        folder.Replace("trial.json", "\"expected\": \"A\"", "\"expected\": \"B\"");
        var error = Assert.Throws<TrialFolderException>(folder.Open);
        Assert.Contains(error.Faults,
            fault => fault is { File: "serving-main.csv", Column: "expected", Value: "A" }
                && fault.Problem.Contains(". An answer would be scored the wrong way round.", StringComparison.Ordinal));
    }

    [Fact]
    public void A_direction_that_is_not_fixed_beforehand_is_a_fault()
    {
        using var folder = new PanelFolder("3-AFC", 12);
        var error = Assert.Throws<TrialFolderException>(folder.Open);
        Assert.Contains(error.Faults,
            fault => fault.Column == "panels[0].expected" && fault.Accepted!.Contains("\"expected\": \"B\"", StringComparison.Ordinal));
    }

    [Fact]
    public void A_key_that_contradicts_itself_about_the_expected_half_is_refused()
    {
        using var folder = new PanelFolder("paired directional", 12, Directional, ExpectsA);
        var lines = ServingKeyFile.Write(folder.Plan).TrimEnd('\n').Split('\n');
        lines[^1] = lines[^1][..^1] + "B";
        folder.Write("serving-main.csv", string.Join('\n', lines) + "\n");
        Assert.Contains(Assert.Throws<TrialFolderException>(folder.Open).Faults, fault => fault is { Column: "expected", Row: 26 });
    }

    [Fact]
    public void A_key_without_the_expected_half_takes_the_plans_word_and_says_so()
    {
        using var folder = new PanelFolder("paired directional", 12, Directional, ExpectsA);
        folder.Write("serving-main.csv",
            string.Join('\n', ServingKeyFile.Write(folder.Plan).TrimEnd('\n').Split('\n')
                .Select(line => line.StartsWith('#') ? line : line[..line.LastIndexOf(',')])) + "\n");
        folder.Answer(right: 9);
        Assert.Equal(9, folder.Open().Panel().Scored.Correct);
        Assert.Contains(folder.Check(),
            fault => fault is { Column: "expected", Severity: Severity.Warning }
                && fault.Problem == "The key does not say which beer was expected to be the stronger; the plan's word is taken.");
        var faults = new FaultList();
        var lines = ServingKeyFile.Write(folder.Plan).TrimEnd('\n').Split('\n');
        lines[^1] = lines[^1][..^1] + "B";
        Assert.Null(ServingKeyFile.Read(CsvTable.Read("serving-main.csv", new StringReader(string.Join('\n', lines)), faults)));
        Assert.Equal("The key expects both beers to be the stronger.", Assert.Single(faults).Problem);
    }

    [Theory]
    [InlineData("A-not-A", "\"stopping\": \"sequential\"", "stopping",
        "A sequential plan needs a known guessing chance; A-not-A has none.")]
    [InlineData("triangle", "\"stopping\": \"sequential\", \"replicates\": 2", "replicates",
        "A sequential plan takes one set from each taster, because repeats are not new tasters.")]
    [InlineData("triangle", "\"rules\": { \"closes\": \"tonight\" }", "rules.closes", "The time cannot be read.")]
    public void A_plan_that_cannot_be_kept_is_refused(string protocol, string more, string column, string problem)
    {
        using var folder = new PanelFolder(protocol, 12, more);
        Assert.Contains(Assert.Throws<TrialFolderException>(folder.Open).Faults,
            fault => fault.Column == $"panels[0].{column}" && fault.Problem == problem);
    }

    [Fact]
    public void Repeats_are_read_as_repeats_in_the_verdict_too()
    {
        using var folder = new PanelFolder("triangle", 2, "\"replicates\": 5", new ServingOptions { Replicates = 5 });
        folder.Answer(right: 8);
        var trial = folder.Open();
        var panel = trial.Panel();
        Assert.NotNull(panel.Repeats);
        Assert.Throws<NotApplicableException>(() => panel.Bayes);
        Assert.Contains("Repeats by one taster are not new tasters", panel.InWords, StringComparison.Ordinal);
        var claims = trial.Verdict().Claims;
        Assert.Contains("2 people tasted 10 blind sets", claims.Single(claim => claim.Id == "panel.main.count").Sentence,
            StringComparison.Ordinal);
        var repeats = claims.Single(claim => claim.Id == "panel.main.repeats");
        Assert.Contains("Repeats by one taster are not new tasters", repeats.Sentence, StringComparison.Ordinal);
        Assert.Contains(10.0, repeats.Numbers);
        Assert.DoesNotContain(claims, claim => claim.Id == "panel.main.bayes");
        Assert.Same(panel.Reading, panel.Reading);
    }

    [Fact]
    public void Repeats_of_a_two_sided_pair_are_judged_taster_by_taster()
    {
        using var folder = new PanelFolder("paired two-sided", 2, "\"replicates\": 10", new ServingOptions { Replicates = 10 });
        folder.Answer(right: 20);
        var trial = folder.Open();
        Assert.Equal(PanelAnswer.Inconclusive, trial.Verdict().Answer);
        Assert.Contains("Whatever so small a panel had answered, it could not have shown a difference",
            trial.Verdict().Claims.Single(claim => claim.Id == "panel.main.difference").Sentence, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("A-not-A")]
    [InlineData("same-different")]
    public void A_panel_without_a_guessing_chance_is_counted_by_its_own_test(string protocol)
    {
        using var folder = new PanelFolder(protocol, 40);
        folder.Answer(right: 36);
        var verdict = folder.Open().Verdict();
        Assert.Equal(PanelAnswer.DifferenceShown, verdict.Answer);
        Assert.Contains("a difference is shown", verdict.Claims.Single(claim => claim.Id == "panel.main.difference").Sentence,
            StringComparison.Ordinal);
        Assert.Equal("Fisher's exact test, one-sided", verdict.Claims.Single(claim => claim.Id == "panel.main.difference").Method);

        folder.Answer(right: 22);
        verdict = folder.Open().Verdict();
        Assert.Equal(PanelAnswer.Inconclusive, verdict.Answer);
        Assert.StartsWith("Left or right? It is open whether tasters can tell them apart: ", verdict.Headline, StringComparison.Ordinal);
        Assert.Contains(verdict.Next, claim => claim.Sentence.Contains("such as the triangle", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(8, SequentialDecision.Different, PanelAnswer.DifferenceShown)]
    [InlineData(0, SequentialDecision.Similar, PanelAnswer.MarginRuledOut)]
    public void A_sequential_panel_decides_by_its_lines(int right, SequentialDecision decision, PanelAnswer answer)
    {
        using var folder = new PanelFolder("triangle", 40, "\"stopping\": \"sequential\"");
        folder.Answer(right, (set, row) => set.Number <= 20 ? row : null);
        var trial = folder.Open();
        var path = trial.Panel().Sequential!;
        Assert.Equal(decision, path.Decision);
        Assert.True(path.Unused > 0);
        Assert.Equal(answer, trial.Verdict().Answer);
        Assert.Contains(trial.Panel().Remarks,
            remark => remark.StartsWith("Ballots that came in after the sequential panel had decided", StringComparison.Ordinal));
        Assert.Contains("the two lines of the plan", trial.Verdict().Claims.Single(claim => claim.Id == "panel.main.difference").Sentence,
            StringComparison.Ordinal);
        Assert.DoesNotContain(trial.Panel().Departures, departure => departure.What == "tasters");
    }

    [Fact]
    public void A_sequential_panel_between_its_lines_goes_on()
    {
        using var folder = new PanelFolder("triangle", 40, "\"stopping\": \"sequential\"");
        folder.Answer(right: 2, (set, row) => set.Number <= 4 ? row : null);
        var verdict = folder.Open().Verdict();
        Assert.StartsWith("Left or right? The panel is not finished", verdict.Headline, StringComparison.Ordinal);
        Assert.Contains(verdict.Next, claim => claim.Sentence.StartsWith("Serve the next taster", StringComparison.Ordinal));
    }

    [Fact]
    public void The_prior_is_the_plans_and_stands_in_the_claim()
    {
        using var folder = new PanelFolder("triangle", 24, "\"prior\": { \"a\": 1, \"b\": 9 }");
        folder.Answer(right: 11);
        var trial = folder.Open();
        var reading = trial.Panel().Bayes;
        Assert.Equal(BayesReading.Of(Protocol.Triangle, 24, 11, 0.3, 1, 9).ChanceAboveMargin, reading.ChanceAboveMargin, 1e-12);
        var claim = trial.Verdict().Claims.Single(one => one.Id == "panel.main.bayes");
        Assert.Contains("a beta distribution with 1 and 9", claim.Sentence, StringComparison.Ordinal);
        Assert.Contains(100 * reading.ChanceAboveMargin, claim.Numbers);
    }

    [Fact]
    public void A_web_forms_export_is_mapped_once_in_trial_json()
    {
        using var folder = new PanelFolder("triangle", 12, """
            "ballots": { "file": "incoming/form.csv",
              "columns": { "when": "Timestamp", "taster": "Your number", "answer": "Which cup is the odd one?", "knew variable": "Did you know what was changed?" },
              "words": { "Yes, I did": "yes", "Not at all": "no" } }
            """);
        Assert.False(folder.Open().Panel().HasCount);
        folder.Write("incoming/form.csv",
            "\"Timestamp\",\"Your number\",\"Which cup is the odd one?\",\"Did you know what was changed?\",\"Anything else?\"\n"
                + string.Concat(folder.Plan.Sets.Select(set =>
                    $"\"2026/05/02 7:{10 + set.Number}:12 PM GMT+2\",\"{set.Taster.ToLowerInvariant()}\",\"cup "
                        + $"{folder.AnswerTo(set, set.Number <= 7)}\",\"{(set.Number == 2 ? "Yes, I did" : "Not at all")}\",\"\"\n")));
        var panel = folder.Open().Panel();
        Assert.Equal((11, 6), (panel.Scored.Counted, panel.Scored.Correct));
        Assert.Equal(new DateTimeOffset(2026, 5, 2, 19, 11, 12, TimeSpan.FromHours(2)), panel.Ballots[0].When);
        Assert.Equal(["incoming/form.csv"], panel.BallotFiles);
        Assert.Contains(folder.Open().InputFiles, file => file.Name == "incoming/form.csv");
        Assert.Contains("incoming/form.csv", folder.Open().Verdict().Claims.Single(claim => claim.Id == "panel.main.count").Sources);
    }

    [Fact]
    public void A_column_that_the_form_or_the_ballots_do_not_have_is_named()
    {
        using var folder = new PanelFolder("triangle", 12,
            """ "ballots": { "file": "incoming/form.csv", "columns": { "taster": "Your numbr", "answr": "Cup" } } """);
        folder.Write("incoming/form.csv", "Your number,Cup\nT01,123\n");
        var faults = Assert.Throws<TrialFolderException>(folder.Open).Faults;
        Assert.Contains(faults,
            fault => fault.Column == "panels[0].ballots.columns.answr" && fault.Suggestion!.Contains("answer", StringComparison.Ordinal));
        Assert.Contains(faults,
            fault => fault is { File: "incoming/form.csv", Column: "Your numbr" }
                && fault.Suggestion!.Contains("Your number", StringComparison.Ordinal));
    }

    [Fact]
    public void Ratings_preferences_and_words_are_decoded_by_the_key()
    {
        using var folder = new PanelFolder("triangle", 6);
        folder.Answer(right: 4, (set, row) => row + (set.Number == 6 ? "none" : set.CodedCups.First(cup => cup.Beer == Side.B).Code));
        folder.Write("ratings-main.csv",
            "taster,code,bitterness\n"
                + string.Concat(folder.Plan.Sets
                    .SelectMany(set => set.CodedCups.Select(cup => $"{set.Taster},{cup.Code},{(cup.Beer == Side.A ? 4 : 6)}\n"))));
        folder.Write("comments-main.csv",
            "taster,code,comment\n"
                + string.Concat(folder.Plan.Sets
                    .Select(set => $"{set.Taster},{set.CodedCups.First(cup => cup.Beer == Side.B).Code},harsh\n")));
        var trial = folder.Open();
        var report = trial.Panel().Ratings!;
        Assert.Equal((6, 4.0, 6.0, 2.0),
            (report.Ratings[0].Tasters, report.Ratings[0].MeanA, report.Ratings[0].MeanB, report.Ratings[0].Difference));
        Assert.Equal(4, report.Ratings.Single(rating => rating.Group == RatingGroup.Correct).Tasters);
        Assert.Equal((0, 5, 1), (report.Preferences[0].Test.ForA, report.Preferences[0].Test.ForB, report.Preferences[0].Test.None));
        // Two of the three cups are one beer, so the preference is not read of those who were right: three questions are left.
        Assert.Equal(3, report.Questions);
        // Six of six higher: 2/64; by Holm the smallest of three is taken three times.
        Assert.Equal(2.0 / 64, report.Ratings[0].Ranks.PValue, 1e-12);
        Assert.Equal(3 * 2.0 / 64, report.Ratings[0].AdjustedPValue, 1e-12);
        var words = trial.Panel().Comments!;
        Assert.Equal((0, 6), (words.Counts[0].A, words.Counts[0].B));
        string[] ids = [.. trial.Verdict().Claims.Select(claim => claim.Id)];
        Assert.All(["panel.main.rating.bitterness", "panel.main.preference", "panel.main.words", "panel.main.bias"],
            id => Assert.Contains(id, ids));
    }

    [Fact]
    public void A_rating_of_a_cup_that_was_not_served_is_named_by_its_row()
    {
        using var folder = new PanelFolder("triangle", 6);
        folder.Answer(right: 4);
        folder.Write("ratings-main.csv",
            $"taster,code,bitterness\nT1,{folder.Plan.Sets[0].Cups[0].Code},7\nT1,"
                + $"{folder.Plan.Sets[0].Cups[0].Code},6\nT2,999,7\nT99,999,7\n");
        var faults = Assert.Throws<TrialFolderException>(folder.Open).Faults;
        Assert.Equal([3, 4, 5], faults.Where(fault => fault.File == "ratings-main.csv").Select(fault => fault.Row!.Value).Order());
    }

    [Fact]
    public void Ratings_of_a_taster_whose_ballot_does_not_count_are_left_out_and_named()
    {
        using var folder = new PanelFolder("triangle", 6);
        folder.Answer(right: 4, (set, row) => set.Number == 2 ? row.Replace(",,,,", ",yes,,,", StringComparison.Ordinal) : row);
        folder.Write("ratings-main.csv",
            "taster,code,liking\n"
                + string.Concat(folder.Plan.Sets
                    .SelectMany(set => set.CodedCups.Select(cup => $"{set.Taster},{cup.Code},{cup.Position}\n"))));
        var panel = folder.Open().Panel();
        Assert.Equal(5, panel.Ratings!.Ratings[0].Tasters);
        Assert.Contains("The ratings of T2 are left out, because no ballot of this taster counts.", panel.Remarks);
    }

    [Fact]
    public void The_examples_panels_stand_side_by_side_and_are_combined_as_declared()
    {
        var trial = Trial.Open(Examples.Folder("amber-cone-or-pellet"));
        var forest = trial.Forest();
        Assert.Equal(["main", "evening"], forest.Rows.Select(row => row.Panel.Name));
        // Some names stand in the keys of both panels, so people are counted and not sets.
        Assert.Null(trial.Together());
        var together = trial.TogetherByPeople()!;
        Assert.Equal((24, 47), (together.People, together.Sets));
        Assert.Equal(forest.Combine().PValue, together.PValue, 1e-12);
        // Both guess with one chance in three, so the sum is one binomial: 21 of 47.
        Assert.Equal(DifferenceTest.Of(Protocol.Triangle, 47, 21).PValue, together.PValue, 1e-12);
        var claim = trial.Verdict().Claims.Single(one => one.Id == "panels.together");
        Assert.Contains(100 * together.PValue, claim.Numbers);
        Assert.StartsWith("exact test of the sum; Student's t over people", claim.Method, StringComparison.Ordinal);
        Assert.Equal(PanelAnswer.Inconclusive, trial.Verdict().Answer);
    }

    [Fact]
    public void Panels_with_repeats_stand_beside_the_others_and_are_not_added_to_them()
    {
        var repeats = new PanelCount("club", Protocol.Triangle, 16, 11) { Repeats = [new(4, 4), new(4, 4), new(4, 2), new(4, 1)] };
        var forest = Forest.Of([new PanelCount("main", Protocol.Triangle, 24, 11), repeats]);
        Assert.True(forest.Rows[1].DPrime.Interval.Low < DPrimeEstimate.Of(Protocol.Triangle, 16, 11).Interval.Low);
        Assert.Contains("not new tasters", Assert.Throws<ArgumentException>(forest.Combine).Message, StringComparison.Ordinal);
    }
}
