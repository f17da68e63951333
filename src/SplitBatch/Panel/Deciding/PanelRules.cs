using SplitBatch.Numbers;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Deciding;

/// <summary>All that was declared before pouring and decides what a panel's count may say.</summary>
public sealed record PanelRules
{
    private readonly double alpha = 0.05;
    private readonly double beta = 0.05;
    private readonly double alarmLevel = LowCountAlarm.DefaultLevel;
    private readonly IReadOnlyList<int> plannedLooks = [];

    /// <summary>Rules with the usual levels; <c>with</c> or an initialiser changes them.</summary>
    /// <param name="protocol">A protocol with a known guessing chance.</param>
    /// <param name="margin">The smallest difference that would matter.</param>
    /// <exception cref="NotApplicableException">The protocol has no known guessing chance; see
    /// <see cref="PanelDecision.Of(YesNoTest)"/>.</exception>
    public PanelRules(Protocol protocol, DeclaredMargin margin)
    {
        ArgumentNullException.ThrowIfNull(protocol);
        ArgumentNullException.ThrowIfNull(margin);
        _ = protocol.Chance;
        (Protocol, Margin) = (protocol, margin);
    }

    /// <summary>The rules of a plan.</summary>
    internal static PanelRules Of(PanelPlan plan) => new(plan.Protocol, plan.DeclaredMargin) { Alpha = plan.Alpha, Beta = plan.Beta };

    /// <summary>What is poured and asked.</summary>
    public Protocol Protocol { get; }

    /// <summary>The smallest difference that would matter.</summary>
    public DeclaredMargin Margin { get; }

    /// <summary>The chance of showing a difference that is not there, above 0 and below 1.</summary>
    public double Alpha { get => alpha; init => alpha = Guard.OpenShare(value, nameof(Alpha)); }

    /// <summary>The chance of ruling the margin out although it is true, above 0 and below 1.</summary>
    public double Beta { get => beta; init => beta = Guard.OpenShare(value, nameof(Beta)); }

    /// <summary>The chance of a false alarm over a low count, above 0 and below 1.</summary>
    public double AlarmLevel { get => alarmLevel; init => alarmLevel = Guard.OpenShare(value, nameof(AlarmLevel)); }

    /// <summary>
    /// Numbers of sets after which the count is looked at by plan, rising, the last being the whole panel; empty where it is looked at
    /// only at the end.
    /// </summary>
    public IReadOnlyList<int> PlannedLooks
    {
        get => plannedLooks;
        init
        {
            if (value is { Count: > 0 }) CountPath.Check(value);
            plannedLooks = value ?? [];
        }
    }

    /// <summary>Whether a control set with a known difference was declared: without its passing, nothing is ruled out.</summary>
    public bool ControlDeclared { get; init; }
}
