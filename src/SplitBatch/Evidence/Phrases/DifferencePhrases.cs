using SplitBatch.Evidence.Findings;

namespace SplitBatch.Evidence.Phrases;

/// <summary>Is a difference shown? Which luck would give the same, how often, and what follows.</summary>
internal static class DifferencePhrases
{
    public static Sentence Of(DifferenceTested finding) => finding.Outcome == DifferenceOutcome.CouldNotShow
        ? Sentence.Of($"Whatever so small a panel had answered, it could not have shown a difference at "
            + $"{PlanPhrases.Level(finding.Plan)}.")
        : Sentence.Of($"{Luck(finding)} {(finding.Test == DifferenceTestKind.AnyTime ? "in at most" : "in")} {Chance(finding)} of such "
            + $"panels, {Beside(finding)}: {Conclusion(finding)}") + Needed(finding);

    /// <summary>What would have to be luck, up to "comes up".</summary>
    private static Sentence Luck(DifferenceTested finding) => finding.Test switch
    {
        DifferenceTestKind.RightAnswers => Sentence.Of($"By guessing alone so many right answers, or more, come up"),
        DifferenceTestKind.EitherWay when finding.Plan.AsksPreference =>
            Sentence.Of($"If each half is as likely to be chosen, a split at least as uneven, either way, comes up"),
        DifferenceTestKind.EitherWay => Sentence.Of($"By guessing alone a split at least as uneven, either way, comes up"),
        DifferenceTestKind.Leanings =>
            Sentence.Of($"If tasters leaned to either half equally often, a leaning at least as strong, either way, would come up"),
        DifferenceTestKind.Hits =>
            Sentence.Of($"If both kinds of set were answered alike, so many of these answers, or more, would fall on the right kind"),
        _ => Sentence.Of($"By guessing alone, however often the count was looked at, a count so telling comes up at some look"),
    };

    private static Printed Chance(DifferenceTested finding) => Beyond(finding.Decision.PValue, finding.Decision.Level);

    /// <summary>A chance with as many digits as show on which side of another it lies; no more where both are one.</summary>
    private static Printed Beyond(double chance, double other) =>
        Math.Abs(chance - other) < 1e-9 * other ? Printed.Percent(chance) : Printed.Percent(chance, against: other);

    private static Sentence Beside(DifferenceTested finding)
    {
        var level = finding.Decision.Level < finding.Plan.Alpha
            ? Sentence.Of($"the {Beyond(finding.Decision.Level, finding.Decision.PValue)} that each planned look has of "
                + $"{PlanPhrases.Level(finding.Plan)}")
            : PlanPhrases.Level(finding.Plan);
        return finding.Outcome == DifferenceOutcome.Shown ? Sentence.Of($"no more than {level}") : Sentence.Of($"more than {level}");
    }

    private static string Conclusion(DifferenceTested finding) => (finding.Plan.AsksPreference, finding.Outcome) switch
    {
        (true, DifferenceOutcome.Shown) => "a majority is shown.",
        (true, _) => "no majority is shown. Tasters who cannot tell, and two camps who can, both give such a count.",
        (_, DifferenceOutcome.Shown) => "a difference is shown.",
        (_, DifferenceOutcome.LookedTooOften) => "no difference is shown by the rule that allows for looking early.",
        _ => "no difference is shown, which does not mean that there is none.",
    };

    private static Sentence Needed(DifferenceTested finding) => (finding.Outcome, finding.Decision.CriticalCount) switch
    {
        (DifferenceOutcome.Shown, _) or (_, null) => Sentence.Empty,
        (_, { } needed) when finding.Test == DifferenceTestKind.EitherWay =>
            Sentence.Of($"{Printed.Count(needed)} for one half would have been needed."),
        (_, { } needed) => Sentence.Of($"{Printed.Count(needed)} right would have been needed."),
    };
}
