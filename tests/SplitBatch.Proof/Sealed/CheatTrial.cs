using SplitBatch.Panel.Deciding;
using SplitBatch.Evidence;
using SplitBatch.Panel.Ballots;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;
using SplitBatch.Panel.Serving;
using SplitBatch.Panel.Simulation;
using SplitBatch.Proof.TruthTable;

namespace SplitBatch.Proof.Sealed;

/// <summary>One trial in which somebody does something to a sealed plan.</summary>
/// <param name="Cheated">Whether there was an occasion: else the panel kept to its plan, and its errors are those it declared.</param>
/// <param name="Wanted">Whether the count says what is false by the reading that was made to please.</param>
/// <param name="FalseBySeal">Whether the verdict by the sealed plan is false.</param>
/// <param name="Headline">The headline where anything false is said; empty elsewhere.</param>
/// <param name="IsClean">Whether the verdict stands as a test.</param>
internal sealed record CheatOutcome(bool Cheated, bool Wanted, bool FalseBySeal, string Headline, bool IsClean);

/// <summary>Plays a trial with one kind of cheat.</summary>
/// <param name="cheat">What is done.</param>
/// <param name="truth">How large the difference truly is.</param>
internal sealed class CheatTrial(Cheat cheat, Truth truth)
{
    /// <summary>What a count says, worked out once for each.</summary>
    private readonly Dictionary<(int Sets, int Right, double Margin, double Alpha), PanelReading> read = [];

    private readonly PanelPlan plan = new(cheat == Cheat.TurnsTheQuestion ? Protocol.PairedDirectional : Protocol.Triangle,
        cheat == Cheat.StopsWhenRuledOut ? 60 : 24) { Margin = Truth.Margin, Beta = 0.05 };

    /// <summary>What became of each situation that came up: none is put through the verdict twice.</summary>
    private readonly Dictionary<string, CheatOutcome> seen = [];

    /// <summary>The seal is the same in every trial, so it is made once.</summary>
    private SealedPanel? sealedPlan;

    private int Tasters => plan.Tasters;

    /// <summary>A key with as many sets as the cheat may want.</summary>
    public ServingPlan Key(int seed, string panel = "main") =>
        ServingPlan.Balanced(plan with { Name = panel, Seed = seed, Tasters = cheat == Cheat.GoesOn ? 2 * Tasters : Tasters });

    /// <summary>Plays it.</summary>
    public CheatOutcome Run(ServingPlan key, ServingPlan second, int seed)
    {
        var all = Timed(key.Ballots(truth.Alike(plan.Protocol), seed));
        var first = Tasters < all.Count ? [.. all.Take(Tasters)] : all;
        switch (cheat)
        {
            case Cheat.StopsAtADifference or Cheat.LooksAndStops or Cheat.StopsWhenRuledOut:
                var n = FirstAt(key, all, 1, Tasters,
                    cheat == Cheat.StopsWhenRuledOut
                        ? reading => reading.Similarity.MarginRuledOut
                        : reading => reading.Difference.DifferenceShown);
                return Outcome(n < Tasters || cheat == Cheat.LooksAndStops, [plan], key, [.. all.Take(n)],
                    looks: cheat == Cheat.LooksAndStops ? n : 0);
            case Cheat.GoesOn:
                var last = FirstAt(key, all, Tasters, 2 * Tasters, reading => reading.Difference.DifferenceShown);
                return Outcome(last > Tasters, [plan], key, [.. all.Take(last)]);
            case Cheat.MovesTheMargin or Cheat.MovesTheMarginOnRecord:
                var count = Right(key, first);
                var margin = Enumerable.Range(5, 85).Select(percent => percent / 100.0)
                    .First(share => Read(Tasters, count, plan with { Margin = share }).Similarity.MarginRuledOut || share >= 0.89);
                return Outcome(margin != plan.Margin, [plan with { Margin = margin }], key, first,
                    onRecord: cheat == Cheat.MovesTheMarginOnRecord);
            case Cheat.MovesAlpha:
                var right = Right(key, first);
                var alpha = Enumerable.Range(5, 45).Select(percent => percent / 100.0)
                    .First(share => Read(Tasters, right, plan with { Alpha = share }).Difference.DifferenceShown || share >= 0.49);
                return Outcome(alpha != plan.Alpha, [plan with { Alpha = alpha }], key, first);
            case Cheat.TurnsTheQuestion:
                var turned = 2 * Right(key, first) < Tasters;
                return Outcome(turned, [turned ? plan with { Expected = Side.A } : plan], key, first);
            default:
                var other = Timed(second.Ballots(truth.Alike(plan.Protocol), seed + 1_000_003));
                var swap = !Read(key, first, plan).Difference.DifferenceShown && Read(second, other, plan).Difference.DifferenceShown;
                var two = plan with { Name = second.Panel };
                return Outcome(swap, swap ? [two, plan] : [plan, two], key, first, extra: (two, second, other));
        }
    }

