using SplitBatch.Numbers;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Liking;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;
using UnitsNet;
using Power = SplitBatch.Panel.Planning.Power;

namespace SplitBatch.Panel;

/// <summary>The numbers and the turns in what the panel room says of itself.</summary>
public class PanelSentencesTests
{
    [Fact]
    public void Preferences_are_tested_among_those_who_chose()
    {
        // Twelve who chose: two-sided P(10 or more of 12 at a half) = 2 * (66 + 12 + 1) / 4096; 13 of 14: 2 * 15 / 16384.
        var ten = PreferenceTest.Of(2, 10);
        Assert.Equal(2 * 79 / 4096.0, ten.PValue, 1e-12);
        Assert.Equal(ShareIntervals.ClopperPearson(10, 12), ten.ShareForB);
        Assert.StartsWith("10 for B, 2 for A: a preference for B is shown (p = 0.039); of those who choose, between ", ten.ToString(),
            StringComparison.Ordinal);
        Assert.StartsWith("1 for B, 13 for A, 3 without a preference: a preference for A is shown (p = 0.002); ",
            PreferenceTest.Of(13, 1, 3).ToString(), StringComparison.Ordinal);
        Assert.StartsWith("6 for B, 6 for A: no preference shown (p = 1", PreferenceTest.Of(6, 6).ToString(), StringComparison.Ordinal);
        Assert.Equal("Nobody chose, 4 without a preference.", PreferenceTest.Of(0, 0, 4).ToString());
        Assert.Equal(1, PreferenceTest.Of(0, 0, 4).PValue);
        Assert.Null(PreferenceTest.Of(0, 0).ShareForB);
    }

