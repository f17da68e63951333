using System.Globalization;
using SplitBatch.Panel.Ballots;
using SplitBatch.Panel.Planning;
using SplitBatch.Trials.Reading;

namespace SplitBatch.Trials.Checks;

/// <summary>A panel whose plan nobody sealed, or dated after its first ballot.</summary>
internal sealed class PlanNotSealed : ITrialCheck
{
    private const string Accepted = "a plan that is sealed before the first cup is poured (splitbatch declare, or trial.Seal())";

    /// <inheritdoc/>
    public IEnumerable<Fault> Find(TrialFacts facts)
    {
        foreach (var panel in facts.Content.Panels.Where(panel => !panel.Custody.IsSealed))
        {
            var first = panel.Ballots.Min(ballot => ballot.When);
            if (facts.Content.State.Chain.Seals.FirstOrDefault(seal => seal.Plan.Panel(panel.Name) is not null) is { } late)
            {
                yield return new Fault(late.File,
                    $"The plan of panel {panel.Name} was sealed only after its first ballot, so nobody can check that it was fixed "
                        + $"beforehand. If the ballots bear a wrong time, mend that.")
                        {
                            Accepted = Accepted,
                            Severity = Severity.Warning,
                        };
            }
            else if (panel.Ballots.Count > 0 && panel.Plan.Declared is null)
            {
                yield return facts.InPanel(panel, "declared", null,
                    $"The plan of panel {panel.Name} was neither sealed nor declared: a result without a plan fixed beforehand is a lead "
                        + $"to follow and not a test.", Accepted);
            }
            else if (first is { } time && DateOnly.FromDateTime(time.DateTime) is var served && served < panel.Plan.Declared)
            {
                yield return facts.InPanel(panel, "declared", TrialFacts.Day(panel.Plan.Declared.Value),
                    $"The plan of panel {panel.Name} was declared after its first ballot ({TrialFacts.Day(served)}), so its result is a "
                        + $"lead to follow and not a test.", Accepted);
            }
            else
            {
                yield return facts.InPanel(panel, "declared", panel.Plan.Declared is { } day ? TrialFacts.Day(day) : null,
                    panel.Ballots.Count > 0
                        ? $"The plan of panel {panel.Name} was not sealed before its first ballot, so nobody can check that it was fixed "
                            + $"beforehand."
                        : $"The plan of panel {panel.Name} is not sealed yet.", Accepted);
            }
        }
    }
}

/// <summary>A panel so small that no count of right answers could rule its margin out.</summary>
internal sealed class PanelTooSmall : ITrialCheck
{
    /// <inheritdoc/>
    public IEnumerable<Fault> Find(TrialFacts facts) =>
        from panel in facts.Content.Panels
        let plan = panel.Plan
        where plan.Protocol.HasKnownChance && !(plan.SimilarityCount >= plan.Tasters * plan.Protocol.Chance)
        let needed = Enough(plan)
        select facts.InPanel(
            panel, "tasters", plan.Tasters.ToString(CultureInfo.InvariantCulture),
            $"{plan.Tasters} tasters are too few for the declared margin: no count, not even that of mere guessing, rules out "
                + $"{Printed.ChosenPercent(plan.Margin)} discriminators (beta {Printed.ChosenPercent(plan.Beta)}).",
            $"{needed} tasters or more for this margin",
            "More tasters, a larger margin or a larger beta; each has to be decided before pouring.");

    /// <summary>The first size whose limit reaches the count that guessing gives on average.</summary>
    private static int Enough(PanelPlan plan)
    {
        var tasters = plan.Tasters;
        while (Power.SimilarityCount(plan.Protocol, tasters, plan.Margin, plan.Beta) < tasters * plan.Protocol.Chance
            && tasters < Limit) tasters++;
        return tasters;
    }

    private const int Limit = 5000;
}

/// <summary>A panel that is more likely to miss a difference as large as its margin than to show it.</summary>
internal sealed class PanelLacksPower : ITrialCheck
{
    /// <inheritdoc/>
    public IEnumerable<Fault> Find(TrialFacts facts) =>
        from panel in facts.Content.Panels
        let plan = panel.Plan
        where plan.Protocol.HasKnownChance
        let power = Power.Of(plan.Protocol, plan.Tasters, plan.Alpha, plan.Margin)
        where power < Math.Min(plan.Power, 0.5)
        let needed = Power.TastersNeeded(plan.Protocol, plan.Alpha, plan.Power, plan.Margin)
        select facts.InPanel(
            panel, "tasters", plan.Tasters.ToString(CultureInfo.InvariantCulture),
            $"{plan.Tasters} tasters are more likely to miss a difference as large as the margin than to show it: it is shown in "
                + $"{Printed.Percent(power)} of such panels, and the plan wants {Printed.ChosenPercent(plan.Power)}.",
            $"{needed.First} tasters or more for the power that the plan wants",
            "Plan more tasters, or a larger margin; both have to be decided before pouring.");
}

/// <summary>Ballots with something remarkable, each with how it counts by the plan, and sets that no ballot came back for.</summary>
internal sealed class DoubtfulBallots : ITrialCheck
{
    /// <inheritdoc/>
    public IEnumerable<Fault> Find(TrialFacts facts)
    {
        foreach (var panel in facts.Content.Panels.Where(panel => panel.Serving is not null && panel.Ballots.Count > 0))
        {
            var scored = panel.Counted;
            var file = panel.BallotFiles.Count > 0 ? panel.BallotFiles[0] : BallotFile.NameOf(panel.Name);
            foreach (var fault in (scored with { Missing = [] }).Faults(file)) yield return fault;
            if (scored.Missing.Count > 0) yield return new Fault(file, Missing(scored)) { Severity = Severity.Warning };
        }
    }

    private static string Missing(ScoredPanel scored)
    {
        var sets = scored.Missing.Take(8).Select(set => string.Create(CultureInfo.InvariantCulture, $"{set.Taster} (set {set.Number})"));
        var rule = scored.Rules.Missing == BallotRule.CountAsWrong ? "counted as wrong" : "not counted";
        return string.Create(CultureInfo.InvariantCulture,
            $"No ballot came back for {scored.Missing.Count} of {scored.Served} sets ({rule}): "
                + $"{string.Join(", ", sets)}{(scored.Missing.Count > 8 ? " and others" : "")}.");
    }
}