    private CheatOutcome Outcome(
        bool cheated, PanelPlan[] now, ServingPlan key, IReadOnlyList<Ballot> ballots, bool onRecord = false, int looks = 0,
        (PanelPlan Plan, ServingPlan Key, IReadOnlyList<Ballot> Ballots)? extra = null)
    {
        var situation = $"{cheated} {onRecord} {looks} "
            + $"{string.Join(' ', now.Select(by => $"{by.Name} {by.Margin} {by.Alpha} {by.Expected}"))} {Told(key, ballots)}"
            + (extra is { } beside ? Told(beside.Key, beside.Ballots) : "");
        return seen.TryGetValue(situation, out var known)
            ? known
            : seen[situation] = Judge(cheated, now, key, ballots, onRecord, looks, extra);
    }

    /// <summary>
    /// All that a verdict can tell of ballots that are all there: how many, how many right, and in which orders, of those sealed and of
    /// all.
    /// </summary>
    private string Told(ServingPlan key, IReadOnlyList<Ballot> ballots)
    {
        return ballots.Count > Tasters ? Of([.. ballots.Take(Tasters)]) + Of(ballots) : Of(ballots);

        string Of(IReadOnlyList<Ballot> some)
        {
            var scored = key.Score(some, BallotRules.Default);
            var orders = scored.Practice.Orders!;
            return $"{some.Count} {scored.Correct} {orders.InWords} {orders.IsBalanced} {orders.IsLopsided};";
        }
    }

    private CheatOutcome Judge(
        bool cheated, PanelPlan[] now, ServingPlan key, IReadOnlyList<Ballot> ballots, bool onRecord, int looks,
        (PanelPlan Plan, ServingPlan Key, IReadOnlyList<Ballot> Ballots)? extra)
    {
        var served = new Dictionary<string, (ServingPlan, IReadOnlyList<Ballot>)> { [plan.Name] = (key, ballots) };
        if (extra is { } more) served[more.Plan.Name] = (more.Key, more.Ballots);
        sealedPlan ??= extra is { Plan: var two } ? new SealedPanel(plan, two) : new SealedPanel(plan);
        var verdict = sealedPlan.Verdict(now, onRecord && cheated, served, looks);
        var wanted = verdict.Evidence.Changed is { } changed
            ? IsFalse(Verdict.Of(changed).Answer, now[0].Margin)
            : IsFalse(Naive(key, ballots), plan.Margin);
        var bySeal = IsFalse(verdict.Answer, plan.Margin);
        return new(cheated, cheated && wanted, bySeal, cheated && (wanted || bySeal) ? verdict.Headline : "", verdict.KeptToPlan);
    }

    /// <summary>What somebody would say who knows of no plan: the count that there is, at the usual levels.</summary>
    private PanelAnswer Naive(ServingPlan key, IReadOnlyList<Ballot> ballots) => Read(key, ballots, plan).Answer;

    private bool IsFalse(PanelAnswer? answer, double margin) => answer switch
    {
        PanelAnswer.DifferenceShown => truth.NoDifference,
        PanelAnswer.DifferenceWithinMargin => truth.NoDifference || truth.Discriminators >= margin,
        PanelAnswer.MarginRuledOut => truth.Discriminators >= margin,
        _ => false,
    };

    private int FirstAt(ServingPlan key, IReadOnlyList<Ballot> all, int from, int to, Func<PanelReading, bool> pleases)
    {
        var right = key.Score(all, BallotRules.Default).Ballots.Select(ballot => ballot.IsCorrect).ToArray();
        return Enumerable.Range(from, to - from).FirstOrDefault(n => pleases(Read(n, right.Take(n).Count(correct => correct), plan)), to);
    }

    private PanelReading Read(ServingPlan key, IReadOnlyList<Ballot> ballots, PanelPlan by) =>
        Read(ballots.Count, Right(key, ballots), by);

    private PanelReading Read(int sets, int right, PanelPlan by)
    {
        var count = (sets, right, by.Margin, by.Alpha);
        return read.TryGetValue(count, out var known)
            ? known
            : read[count] = PanelReading.Of(by.Protocol, sets, right, by.Margin, by.Alpha, by.Beta);
    }

    private static int Right(ServingPlan key, IReadOnlyList<Ballot> ballots) => key.Score(ballots, BallotRules.Default).Correct;

    private static IReadOnlyList<Ballot> Timed(IReadOnlyList<Ballot> ballots) =>
        [.. ballots.Select((ballot, i) => ballot with { When = SealedPanel.Evening.AddMinutes(i) })];
}
