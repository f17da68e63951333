using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;
using SplitBatch.Panel;

namespace SplitBatch.Evidence.Findings;

/// <summary>Something found of one panel.</summary>
public abstract record PanelFinding : Finding
{
    private protected PanelFinding(CountedPlan plan, params IEnumerable<string> what)
        : base(Subject.Panel(plan.Panel), FindingId.Of("panel", plan.Panel).Then(what)) => Plan = plan;

    /// <summary>What was planned, and how firmly.</summary>
    public CountedPlan Plan { get; }
}

/// <summary>What a panel's findings need of its plan.</summary>
/// <param name="Panel">The panel's name.</param>
/// <param name="Protocol">What was poured and asked.</param>
/// <param name="Standing">Whether its limits were fixed beforehand.</param>
/// <param name="Alpha">The chance of showing a difference that is not there.</param>
/// <param name="Margin">The share of tasters who can tell that would matter, in this task.</param>
/// <param name="Beta">The chance of ruling the margin out although it is true.</param>
/// <param name="Attribute">The property that tasters were asked about, where the protocol names one.</param>
/// <param name="Expected">The half that was expected to show more of it.</param>
public sealed record CountedPlan(
    string Panel, Protocol Protocol, PlanStanding Standing, double Alpha, double Margin, double Beta, string Attribute = "bitter",
    Side Expected = Side.B)
{
    /// <summary>Whether tasters are asked for a named property in a direction fixed beforehand.</summary>
    public bool IsDirected => Protocol.IsDirected;

    /// <summary>Whether tasters are asked which half they like better, which is another question than whether they can tell.</summary>
    public bool AsksPreference { get; init; }

    /// <summary>The margin as it was declared, as a share in the task or as a d-prime.</summary>
    public DeclaredMargin DeclaredMargin { get; init; } = DeclaredMargin.OfShare(Margin);

    /// <summary>The margin as a d-prime of this task, if all tasters are alike; null where the share has none.</summary>
    public double? MarginDPrime => Protocol.HasKnownChance ? DeclaredMargin.DPrimeIn(Protocol) : null;

    /// <summary>The confidence of the limit that rules the margin out.</summary>
    public double Confidence => 1 - Beta;

    /// <summary>What the findings need of a panel's plan.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="standing">How it stands to the ballots.</param>
    public static CountedPlan Of(PanelPlan plan, PlanStanding standing)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return new(plan.Name, plan.Protocol, standing, plan.Alpha, plan.Margin, plan.Beta, plan.Attribute, plan.Expected)
        {
            AsksPreference = plan.AsksPreference,
            DeclaredMargin = plan.DeclaredMargin,
        };
    }
}
