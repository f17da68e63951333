using SplitBatch.BrewDay;
using SplitBatch.Brewing;
using SplitBatch.Evidence.Findings;
using SplitBatch.Lab;
using SplitBatch.Panel;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;
using SplitBatch.Panel.Liking;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Evidence;

/// <summary>Counted panels of every outcome, protocol and circumstance.</summary>
internal static class PanelCases
{
    private static readonly Protocol[] OneSided =
        [Protocol.Triangle, Protocol.DuoTrio, Protocol.DuoTrioConstantReference, Protocol.Tetrad, Protocol.TwoOutOfFive,
            Protocol.PairedDirectional, Protocol.ThreeAfc];

    /// <summary>Each outcome of each protocol that asks in one direction.</summary>
    public static IEnumerable<(string Name, CountedPanel Panel)> ByOutcome() =>
        OneSided.SelectMany(protocol => Outcomes(protocol).Select(one => ($"{protocol.Name}: {one.Outcome}", one.Panel)));

    /// <summary>One count for each answer that the protocol can give.</summary>
    private static IEnumerable<(string Outcome, CountedPanel Panel)> Outcomes(Protocol protocol)
    {
        var seen = new HashSet<string>();
        foreach (var (tasters, margin) in new[] { (4, 0.30), (12, 0.30), (24, 0.30), (60, 0.30), (96, 0.30), (240, 0.30), (400, 0.30) })
        {
            for (var right = 0; right <= tasters; right++)
            {
                var panel = SamplePanel.Single(protocol, tasters, right, margin);
                var margins = panel.Answer == PanelAnswer.Alarm
                    ? ""
                    : new MarginTested(panel.Planned, panel.Decision.Margin) { People = tasters, Sets = tasters, Right = right }.Outcome
                        .ToString();
                var difference = panel.Answer == PanelAnswer.Alarm
                    ? ""
                    : new DifferenceTested(panel.Planned, panel.Decision.Difference).Outcome.ToString();
                var outcome = $"{panel.Answer} {difference} {margins}".TrimEnd();
                if (seen.Add(outcome)) yield return ($"{outcome}, {right} of {tasters}", panel);
            }
        }
    }

