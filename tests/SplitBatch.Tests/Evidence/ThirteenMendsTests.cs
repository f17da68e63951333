using SplitBatch.BrewDay;
using SplitBatch.Evidence.Findings;
using SplitBatch.Lab;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;
using SplitBatch.Panel.Liking;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Evidence;

/// <summary>Sentences that were false or misleading once; the method note gives the true and the false one for each.</summary>
public class ThirteenMendsTests
{
    private static string Said(CountedPanel panel) => string.Join(" ", SamplePanel.Verdict(panel).Claims.Select(claim => claim.Sentence));

    private static string Said<T>(TrialEvidence evidence)
        where T : Finding => Claim.Of(Verdict.Of(evidence).Findings.First<T>()!).Sentence;

    [Theory]
    [InlineData("paired directional", 60, 15, "0.0067")] // d1.1 of the check values: 6.7e-5
    [InlineData("triangle", 24, 1, "0.08")] // d1.2
    [InlineData("3-AFC", 60, 8, "0.0381")] // SciPy 1.10.1, binom.cdf(8, 60, 1/3)
    public void A_count_far_below_chance_raises_the_alarm_and_rules_nothing_out(string protocol, int sets, int right, string percent)
    {
        var panel = SamplePanel.Single(Protocol.Parse(protocol), sets, right);
        Assert.Equal(PanelAnswer.Alarm, panel.Answer);
        var verdict = SamplePanel.Verdict(panel);
        Assert.Equal(["panel.main.count", "panel.main.alarm"], verdict.Claims.Select(claim => claim.Id));
        Assert.Contains("nothing is ruled out", verdict.Claims[1].Sentence, StringComparison.Ordinal);
        Assert.Contains("either way, in at most", verdict.Claims[1].Sentence, StringComparison.Ordinal);
        Assert.Equal(double.Parse(percent, System.Globalization.CultureInfo.InvariantCulture), verdict.Claims[1].Numbers[0], 0.005);
        Assert.DoesNotContain("up to 0 %", string.Join(" ", verdict.Findings.Select(finding => Claim.Of(finding).Sentence)),
            StringComparison.Ordinal);
        Assert.StartsWith("Cones or pellets? Something looks wrong at the panel: ", verdict.Headline, StringComparison.Ordinal);
    }

    [Fact]
    public void Hits_far_below_false_alarms_raise_it_too() =>
        Assert.Equal(["panel.main.count", "panel.main.alarm"],
            SamplePanel.Verdict(SamplePanel.YesNo(Protocol.ANotA, 8, 50, 35, 50)).Claims.Select(claim => claim.Id));