    /// <summary>
    /// By hand: differences 1, 2, 0, 3, -1; mean 1, variance 2.5, so the error of the mean is the root of 0.5 and t is the root of 2.
    /// </summary>
    [Fact]
    public void Ratings_are_compared_taster_by_taster()
    {
        Rating[] rows = [new("1", "bitterness", 3, 4, true), new("2", "bitterness", 2, 4, false), new("3", "bitterness", 5, 5, true),
            new("4", "bitterness", 1, 4), new("5", "bitterness", 6, 5, true)];
        var one = RatingComparison.Of(rows);
        Assert.Equal((3.4, 4.4), (one.MeanA, one.MeanB));
        Assert.Equal(1, one.Difference, 1e-12);
        Assert.Equal(Math.Sqrt(2), one.TValue!.Value, 1e-12);
        var half = 2.776445105 * Math.Sqrt(0.5); // Student's t, 4 degrees of freedom, 97.5 % (printed tables: 2.776)
        Assert.Equal(1 - half, one.DifferenceInterval!.Value.Low, 1e-8);
        Assert.Equal(1 + half, one.DifferenceInterval!.Value.High, 1e-8);
        Assert.Equal((1, 3, 1), (one.Higher.ForA, one.Higher.ForB, one.Higher.None));
        Assert.StartsWith("bitterness, 5 tasters: B minus A +1.0 (−1.0 to +3.0, 95 %); p = ", one.ToString(), StringComparison.Ordinal);
        Assert.EndsWith(": no difference shown, which does not mean the same.", one.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain("after correction", one.ToString(), StringComparison.Ordinal);

        var both = RatingComparison.OfAll(rows);
        Assert.Equal([(RatingGroup.All, 5), (RatingGroup.Correct, 3)], both.Select(row => (row.Group, row.Tasters)));
        Assert.Equal(2, both[1].Questions);
        Assert.Contains("bitterness, 3 tasters who were right (some by guessing): ", both[1].ToString(), StringComparison.Ordinal);
        Assert.Contains(", after correction for 2 questions p ", both[1].ToString(), StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => RatingComparison.Of(rows, level: 1));
    }

    [Fact]
    public void Ratings_without_spread_are_certain_or_say_nothing()
    {
        RatingComparison Of(params double[] differences) =>
            RatingComparison.Of(differences.Select((d, i) => new Rating($"{i}", "liking", 5, 5 + d)));
        Assert.Equal((null, 0.0), (Of(2, 2, 2).TValue, Of(2, 2, 2).TPValue));
        Assert.Equal((null, 1.0), (Of(0, 0, 0).TValue, Of(0, 0, 0).TPValue));
        Assert.Equal((null, 1.0, null), (Of(2).TValue, Of(2).TPValue, Of(2).DifferenceInterval));
        Assert.Equal(0.05, (Of(1, 1, 1, 1, 1) with { AdjustedPValue = 0.05 }).AdjustedPValue);
        Assert.EndsWith(": a difference is shown.", (Of(1, 1, 1) with { AdjustedPValue = 0.05 }).ToString(), StringComparison.Ordinal);
        Assert.EndsWith("which does not mean the same.", (Of(1, 1, 1) with { AdjustedPValue = 0.0501 }).ToString(),
            StringComparison.Ordinal);
    }

    /// <summary>
    /// Holm by hand over four questions: the smallest p counts four times, the next three times, and none less than the one before.
    /// </summary>
    [Fact]
    public void All_questions_beside_the_difference_are_corrected_together()
    {
        Rating[] ratings = [.. Enumerable.Range(0, 10).Select(i => new Rating($"{i}", "bitterness", 3, 4 + (0.1 * i), i < 4))];
        (Side?, bool)[] preferences = [.. Enumerable.Range(0, 10).Select(i => ((Side?)(i < 9 ? Side.B : i == 9 ? Side.A : null), i < 4)),
            (null, true)];
        var report = RatingReport.Of(ratings, preferences);
        Assert.Equal(4, report.Questions);
        Assert.Equal([(9, 1, 1), (4, 0, 1)], report.Preferences.Select(row => (row.Test.ForB, row.Test.ForA, row.Test.None)));
        double all = 2 / 1024.0, right = 2 / 16.0, prefer = 2 * 11 / 1024.0;
        Assert.Equal(4 * all, report.Ratings[0].AdjustedPValue, 1e-12);
        Assert.Equal(3 * prefer, report.Preferences[0].AdjustedPValue, 1e-12);
        Assert.Equal(2 * right, report.Ratings[1].AdjustedPValue, 1e-12);
        Assert.Equal(2 * right, report.Preferences[1].AdjustedPValue, 1e-12);
        Assert.All(report.Ratings, row => Assert.Equal(4, row.Questions));
        Assert.StartsWith("bitterness, 10 tasters: B minus A +1.5", report.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain(Environment.NewLine, report.ToString(), StringComparison.Ordinal);
        Assert.Equal("preference, all tasters: 9 for B, 1 for A, 1 without one: no preference shown (p = 0.021, corrected for all "
            + "questions p = 0.064), which does not mean that both are liked alike.", report.Preferences[0].ToString());
        Assert.StartsWith("preference, tasters who were right (some by guessing): 4 for B, 0 for A, 1 without one: ",
            report.Preferences[1].ToString(), StringComparison.Ordinal);

        var shown = RatingReport.Of([], [.. Enumerable.Repeat(((Side?)Side.A, false), 12)]);
        Assert.Equal("preference, all tasters: 0 for B, 12 for A: a preference for A is shown (p < 0.001, corrected for all questions p < "
            + "0.001).", shown.ToString());
        Assert.StartsWith("preference, all tasters: 12 for B",
            RatingReport.Of([], [.. Enumerable.Repeat(((Side?)Side.B, false), 12)]).ToString(), StringComparison.Ordinal);
        Assert.Contains("a preference for B is shown", RatingReport.Of([], [.. Enumerable.Repeat(((Side?)Side.B, false), 12)]).ToString(),
            StringComparison.Ordinal);
        Assert.Equal("2 questions beside the difference: nothing is shown after correction for asking so many, which does not mean that "
            + "there is nothing.", RatingReport.Of([], [(Side.A, true), (Side.B, false)]).ToString());
    }

    [Fact]
    public void Words_are_tallied_the_most_used_first()
    {
        Comment[] comments =
        [
            new("1", Side.A, "bitter, citrus"), new("1", Side.B, "bitter"), new("2", Side.B, "bitter and grassy"),
            new("3", Side.B, "grassy"), new("4", Side.A, "grassy"),
            new("5", Side.A, "not sweet"), new("6", Side.A, "malty"), new("7", Side.B, "thin"), new("8", Side.B, "dry"),
            new("9", Side.B, "hm"),
        ];
        var tally = CommentTally.Of(comments);
        Assert.Equal(tally.Counts.Select(c => c.A + c.B).OrderDescending(), tally.Counts.Select(c => c.A + c.B));
        Assert.Contains(tally.Counts, c => c is { Descriptor.Name: "sweet", A: 0, B: 0, Denied: 1 });
        Assert.StartsWith("10 comments: bitter 1 of A, 2 of B; ", tally.ToString(), StringComparison.Ordinal);
        Assert.EndsWith(" .... 1 hold no known word.", tally.ToString(), StringComparison.Ordinal);
        Assert.Equal(4, tally.ToString().Count(letter => letter == ';'));
        Assert.Equal("2 comments: bitter 1 of A, 1 of B. 0 hold no known word.",
            CommentTally.Of(comments.Take(2).Select(c => c with { Text = "bitter" })).ToString());
        Assert.Equal(5, CommentTally.Of([new("1", Side.A, "bitter, sweet, dry, sour, thin")]).Counts.Count);
        Assert.DoesNotContain("...", CommentTally.Of([new("1", Side.A, "bitter, sweet, dry, sour, thin")]).ToString(),
            StringComparison.Ordinal);
        var bitter = tally.Counts.Single(c => c.Descriptor.Name == "bitter");
        Assert.StartsWith("bitter: 1 taster of A, 2 of B (p = 1", bitter.ToString(), StringComparison.Ordinal);
        Assert.StartsWith("bitter: 2 tasters of A, 2 of B", (bitter with { A = 2 }).ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_panels_needs_are_told_for_every_aim()
    {
        Assert.Equal(
            "triangle: 40 tasters to show a difference when 30 % are discriminators (error 5 %, power 80 %); power rises in a saw-tooth, "
                + "and from 42 on it is always reached.",
            new TastersNeeded(Protocol.Triangle, Aim.Difference, 0.05, 0.80, 0.30, 40, 42).ToString());
        Assert.Equal(
            "triangle: 50 tasters to rule out 30 % or more discriminators when there are none (error 5 %, power 80 %); every larger panel "
                + "does too.",
            new TastersNeeded(Protocol.Triangle, Aim.Similarity, 0.05, 0.80, 0.30, 50, 50).ToString());
        Assert.Equal(
            "triangle: 99 tasters or more settle it, whatever they answer: every count then either shows a difference (error 5 %) or "
                + "rules out 30 % discriminators (error 10 %). 96 can do it too, but not every number in between.",
            new TastersNeeded(Protocol.Triangle, Aim.Either, 0.05, 0.90, 0.30, 96, 99).ToString());
        Assert.EndsWith("(error 10 %).", new TastersNeeded(Protocol.Triangle, Aim.Either, 0.05, 0.90, 0.30, 99, 99).ToString(),
            StringComparison.Ordinal);
    }

    [Fact]
    public void Protocols_say_their_cups_their_chance_and_their_question()
    {
        Assert.Equal(["A-not-A (1 cup, no known guessing chance)", "triangle (3 cups, 33 % by guessing)"],
            new[] { Protocol.ANotA, Protocol.Triangle }.Select(protocol => protocol.ToString()));
        Assert.Equal(Protocol.All.Count, Protocol.All.Select(protocol => protocol.Question + protocol.Advice).Distinct().Count());
        Assert.Equal(["3-AFC", "paired directional", "paired two-sided"],
            Protocol.All.Where(protocol => protocol.NamesTheProperty).Select(protocol => protocol.Name).Order(StringComparer.Ordinal));
        Assert.StartsWith("Has the one beer more of a named property than the other", Protocol.PairedDirectional.Question,
            StringComparison.Ordinal);
        Assert.StartsWith("Which of the two beers has more", Protocol.PairedTwoSided.Question, StringComparison.Ordinal);
        Assert.Contains("The fewest tasters and cups", Protocol.PairedDirectional.Advice, StringComparison.Ordinal);
        Assert.Contains("when either answer would be news", Protocol.PairedTwoSided.Advice, StringComparison.Ordinal);
        Assert.StartsWith("For tasters who know one of the beers well", Protocol.DuoTrioConstantReference.Advice,
            StringComparison.Ordinal);
        Assert.Contains("a guess is right half of the time", Protocol.DuoTrio.Advice, StringComparison.Ordinal);
        Assert.Same(Protocol.DuoTrioConstantReference, Protocol.Parse("constant reference duo-trio"));
        Assert.Same(Protocol.DuoTrio, Protocol.Parse("duo-trio balanced"));
        Assert.Same(Protocol.PairedDirectional, Protocol.Parse("2-AFC"));
        Assert.Same(Protocol.PairedTwoSided, Protocol.Parse("paired preference"));
    }

    [Theory]
    [InlineData("triangel", "triangle")]
    [InlineData("tetra", "tetrad")]
    [InlineData("duo trio constnt", "duo-trio constant reference")]
    [InlineData("paired comparision", "paired two-sided")]
    public void A_misspelt_protocol_is_answered_with_the_nearest(string given, string meant) =>
        Assert.Contains($"Did you mean \"{meant}\"?", Assert.ThrowsAny<ArgumentException>(() => Protocol.Parse(given)).Message,
            StringComparison.Ordinal);

    [Fact]
    public void A_word_like_no_protocol_gets_no_guess() =>
        Assert.DoesNotContain("Did you mean", Assert.ThrowsAny<ArgumentException>(() => Protocol.Parse("wholly otherwise")).Message,
            StringComparison.Ordinal);

    [Fact]
    public void The_table_of_protocols_counts_cups_and_beer()
    {
        var rows = ProtocolComparison.At(1, Volume.FromMilliliters(50));
        foreach (var row in rows)
        {
            var sets = row.Always ?? row.First;
            Assert.Equal(sets * row.Protocol.Pours, row.Cups);
            Assert.Equal(0.05 * row.Cups, row.Beer.Liters, 1e-9);
            Assert.Equal(FormattableString.Invariant($"{row.Protocol.Name}: {Printed.Count(sets)} tasters, {Printed.Count(row.Cups)} ")
                + FormattableString.Invariant($"cups, {0.05 * row.Cups:0.0} L. {row.Protocol.Question}"), row.ToString());
        }

        Assert.Contains(rows, row => row.Always > row.First);
        Assert.Throws<ArgumentOutOfRangeException>(() => ProtocolComparison.At(0.19, Volume.FromMilliliters(50)));
        Assert.Throws<ArgumentOutOfRangeException>(() => ProtocolComparison.At(5.1, Volume.FromMilliliters(50)));
        Assert.Throws<ArgumentOutOfRangeException>(() => ProtocolComparison.At(1, Volume.Zero));
    }

    [Fact]
    public void A_sequential_panel_says_what_came_too_late()
    {
        var plan = WaldPlan.Of(Protocol.Triangle, 0.4, 0.05, 0.05, 60);
        var right = plan.Follow(Enumerable.Repeat(true, 30));
        Assert.Equal($"{right.Tasters} right of {right.Tasters}: a difference is shown, and the panel stops. {30 - right.Tasters} later "
            + $"answers are not counted.", right.ToString());
        var wrong = plan.Follow(Enumerable.Repeat(false, 60));
        Assert.Equal($"0 right of {wrong.Tasters}: 40 % or more discriminators are ruled out, and the panel stops. {60 - wrong.Tasters} "
            + $"later answers are not counted.", wrong.ToString());
        Assert.Equal("1 right of 2: between the lines; serve the next taster.", plan.Follow([true, false]).ToString());
        Assert.Equal("2 right of 5: undecided, and the last taster has been served. That does not mean the same.",
            WaldPlan.Of(Protocol.Triangle, 0.4, 0.05, 0.05, 5).Follow([true, false, true, false, false]).ToString());
    }

    [Fact]
    public void A_plan_says_its_sets_and_its_limits_where_it_has_them()
    {
        var plain = new PanelPlan(Protocol.Triangle, 24) { Margin = 0.4 };
        Assert.Equal($"main: triangle, 24 tasters, alpha 5 %, margin 40 % (beta 5 %); {Power.CriticalCount(Protocol.Triangle, 24, 0.05)} "
            + $"right show a difference, {Power.SimilarityCount(Protocol.Triangle, 24, 0.4, 0.05)} or fewer rule the margin out.",
            plain.ToString());
        Assert.EndsWith("none rules the margin out.", new PanelPlan(Protocol.Triangle, 12) { Margin = 0.2 }.ToString(),
            StringComparison.Ordinal);
        var repeated = new PanelPlan(Protocol.Triangle, 12) { Replicates = 3 };
        Assert.Equal("main: triangle, 12 tasters x 3 sets, alpha 5 %, margin 30 % (beta 5 %).", repeated.ToString());
        Assert.Equal((36, 24), (repeated.Sets, plain.Sets));
        var yesNo = new PanelPlan(Protocol.ANotA, 24);
        Assert.Equal((null, null), (yesNo.CriticalCount, yesNo.SimilarityCount));
        Assert.EndsWith("(beta 5 %).", yesNo.ToString(), StringComparison.Ordinal);
        Assert.Contains("no count shows a difference", new PanelPlan(Protocol.Triangle, 2).ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Practice_is_held_against_the_plan_at_the_edges()
    {
        var plan = new PanelPlan(Protocol.Triangle, 12) { Replicates = 2, Declared = new(2026, 3, 14), Seed = 3 };
        PanelPractice kept = new(Protocol.Triangle, 12, 24) { Seed = 3, Served = new(2026, 3, 14), Stopping = StoppingRule.Fixed };
        Assert.Empty(plan.Departures(kept));
        Assert.Equal("declared", Assert.Single(plan.Departures(kept with { Served = new(2026, 3, 13) })).What);
        Assert.Equal("sets: planned 2 for each taster, done 23 for 12 tasters. Not every taster counts with as many sets as planned.",
            Assert.Single(plan.Departures(kept with { Sets = 23 })).ToString());
        Assert.StartsWith("stopping: planned at the planned number, done by the sequential rule. ",
            Assert.Single(plan.Departures(kept with { Stopping = StoppingRule.Sequential })).ToString(), StringComparison.Ordinal);
        Assert.StartsWith("stopping: planned by the sequential rule, done at the planned number. ",
            Assert.Single((plan with { Stopping = StoppingRule.Sequential }).Departures(kept)).ToString(), StringComparison.Ordinal);
        Assert.Equal("looks", Assert.Single(plan.Departures(kept with { EarlyLooks = 1 })).What);
    }

    [Fact]
    public void Estimates_without_a_limit_say_so()
    {
        Assert.Equal("d-prime beyond measure", DifferenceTest.Of(Protocol.Triangle, 12, 12).DPrime.ToString()[..22]);
        Assert.Contains(" to no upper limit, 95 %)", DifferenceTest.Of(Protocol.Triangle, 12, 12).DPrime.ToString(),
            StringComparison.Ordinal);
        var some = DifferenceTest.Of(Protocol.Triangle, 24, 13).DPrime;
        Assert.Equal(FormattableString.Invariant($"d-prime {some.Value:0.00} ({some.Interval.Low:0.00} to ")
            + FormattableString.Invariant($"{some.Interval.High:0.00}, 95 %)"), some.ToString());
        Assert.Equal("7 alike of 10 (paired two-sided)", DifferenceTest.Of(Protocol.PairedTwoSided, 10, 3).ToString()[..32]);
        Assert.StartsWith("7 right of 10 (triangle)", DifferenceTest.Of(Protocol.Triangle, 10, 7).ToString(), StringComparison.Ordinal);
    }

    /// <summary>
    /// The exact sum test by trying all outcomes of two panels: each limit is the d-prime at which the sum seen is just in the tail.
    /// </summary>
    [Fact]
    public void Panels_together_have_the_limits_at_which_their_sum_is_just_in_the_tail()
    {
        PanelCount[] panels = [new("one", Protocol.Triangle, 10, 6), new("two", Protocol.DuoTrio, 8, 6)];
        var together = Forest.Of(panels).Combine();
        double Tail(double d, bool above) =>
            Enumerable.Range(0, 11).SelectMany(x => Enumerable.Range(0, 9).Select(y => (x, y)))
                .Where(p => above ? p.x + p.y >= 12 : p.x + p.y <= 12)
                .Sum(p => ExactBinomial.Exactly(p.x, 10, Protocol.Triangle.CorrectShare(d))
                    * ExactBinomial.Exactly(p.y, 8, Protocol.DuoTrio.CorrectShare(d)));
        Assert.Equal(Tail(0, true), together.PValue, 1e-12);
        Assert.Equal(0.025, Tail(together.Interval.Low, true), 1e-9);
        Assert.Equal(0.025, Tail(together.Interval.High, false), 1e-9);
        double Log(double d) =>
            panels.Sum(p => (p.Correct * Math.Log(p.Protocol.CorrectShare(d)))
                + ((p.Tasters - p.Correct) * Math.Log(1 - p.Protocol.CorrectShare(d))));
        Assert.True(Log(together.DPrime) >= Math.Max(Log(together.DPrime - 1e-3), Log(together.DPrime + 1e-3)));
        Assert.Contains("Together (2 panels): d-prime ", together.ToString(), StringComparison.Ordinal);
        Assert.Contains("; no sign that the panels disagree (p = ", together.ToString(), StringComparison.Ordinal);

        var apart = Forest.Of([new("one", Protocol.Triangle, 40, 13), new("two", Protocol.Triangle, 40, 40)]).Combine();
        Assert.Contains("; the panels disagree, so one number hides something (p ", apart.ToString(), StringComparison.Ordinal);
        Assert.Contains(" to no upper limit, 95 %)",
            Forest.Of([new("one", Protocol.Triangle, 5, 5), new("two", Protocol.Triangle, 5, 5)]).Combine().ToString(),
            StringComparison.Ordinal);
    }

    /// <summary>
    /// The smallest number by trying every one from the first; few are needed at a large difference, more at a small one.
    /// </summary>
    [Theory]
    [InlineData("A-not-A", 0.05, 0.80, 1.0)]
    [InlineData("A-not-A", 0.20, 0.50, 2.0)]
    [InlineData("A-not-A", 0.05, 0.30, 3.0)]
    [InlineData("same-different", 0.05, 0.80, 2.5)]
    [InlineData("same-different", 0.10, 0.90, 3.0)]
    public void Sets_needed_without_a_known_chance_are_the_fewest_that_reach_the_power(string name, double alpha, double power,
        double dPrime)
    {
        var protocol = Protocol.Parse(name);
        var (hits, alarms) = ((IYesNo)protocol).BestRates(dPrime);
        var first = Enumerable.Range(1, 2000).First(n => YesNoPower.Of(n, alpha, hits, alarms) >= power);
        Assert.Equal(2 * first, YesNoPower.SetsNeeded(protocol, alpha, power, dPrime));
    }

    /// <summary>Power by trying every pair of counts.</summary>
    [Fact]
    public void Power_without_a_known_chance_is_the_sum_over_all_tables()
    {
        foreach (var n in new[] { 1, 3, 7, 12 })
        {
            double sum = 0;
            for (var hits = 0; hits <= n; hits++)
            for (var alarms = 0; alarms <= n; alarms++)
            {
                if (FisherExact.UpperTail(hits, n, alarms, n) <= 0.2 + 1e-12)
                    sum += ExactBinomial.Exactly(hits, n, 0.8) * ExactBinomial.Exactly(alarms, n, 0.3);
            }

            Assert.Equal(sum, YesNoPower.Of(n, 0.2, 0.8, 0.3), 1e-11);
        }
    }

    [Fact]
    public void Curves_end_at_certainty()
    {
        var curve = PowerCurve.OverDiscriminators(Protocol.Triangle, 24, 0.05, points: 11);
        Assert.Equal(0, curve[0].Discriminators);
        Assert.Equal(0.5, curve[5].Discriminators, 1e-12);
        Assert.Equal(1, curve[^1].Discriminators);
        Assert.Equal([0, 0.4, 0.8], WaldPlan.Of(Protocol.Triangle, 0.4, lastTaster: 40).Curve(3)
            .Select(point => Math.Round(point.Discriminators, 12)));
        Assert.Equal(1, WaldPlan.Of(Protocol.Triangle, 0.7, lastTaster: 40).Curve(3)[^1].Discriminators, 1e-12);
        Assert.StartsWith("Looking after 4, 8 and 12 tasters and stopping", EarlyLooks.At(Protocol.Triangle, 0.05, 4, 8, 12).ToString(),
            StringComparison.Ordinal);
        Assert.StartsWith("Looking after 12 tasters and stopping", EarlyLooks.At(Protocol.Triangle, 0.05, 12).ToString(),
            StringComparison.Ordinal);
    }
}