    public static IEnumerable<(string Name, CountedPanel Panel)> Others()
    {
        foreach (var (tasters, forB) in new[] { (4, 3), (24, 13), (60, 31), (60, 45), (400, 215) })
        {
            yield return ($"paired two-sided: {forB} of {tasters}", SamplePanel.Single(Protocol.PairedTwoSided, tasters, forB));
            var asked = SamplePanel.Plan(Protocol.PairedTwoSided, tasters) with { Attribute = "preferred" };
            yield return ($"preference: {forB} of {tasters}", SamplePanel.Of(asked, PanelResult.Of(tasters, forB)));
            yield return ($"preference, A expected: {forB} of {tasters}",
                SamplePanel.Of(asked with { Expected = Side.A }, PanelResult.Of(tasters, forB)));
        }

        foreach (var protocol in new[] { Protocol.ANotA, Protocol.SameDifferent })
        {
            yield return ($"{protocol.Name}: shown", SamplePanel.YesNo(protocol, 40, 50, 15, 50));
            yield return ($"{protocol.Name}: not shown", SamplePanel.YesNo(protocol, 22, 50, 19, 50));
            yield return ($"{protocol.Name}: far below", SamplePanel.YesNo(protocol, 8, 50, 35, 50));
            yield return ($"{protocol.Name}: too few", SamplePanel.YesNo(protocol, 1, 1, 0, 1));
        }

        foreach (var protocol in new[] { Protocol.Triangle, Protocol.ThreeAfc })
        {
            yield return ($"{protocol.Name}, sequential: shown", SamplePanel.Sequential(protocol, 60, _ => true));
            yield return ($"{protocol.Name}, sequential: ruled out", SamplePanel.Sequential(protocol, 60, i => i % 4 == 0));
            yield return ($"{protocol.Name}, sequential: undecided", SamplePanel.Sequential(protocol, 20, i => i % 7 is 0 or 2 or 4));
            yield return ($"{protocol.Name}, sequential: under way",
                SamplePanel.Sequential(protocol, 60, i => i % 7 is 0 or 2 or 4, upTo: 5));
        }

        yield return ("sequential, so few right that something must be wrong",
            SamplePanel.Sequential(Protocol.Triangle, 60, _ => false) is var none && none.Answer == PanelAnswer.Alarm
                ? none
                : SamplePanel.Single(Protocol.Triangle, 24, 1));
        yield return ("repeats, 4 people, 15 sets each, as guessing",
            SamplePanel.Repeats(Protocol.Triangle, [new(15, 5), new(15, 5), new(15, 5), new(15, 5)]));
        yield return ("repeats, 9 people, 6 sets each, ruled out",
            SamplePanel.Repeats(Protocol.Triangle, [.. Enumerable.Repeat(new TasterCount(6, 2), 9)]));
        yield return ("repeats, 9 people, 6 sets each, not ruled out",
            SamplePanel.Repeats(Protocol.Triangle, [.. Enumerable.Repeat(new TasterCount(6, 2), 8), new(6, 6)]));
        yield return ("repeats, one person", SamplePanel.Repeats(Protocol.Triangle, [new(30, 20)]));
        yield return ("repeats, shown", SamplePanel.Repeats(Protocol.Triangle, [.. Enumerable.Repeat(new TasterCount(4, 3), 10)]));
        yield return ("repeats of a two-sided pair, even",
            SamplePanel.Repeats(Protocol.PairedTwoSided, [.. Enumerable.Repeat(new TasterCount(4, 2), 30)]));
        yield return ("repeats of a two-sided pair, two camps",
            SamplePanel.Repeats(Protocol.PairedTwoSided,
                [.. Enumerable.Repeat(new TasterCount(4, 4), 15), .. Enumerable.Repeat(new TasterCount(4, 0), 15)]));
        yield return ("repeats of a two-sided pair, one leaning",
            SamplePanel.Repeats(Protocol.PairedTwoSided, [.. Enumerable.Repeat(new TasterCount(4, 3), 12)]));
        yield return ("repeats of a two-sided pair, too few people",
            SamplePanel.Repeats(Protocol.PairedTwoSided, [new(10, 10), new(10, 10)]));
        yield return ("preference with repeats",
            SamplePanel.Of(SamplePanel.Plan(Protocol.PairedTwoSided, 12) with { Attribute = "liked better", Replicates = 4 },
                new([.. Enumerable.Repeat(new TasterCount(4, 3), 12)])));
        foreach (var standing in Enum.GetValues<PlanStanding>())
        {
            yield return ($"plan {standing}: shown", SamplePanel.Single(Protocol.Triangle, 24, 13) with { Standing = standing });
            yield return ($"plan {standing}: not shown", SamplePanel.Single(Protocol.Triangle, 24, 11) with { Standing = standing });
            yield return ($"plan {standing}: could not show", SamplePanel.Single(Protocol.Triangle, 2, 1) with { Standing = standing });
        }

        var looked = SamplePanel.Plan(Protocol.Triangle, 24);
        yield return ("looked early, shown all the same",
            SamplePanel.Of(looked, new(PanelResult.Of(24, 16).Tasters) { LookedEarly = true }));
        yield return ("looked early, shown only if read once",
            SamplePanel.Of(looked, new(PanelResult.Of(24, 13).Tasters) { LookedEarly = true }));
        yield return ("looked early, not shown", SamplePanel.Of(looked, new(PanelResult.Of(24, 9).Tasters) { LookedEarly = true }));
        yield return ("looked early, ruled out only if read once",
            SamplePanel.Of(SamplePanel.Plan(Protocol.Triangle, 60), new(PanelResult.Of(60, 22).Tasters) { LookedEarly = true }));
        yield return ("two planned looks, shown", SamplePanel.Of(looked, PanelResult.Of(24, 13), looks: [12, 24]));
        yield return ("two planned looks, not shown", SamplePanel.Of(looked, PanelResult.Of(24, 11), looks: [12, 24]));
        yield return ("control told, ruled out",
            SamplePanel.Of(SamplePanel.Plan(Protocol.Triangle, 60),
                new(PanelResult.Of(60, 20).Tasters) { Control = KnownControl.Of(Protocol.Triangle, 60, 40) }));
        yield return ("control not told",
            SamplePanel.Of(SamplePanel.Plan(Protocol.Triangle, 60),
                new(PanelResult.Of(60, 20).Tasters) { Control = KnownControl.Of(Protocol.Triangle, 60, 21) }));
        foreach (var (n, x, k) in new[] { (21, 13, 3), (22, 12, 2), (57, 20, 3), (54, 21, 6), (23, 12, 1), (50, 21, 30) })
        {
            yield return ($"{k} ballots missing beside {x} of {n}", SamplePanel.Single(Protocol.Triangle, n, x, missing: k));
        }

        yield return ("other rules give the same",
            SamplePanel.Of(looked, new(PanelResult.Of(24, 11).Tasters)
            {
                OtherCounts = [new("late ballots counted", PanelResult.Of(25, 11).Tasters)],
            }));
        yield return ("another rule gives another answer",
            SamplePanel.Of(looked, new(PanelResult.Of(24, 12).Tasters)
            {
                OtherCounts = [new("late ballots counted", PanelResult.Of(25, 13).Tasters),
                    new("the last of double ballots counted", PanelResult.Of(24, 12).Tasters)],
            }));
        var prior = SamplePanel.Plan(Protocol.Triangle, 24) with { PriorA = 1, PriorB = 9 };
        yield return ("a prior of the plan's own",
            SamplePanel.Of(prior, PanelResult.Of(24, 11)) with { Bayes = BayesReading.Of(Protocol.Triangle, 24, 11, 0.3, 1, 9) });
        yield return ("questions beside",
            WithQuestions(
                RatingReport.Of(Ratings(), [.. Enumerable.Repeat(new Preference(Side.A, true), 6),
                    .. Enumerable.Repeat(new Preference(Side.B, true), 15), new(null, false)])));
        yield return ("questions beside, a preference shown",
            WithQuestions(RatingReport.Of([],
                [.. Enumerable.Repeat(new Preference(Side.A, true), 2), .. Enumerable.Repeat(new Preference(Side.B, true), 20)])));
        yield return ("a preference among uneven cups, as choosing blindly",
            WithQuestions(
                RatingReport.Of([], [.. Enumerable.Repeat(new Preference(Side.B, true, 1.0 / 3), 8),
                    .. Enumerable.Repeat(new Preference(Side.A, false, 1.0 / 3), 16)])));
        yield return ("a preference among uneven cups, shown",
            WithQuestions(
                RatingReport.Of([], [.. Enumerable.Repeat(new Preference(Side.B, true, 1.0 / 3), 12),
                    .. Enumerable.Repeat(new Preference(Side.B, false, 2.0 / 3), 12)])));
        yield return ("words", SamplePanel.Single(Protocol.Triangle, 24, 11) with
        {
            Comments = CommentTally.Of([new("T1", Side.A, "malty"), new("T2", Side.B, "malty, bitter"), new("T3", Side.B, "bitter")]),
        });
        yield return ("words that set the halves apart",
            SamplePanel.Single(Protocol.Triangle, 24, 11) with
            {
                Comments = CommentTally.Of(Enumerable.Range(0, 14).Select(i => new Comment($"T{i}", Side.B, "harsh bitter"))),
            });
        yield return ("a bias", WithBias(right => right < 12));
        yield return ("no bias", WithBias(right => right % 2 == 0));
        yield return ("departures and remarks", SamplePanel.Single(Protocol.Triangle, 19, 11) with
        {
            Departures = SamplePanel.Plan(Protocol.Triangle, 24).Departures(new(Protocol.Triangle, 19, 19) { Seed = 3 }),
            Remarks = ["A ballot of T05 is not counted: the taster knew the variable."],
        });
    }

    private static CountedPanel WithQuestions(RatingReport report) =>
        SamplePanel.Single(Protocol.Tetrad, 24, 11) with { Ratings = report };

    private static IEnumerable<Rating> Ratings() =>
        Enumerable.Range(0, 8)
            .SelectMany(
                i => new[] { new Rating($"T{i}", "bitterness", 4, 6 + (i % 2), i < 5),
                    new Rating($"T{i}", "liking", 5, 5 + (i % 3) - 1, i < 5) })
            .Append(new("T9", "foam", 1, 2));

    private static CountedPanel WithBias(Func<int, bool> right)
    {
        var check = BiasCheck.OfRightAnswers("serving order",
            Enumerable.Range(0, 24).Select(i => (i < 12 ? "AAB" : "ABB", right(i))), seed: 7);
        return SamplePanel.Single(Protocol.Triangle, 24, 12) with { BiasWhenAsked = new(new BiasReport([check])) };
    }
}
