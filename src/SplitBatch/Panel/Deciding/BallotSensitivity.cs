using SplitBatch.Panel.Counting;

namespace SplitBatch.Panel.Deciding;

/// <summary>
/// Would the verdict be another if missing ballots had come in, or if late, double or excluded ones had counted otherwise?
/// </summary>
/// <remarks>
/// Nothing is assumed about why ballots are missing: every number of right answers among them is tried, so with many missing everything is
/// open, and that is the truth. More than one ballot by a person is never a new taster.
/// <para>Ref. bounds instead of assumptions for missing answers: J. L. Horowitz and C. F. Manski (2000), J. Am. Stat. Assoc. 95, 77 (read
/// through a later account); sensitivity analysis: ICH E9(R1) (2019), from memory.</para>
/// </remarks>
/// <param name="Counted">The verdict on the declared count.</param>
/// <param name="IfRight">The verdict if none, one, two ... all of the missing answers had been right; only the declared count's where
/// none is missing.</param>
/// <param name="ByOtherRules">The verdict by each other rule of counting, in the order given.</param>
public sealed record BallotSensitivity(PanelAnswer Counted, IReadOnlyList<PanelAnswer> IfRight, IReadOnlyList<OtherVerdict> ByOtherRules)
{
    /// <summary>Missing sets.</summary>
    public int Missing => IfRight.Count - 1;

    /// <summary>The numbers of right answers among the missing at which the verdict would be another.</summary>
    public IReadOnlyList<int> TurnedBy => [.. Enumerable.Range(0, IfRight.Count).Where(right => IfRight[right] != Counted)];

    /// <summary>Whether every one of them gives the same verdict.</summary>
    public bool IsRobust => TurnedBy.Count == 0 && ByOtherRules.All(other => other.Answer == Counted);

    /// <summary>
    /// Asks for the verdicts; null where repeats of a two-sided pair are missing, whose verdict hangs on who gave which answer.
    /// </summary>
    internal static BallotSensitivity? Of(PanelRules rules, PanelResult result, PanelAnswer counted)
    {
        var missing = result.Missing.Sum();
        if (missing > 0 && rules.Protocol.Sides == 2 && (result.HasRepeats || result.WithMissingRight(0).HasRepeats)) return null;
        return new(
            counted,
            missing == 0
                ? [counted]
                : [.. Enumerable.Range(0, missing + 1)
                    .Select(right => PanelDecision.Decide(rules, result.WithMissingRight(right)).Answer)],
            [.. result.OtherCounts.Select(other => new OtherVerdict(other.Rule, PanelDecision.Decide(
                rules, new(other.Tasters) { LookedEarly = result.LookedEarly, Control = result.Control }).Answer))]);
    }
}

/// <summary>The verdict by another rule of counting.</summary>
/// <param name="Rule">The rule in words.</param>
/// <param name="Answer">The verdict.</param>
public sealed record OtherVerdict(string Rule, PanelAnswer Answer);
