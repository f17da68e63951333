using SplitBatch.Panel.Ballots;
using SplitBatch.Panel.Counting;

namespace SplitBatch.Panel.Deciding;

/// <summary>The analyses that start from a panel counted by its key.</summary>
public static class ScoredPanelAnalysis
{
    /// <summary>Each taster's counted sets and right answers, without names; tasters with nothing counted are left out.</summary>
    /// <param name="panel">The panel, counted by its key.</param>
    public static IReadOnlyList<TasterCount> TasterCounts(this ScoredPanel panel)
    {
        ArgumentNullException.ThrowIfNull(panel);
        return [.. panel.PerTaster.Where(t => t.Counted > 0).Select(t => new TasterCount(t.Counted, t.Correct))];
    }

    /// <summary>The test of a difference on the counted answers.</summary>
    /// <param name="panel">The panel, counted by its key.</param>
    /// <param name="alpha">The chance, fixed beforehand, of showing a difference that is not there, above 0 and below 1.</param>
    /// <exception cref="InvalidOperationException">The protocol has no known guessing chance; see
    /// <see cref="ScoredPanel.Answers"/>.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Nothing was counted, or alpha is not a share.</exception>
    public static DifferenceTest Test(this ScoredPanel panel, double alpha = 0.05)
    {
        ArgumentNullException.ThrowIfNull(panel);
        return DifferenceTest.Of(panel.Protocol, panel.Counted, panel.Correct, alpha);
    }

    /// <summary>Repeats by the same tasters, judged by the spread of tasters.</summary>
    /// <param name="panel">The panel, counted by its key; with a known guessing chance.</param>
    /// <param name="alpha">The chance of showing a difference that is not there, above 0 and below 1.</param>
    /// <exception cref="ArgumentException">Nothing is counted.</exception>
    public static ReplicatedTest Repeats(this ScoredPanel panel, double alpha = 0.05)
    {
        ArgumentNullException.ThrowIfNull(panel);
        return ReplicatedTest.Of(panel.Protocol, panel.TasterCounts(), alpha);
    }

    /// <summary>What the count says to someone who starts from a stated prior.</summary>
    /// <param name="panel">The panel, counted by its key.</param>
    /// <param name="margin">The share of discriminators that would matter, above 0 and below 1.</param>
    /// <param name="priorA">First parameter of the beta prior of the share of discriminators, above 0.</param>
    /// <param name="priorB">Second parameter, above 0.</param>
    public static BayesReading Bayes(this ScoredPanel panel, double margin, double priorA = 1, double priorB = 1)
    {
        ArgumentNullException.ThrowIfNull(panel);
        return BayesReading.Of(panel.Protocol, panel.Counted, panel.Correct, margin, priorA, priorB);
    }

    /// <summary>Whether position, code, order, session, server, repeat or the odd beer drove the answers.</summary>
    /// <param name="panel">The panel, counted by its key.</param>
    public static BiasReport Bias(this ScoredPanel panel) => BiasReport.Of(panel);

    /// <summary>The two-by-two table of A/not-A or same/different: sets with a difference against sets without.</summary>
    /// <param name="panel">The panel, counted by its key.</param>
    /// <param name="alpha">The chance of showing a difference that is not there, above 0 and below 1.</param>
    /// <exception cref="ArgumentException">The protocol has a known guessing chance.</exception>
    /// <exception cref="ArgumentOutOfRangeException">One kind of set was never counted.</exception>
    public static YesNoTest YesNo(this ScoredPanel panel, double alpha = 0.05)
    {
        ArgumentNullException.ThrowIfNull(panel);
        // A wrong answer to a set without a difference is a false alarm, a right one to a set with a difference a hit.
        var sets = panel.Ballots.Where(b => b is { IsCounted: true, Set: not null })
            .Select(b => (Differs: panel.Plan.Design.Differs(b.Set!.Order), b.IsCorrect)).ToArray();
        return YesNoTest.Of(
            panel.Protocol,
            sets.Count(s => s is { Differs: true, IsCorrect: true }), sets.Count(s => s.Differs),
            sets.Count(s => s is { Differs: false, IsCorrect: false }), sets.Count(s => !s.Differs), alpha);
    }

    /// <summary>The count as one panel of a forest chart.</summary>
    /// <param name="panel">The panel, counted by its key.</param>
    public static PanelCount AsPanelCount(this ScoredPanel panel)
    {
        ArgumentNullException.ThrowIfNull(panel);
        return new(panel.Plan.Panel, panel.Protocol, panel.Counted, panel.Correct);
    }
}
