using SplitBatch.Evidence;
using SplitBatch.Panel.Ballots;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Serving;
using SplitBatch.Panel.Simulation;
using SplitBatch.Trials.Reading;

namespace SplitBatch.Proof.TruthTable;

/// <summary>One trial of a cell, from the serving plan to the verdict, by the same calls as a notebook makes.</summary>
internal static class PanelTrial
{
    /// <summary>Looks of a panel that is peeked at.</summary>
    private const int FirstLook = 8, LookEvery = 4;

    /// <summary>A serving plan for the cell.</summary>
    public static ServingPlan Serving(PanelCell cell, int seed) =>
        cell.Practice == Practice.OneOrder
            ? InOneOrder(cell, seed)
            : ServingPlan.Balanced(cell.Protocol, cell.Tasters, seed, replicates: cell.SetsForEach);

    /// <summary>One panel served by a plan.</summary>
    public static PanelOutcome Run(PanelCell cell, ServingPlan serving, int seed)
    {
        var ballots = serving.Ballots(cell.People, seed);
        if (cell.Practice == Practice.Peeking) ballots = UpToTheFirstDifference(cell, serving, ballots);
        var plan = cell.Plan with { Seed = serving.Seed!.Value };
        var record = new PanelRecord(plan, serving, ballots);
        var verdict =
            Verdict.Of(new TrialEvidence { Variable = "hop lot", NameA = "cones", NameB = "pellets", Panels = [record.Finding] });
        var finding = verdict.Main!;
        var reading = cell.Practice == Practice.RepeatsAsTasters
            ? PanelReading.Of(cell.Protocol, record.Scored.Counted, record.Scored.Correct, plan.Margin, plan.Alpha, plan.Beta)
            : finding.Reading!;
        return new PanelOutcome(
            cell.Practice == Practice.RepeatsAsTasters ? reading.Answer : finding.Answer, reading,
            IsQualified: finding.Departures.Count + finding.Remarks.Count > 0, verdict.KeptToPlan,
            finding.Sequential?.Tasters ?? record.Scored.Counted);
    }

    /// <summary>Ballots up to the look at which a difference shows, or all of them.</summary>
    private static IReadOnlyList<Ballot> UpToTheFirstDifference(PanelCell cell, ServingPlan serving, IReadOnlyList<Ballot> ballots)
    {
        for (int n = FirstLook; n < ballots.Count; n += LookEvery)
        {
            Ballot[] soFar = [.. ballots.Take(n)];
            if (DifferenceTest.Of(cell.Protocol, n, serving.Score(soFar, BallotRules.Default).Correct).DifferenceShown) return soFar;
        }

        return ballots;
    }

    /// <summary>The balanced plan's cups, poured for everybody in the order that the first taster would get.</summary>
    private static ServingPlan InOneOrder(PanelCell cell, int seed)
    {
        var balanced = ServingPlan.Balanced(cell.Protocol, cell.Tasters, seed);
        var order = balanced.Design.Orders[0].Beers;
        return ServingKey.ToPlan([.. balanced.Key.Select(row => row with { Beer = order[row.Position - 1] })], seed);
    }
}
