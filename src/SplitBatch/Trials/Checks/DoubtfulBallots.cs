using System.Globalization;
using SplitBatch.Panel;

namespace SplitBatch.Trials.Checks;

/// <summary>Ballots with something remarkable, each with how it counts by the plan, and sets that no ballot came back for.</summary>
internal sealed class DoubtfulBallots : ITrialCheck
{
    /// <inheritdoc/>
    public IEnumerable<Fault> Find(TrialFacts facts)
    {
        foreach (var panel in facts.Content.Panels.Where(panel => panel.Serving is not null && panel.Ballots.Count > 0))
        {
            var scored = panel.Scored;
            var file = panel.BallotFiles.Count > 0 ? panel.BallotFiles[0] : BallotFile.NameOf(panel.Name);
            foreach (var fault in (scored with { Missing = [] }).Faults(file)) yield return fault;
            if (scored.Missing.Count > 0) yield return new Fault(file, Missing(scored)) { Severity = Severity.Warning };
        }
    }

    private static string Missing(ScoredPanel scored)
    {
        var sets = scored.Missing.Take(8).Select(set => string.Create(CultureInfo.InvariantCulture, $"{set.Taster} (set {set.Number})"));
        var rule = scored.Rules.Missing == BallotRule.CountAsWrong ? "counted as wrong" : "not counted";
        return string.Create(CultureInfo.InvariantCulture, $"No ballot came back for {scored.Missing.Count} of {scored.Served} sets ({rule}): {string.Join(", ", sets)}{(scored.Missing.Count > 8 ? " and others" : "")}.");
    }
}