    [Fact]
    public void An_even_preference_says_nothing_about_telling_and_has_no_margin()
    {
        var said =
            Said(SamplePanel.Of(SamplePanel.Plan(Protocol.PairedTwoSided, 24) with { Attribute = "preferred" }, PanelResult.Of(24, 12)));
        Assert.Contains("no majority is shown. Tasters who cannot tell, and two camps who can, both give such a count.", said,
            StringComparison.Ordinal);
        Assert.DoesNotContain("can tell the beers apart", said, StringComparison.Ordinal);
        Assert.DoesNotContain("ruled out", said, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("preferred", true)]
    [InlineData("liked better", true)]
    [InlineData("Pleasant", true)]
    [InlineData("bitter", false)]
    [InlineData("likely to foam", false)]
    public void A_property_of_liking_makes_a_pair_a_question_of_preference(string attribute, bool asks)
    {
        Assert.Equal(asks, (SamplePanel.Plan(Protocol.PairedTwoSided, 24) with { Attribute = attribute }).AsksPreference);
        Assert.False((SamplePanel.Plan(Protocol.PairedDirectional, 24) with { Attribute = attribute }).AsksPreference);
    }

    [Fact]
    public void Four_people_rule_nothing_out_however_often_they_taste()
    {
        var panel = SamplePanel.Repeats(Protocol.Triangle, [new(15, 5), new(15, 5), new(15, 5), new(15, 5)]);
        var margin = SamplePanel.Verdict(panel).Findings.First<MarginTested>()!;
        Assert.Equal((MarginOutcome.TooFewPeople, 0.2401), (margin.Outcome, Math.Round(margin.NobodyAble, 4))); // 0.7^4
        Assert.Contains("in 24 % of such panels none of them can tell", Said(panel), StringComparison.Ordinal);
        Assert.DoesNotContain("too small", Said(panel), StringComparison.Ordinal);
    }

    [Fact]
    public void A_preference_among_cups_of_which_two_are_one_beer_is_held_against_choosing_blindly()
    {
        var report = RatingReport.Of([],
            [.. Enumerable.Repeat(new Preference(Side.B, true, 1.0 / 3), 8),
                .. Enumerable.Repeat(new Preference(Side.A, false, 1.0 / 3), 16)]);
        // 8 of 24 is what choosing blindly gives; against one half it would be 0.15
        Assert.Equal(1, Assert.Single(report.Preferences).Test.PValue);
        Assert.Equal(8, report.Preferences[0].Test.BlindlyForB, 1e-12);
        var both = PreferenceTest.Of(0, 2) with { CupsB = [1.0 / 3, 2.0 / 3] };
        Assert.Equal(2 * 2.0 / 9, both.PValue, 1e-12); // by hand: both B has the chance 2/9
        Assert.Contains("choosing blindly among those cups gives 8",
            Said(SamplePanel.Single(Protocol.Triangle, 24, 11) with { Ratings = report }), StringComparison.Ordinal);
    }

    [Fact]
    public void A_two_sided_chance_is_said_of_either_way()
    {
        var difference =
            Claim.Of(SamplePanel.Verdict(SamplePanel.Single(Protocol.PairedTwoSided, 24, 17)).Findings
                .First<DifferenceTested>()!).Sentence;
        // 2 P(X >= 17 | 24, 1/2)
        Assert.StartsWith("By guessing alone a split at least as uneven, either way, comes up in 6.4 % of such panels", difference,
            StringComparison.Ordinal);
        Assert.DoesNotContain("or higher", difference, StringComparison.Ordinal);
    }

    [Fact]
    public void The_likelihood_is_that_of_the_margin_and_not_of_every_share()
    {
        var panel = SamplePanel.Single(Protocol.Triangle, 24, 8);
        var likelihood = SamplePanel.Verdict(panel).Findings.First<LikelihoodWeighed>()!;
        Assert.Equal(0.1427343499, likelihood.Ratio, 1e-8); // d11.2
        Assert.Contains("This count is 7.0 times as likely if everybody guesses as if 30 % of such tasters can tell in this task.",
            Said(panel), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("triangle", "1.64")]
    [InlineData("duo-trio", "1.42")]
    [InlineData("tetrad", "1.14")]
    [InlineData("3-AFC", "0.66")]
    [InlineData("paired directional", "0.54")] // the note's table: 1.638, 1.421, 1.138, 0.665, 0.545
    public void A_share_belongs_to_its_task_and_stands_beside_its_d_prime(string protocol, string distance)
    {
        var margin = Said<MarginTested>(SamplePanel.Trial(SamplePanel.Single(Protocol.Parse(protocol), 60, 30)));
        Assert.Contains("in this task", margin, StringComparison.Ordinal);
        Assert.Contains($"30 % is a d-prime of {distance}", margin, StringComparison.Ordinal);
        Assert.DoesNotContain("drinkers", margin, StringComparison.Ordinal);
    }

    [Fact]
    public void A_margin_may_be_declared_as_a_d_prime()
    {
        var plan = SamplePanel.Plan(Protocol.Triangle, 206) with { MarginAsDPrime = 1 };
        Assert.Equal(0.127, plan.Margin, 0.001); // the note's table: 12.7 %
        Assert.False((plan with { Margin = 0.2 }).DeclaredMargin.IsDPrime);
        Assert.Contains("That 13 % or more of such tasters can tell the beers apart in this task is ruled out",
            Said(SamplePanel.Of(plan, PanelResult.Of(206, 69))), StringComparison.Ordinal);
        Assert.Contains("13 % is a d-prime of 1.00, as which the margin is stated,", Said(SamplePanel.Of(plan, PanelResult.Of(206, 69))),
            StringComparison.Ordinal);
    }

    [Fact]
    public void Panels_that_share_people_are_combined_by_people()
    {
        var people = ReturningPeople.Of(Enumerable.Range(0, 20)
            .Select(i => new TaskCount[] { new(Protocol.Triangle, 1, i % 2), new(Protocol.Triangle, 1, i % 3 == 0 ? 1 : 0) }));
        var sentence = Said<PeopleCombined>(
            SamplePanel.Trial(SamplePanel.Single(Protocol.Triangle, 20, 10),
                SamplePanel.Single(Protocol.Triangle, 20, 6, name: "evening")) with { TogetherByPeople = people });
        Assert.Contains("20 people, equal names taken for one, were right in 17 of 40 sets", sentence, StringComparison.Ordinal);
        Assert.DoesNotContain("disagree", sentence, StringComparison.Ordinal); // whether panels agree is not asked of shared people
    }

    [Theory]
    [InlineData("other methods", LabOutcome.OtherMethods, "measured by different methods, whose values cannot be compared")]
    [InlineData("separate runs, spread unknown", LabOutcome.RunsUnknown,
        "measured in separate runs, and the laboratory's spread from run to run is not stated")]
    [InlineData("separate runs by day, spread unknown", LabOutcome.RunsUnknown, "is not judged")]
    [InlineData("two laboratories, spread unknown", LabOutcome.LaboratoriesUnknown, "measured by two laboratories")]
    [InlineData("separate runs, spread known, not told apart", LabOutcome.NotToldApart, "measured in separate runs, would lie within")]
    public void Lab_values_that_are_not_of_one_run_are_not_judged_as_if_they_were(string state, LabOutcome outcome, string words)
    {
        var evidence = SamplePanel.Trial() with { Bitterness = SampleLab.States.Single(one => one.State == state).Lab };
        Assert.Equal(outcome, Verdict.Of(evidence).Findings.First<LabDifference>()!.Outcome);
        Assert.Contains(words, Said<LabDifference>(evidence), StringComparison.Ordinal);
    }

    [Fact]
    public void The_headline_says_what_else_could_explain_the_result()
    {
        var evidence = SamplePanel.Trial(SamplePanel.Single(Protocol.Triangle, 34, 21)) with
        {
            Bitterness = SampleLab.Apart,
            Parity = new BatchLog([]).Parity(),
        };
        Assert.Contains("But the pellets half measured 2.3 BU more bitter, so the variable need not be the reason.",
            Verdict.Of(evidence).Headline, StringComparison.Ordinal);
    }

    [Fact]
    public void Confounds_are_ranked_gap_inequality_departure_bias_lots_and_what_nobody_measured()
    {
        var panel = SamplePanel.Single(Protocol.Triangle, 24, 15);
        var lead = panel with
        {
            Departures = (panel.Plan with { Declared = null }).Departures(new(Protocol.Triangle, 24, 24)),
            BiasWhenAsked =
                new(new BiasReport(
                    [BiasCheck.OfRightAnswers("serving order", Enumerable.Range(0, 24).Select(i => (i < 12 ? "AAB" : "ABB", i < 12)),
                        seed: 7)])),
        };
        BatchEntry[] unlike = [BatchEntry.Measured("1", Side.A, "pH", 4.2, "pH", 0.05),
            BatchEntry.Measured("2", Side.B, "pH", 4.6, "pH", 0.05), BatchEntry.Measured("3", Side.A, "colour", 20, "EBC", 1),
            BatchEntry.Measured("4", Side.B, "colour", 60, "EBC", 1)];
        var all = SamplePanel.Trial(lead) with
        {
            Bitterness = SampleLab.Apart,
            Parity = new BatchLog(unlike).Parity(),
            HopConfounds = [new(Brewing.HopDifference.CropYear, "2024", "2025", "Crops differ.")],
        };
        var ranked = Confounds.Of(Verdict.Of(all).Findings, Subject.Panel("main")).ToList();
        Assert.Equal(
            [ConfoundKind.MeasuredGap, ConfoundKind.LoggedInequality, ConfoundKind.LoggedInequality, ConfoundKind.SeriousDeparture,
                ConfoundKind.Bias, ConfoundKind.HopLots, ConfoundKind.NotMeasured],
            ranked.Select(confound => confound.Kind));
        Assert.Equal("colour", ((HalvesDiffer)ranked[1].Finding).Line.Quantity); // 40 EBC of 1.4 outweigh 0.4 pH of 0.07
        Assert.Equal(2.3 / SampleLab.Apart.CriticalDifference!.Value, ranked[0].Size, 1e-9);
        Assert.DoesNotContain(Confounds.Of(Verdict.Of(all).Findings, Subject.Panel("evening")),
            confound => confound.Kind is ConfoundKind.SeriousDeparture or ConfoundKind.Bias);
    }

    [Fact]
    public void An_intention_stands_beside_what_the_log_says_of_it()
    {
        var log =
            new BatchLog([BatchEntry.Noted("1", Side.A, "packaging date", "2026-01-26"),
                BatchEntry.Noted("2", Side.B, "packaging date", "2026-01-28"), BatchEntry.Noted("3", null, "yeast lot", "L1")]).Parity();
        var meant = MeantEqual.Of(["packaging day and carbonation", "yeast lots", "one mash", "boil"], log);
        Assert.Equal([true, false, false, false], meant.Select(one => one.IsContradicted));
        Assert.Equal(["packaging date: not equal; carbonation: not measured on both halves", "yeast lot: the same",
            "the log has no line for it", "the log has no line for it"], meant.Select(Phrases.Phrasebook.ByTheLog).Select(Sorted));
        Assert.Equal("no batch log is kept", Phrases.Phrasebook.ByTheLog(Assert.Single(MeantEqual.Of(["pH"], null))));
        Assert.Contains("not equal was the packaging date",
            Said<MeantEqual>(SamplePanel.Trial() with { Parity = log, HeldEqual = ["packaging day and carbonation"] }),
            StringComparison.Ordinal);

        static string Sorted(string text) =>
            string.Join("; ", text.Split("; ").OrderBy(part => part.StartsWith("carbonation", StringComparison.Ordinal)));
    }

    [Fact]
    public void The_verdict_rests_on_a_panel_that_is_named_and_nothing_is_called_declared_that_nobody_declared()
    {
        var (main, evening) =
            (SamplePanel.Single(Protocol.Triangle, 24, 11), SamplePanel.Single(Protocol.Tetrad, 24, 12, name: "evening"));
        var evidence = SamplePanel.Trial(main, evening) with
        {
            Together = Forest.Of([new("main", Protocol.Triangle, 24, 11), new("evening", Protocol.Tetrad, 24, 12)]).Combine(),
        };
        Assert.StartsWith("The verdict rests on panel main, which was sealed to decide.", Said<RestsOnOnePanel>(evidence),
            StringComparison.Ordinal);
        Assert.DoesNotContain(Verdict.Of(evidence).Findings.Select(finding => Claim.Of(finding).Sentence),
            sentence => sentence.Contains("as declared", StringComparison.Ordinal));
        Assert.Contains("because what trial.json names before it is not counted: first and second.",
            Said<RestsOnOnePanel>(SamplePanel.Trial(main) with { NotCounted = ["first", "second"], PassedOver = ["first", "second"] }),
            StringComparison.Ordinal);
        Assert.Contains("5 %, which nobody declared beforehand", Said(main with { Standing = PlanStanding.NotDeclared }),
            StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("mash temperature", "mash temperature", true)]
    [InlineData("temperature of the mash", "Mash Temperature", true)]
    [InlineData("mash temperature, two rests against one", "mash temperature", true)]
    [InlineData("yeast", "yeast strain", true)]
    [InlineData("form of the bittering hop", "pH", false)]
    [InlineData("form of the bittering hop", "of the", false)]
    [InlineData("", "pH", false)]
    public void The_variable_itself_is_no_confound(string variable, string quantity, bool changed) =>
        Assert.Equal(changed, new ChangedQuantities(variable, []).Contains(quantity));

    [Fact]
    public void What_follows_from_the_variable_by_arithmetic_is_none_either()
    {
        BatchEntry[] entries = [BatchEntry.Measured("1", null, BatchLog.OriginalGravity, 1.050, "SG", 0.001),
            BatchEntry.Measured("2", Side.A, BatchLog.FinalGravity, 1.010, "SG", 0.001),
            BatchEntry.Measured("3", Side.B, BatchLog.FinalGravity, 1.016, "SG", 0.001)];
        var log = new BatchLog(entries);
        Assert.All(log.Parity(new ChangedQuantities("mash temperature", ["final gravity"])).Lines
            .Where(line => line.Quantity is "final gravity" or "alcohol by volume" or "apparent attenuation" or "real extract"),
            line => Assert.Equal(Parity.TheVariable, line.Verdict));
        Assert.Equal(Parity.Confound, log.Parity(new ChangedQuantities("mash temperature", [])).Lines
            .Single(line => line.Quantity == "real extract").Verdict);
        Assert.True(new ChangedQuantities("", ["original gravity"]).Contains("alcohol"));
        Assert.False(new ChangedQuantities("", ["colour"]).Contains("alcohol"));
    }

    [Fact]
    public void Doses_as_weighed_are_not_called_rounded()
    {
        var solved = Bitterness.ChargeMatch
            .Solve(Brewing.Kettle.Metric(20, 1.050), 32, Brewing.HopLot.Cones("cones", 5), Brewing.HopLot.Pellets("pellets", 11));
        Assert.Contains("left by rounding", solved.ToString(), StringComparison.Ordinal);
        var given = Bitterness.ChargeMatch.AsGiven(Brewing.Kettle.Metric(20, 1.050), solved.A.Charges, solved.B.Charges);
        Assert.Contains("between them as weighed", given.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void One_count_has_one_upper_limit_on_a_page()
    {
        var panel = SamplePanel.Single(Protocol.Triangle, 24, 11);
        var limit = panel.Decision.Margin.StillAllowed!.Value;
        Assert.Equal(limit, panel.Reading!.Similarity.StillAllowed, 1e-12);
        Assert.Equal(limit, panel.Reading.Limits.High, 1e-12);
        var row = Forest.Of([new PanelCount("main", Protocol.Triangle, 24, 11) { Level = 0.90 }]).Rows[0];
        Assert.Equal(panel.Decision.Margin.StillAllowedDPrime!.Value, row.DPrime.Interval.High, 1e-6);
    }
}
