using SplitBatch.Evidence.Findings;
using SplitBatch.Panel;

namespace SplitBatch.Evidence.Phrases;

/// <summary>
/// The headline, composed in one order: the question; the answer with the count beside what guessing gives; the largest thing that
/// could explain it otherwise; the limit. At most 60 words.
/// </summary>
internal static class HeadlinePhrases
{
    public const int MostWords = 60;

    /// <summary>Names longer than this together are left out of the question; the halves are then called A and B.</summary>
    private const int MostWordsOfNames = 9;

    public static Sentence Of(TrialHeadline finding)
    {
        if (finding.Departures.Count > 0) return AfterDepartures(finding);
        var fewer = finding.Fewer is { } missing ? PlanPhrases.Fewer(missing) : Sentence.Empty;
        var full = Sentence.Join(Question(finding), Answer(finding), fewer, Otherwise(finding), Limit(finding));
        return Words(full) <= MostWords ? full : Sentence.Join(Question(finding), Answer(finding), fewer, Limit(finding));
    }

    /// <summary>
    /// What was done to the plan comes first; then the result by the sealed plan, then that by the changed one. Longer than other
    /// headlines where it must be.
    /// </summary>
    private static Sentence AfterDepartures(TrialHeadline finding)
    {
        var more = finding.Departures.Count - 1;
        var rest = more == 0 ? Sentence.Empty : Sentence.Of($", and {Printed.Count(more, "more departure")} from the sealed plan");
        var sealedPlan = Answer(finding with { IsLead = false }, "By the sealed plan, ");
        var changed = finding.AsChanged is not { } other ? Sentence.Empty
            : Answer(finding, "").Text == Answer(other, "").Text ? Sentence.Of($"By the changed plan, the result is the same.")
            : Answer(other with { IsLead = false }, "By the changed plan, ");
        return Sentence.Join(Sentence.Of($"A lead to follow, not a test: {PlanPhrases.Lead(finding.Departures[0])}{rest}."), sealedPlan,
            changed, Limit(finding));
    }

    private static Sentence Question(TrialHeadline finding) => HasShortNames(finding)
        ? Sentence.Of($"{new Name(PlanPhrases.Capital(finding.NameA))} or {new Name(finding.NameB)}?")
        : Sentence.Of($"Half A or half B?");

    private static Sentence Answer(TrialHeadline finding) => Answer(finding, finding.IsLead ? "A lead to follow, not a test: " : "");

    private static Sentence Answer(TrialHeadline finding, string lead)
    {
        return finding.Answer switch
        {
            HeadlineAnswer.NoPanel => Sentence.Of($"No panel is counted yet, so nothing is known about the taste."),
            HeadlineAnswer.UnderWay => Sentence.Of($"The panel is not finished, and nothing is decided; so far {Count(finding)}."),
            HeadlineAnswer.BelowChance =>
                Sentence.Of($"Something looks wrong at the panel: {Count(finding)}. The key, the codes and the question must be checked; "
                    + $"nothing is concluded."),
            HeadlineAnswer.Shown => Start(lead, Sentence.Of($"tasters could tell them apart: {Count(finding)}.")),
            HeadlineAnswer.ShownWithinMargin =>
                Start(lead,
                    Sentence.Of($"tasters could tell them apart, but that {Margin(finding)} or more can is ruled out in this task "
                        + $"({Confidence(finding)}): {Count(finding)}.")),
            HeadlineAnswer.RuledOut =>
                Start(lead,
                    Sentence.Of($"that {Margin(finding)} or more of such tasters can tell them apart{Direction(finding)} is ruled out in "
                        + $"this task ({Confidence(finding)}): {Count(finding)}.")),
            HeadlineAnswer.PreferenceShown => Start(lead, Sentence.Of($"more tasters like {Liked(finding)} better: {Count(finding)}.")),
            HeadlineAnswer.NoPreferenceShown =>
                Start(lead,
                    Sentence.Of($"no majority likes either better: {Count(finding)}. Whether people can tell is another question.")),
            _ => Start(lead, Sentence.Of($"it is open whether tasters can tell them apart: {Count(finding)}{Allowed(finding)}.")),
        };
    }

    /// <summary>The count beside what guessing gives.</summary>
    private static Sentence Count(TrialHeadline finding) => finding.Count switch
    {
        SetsCounted { Plan: { AsksPreference: true } plan } count =>
            Sentence.Of($"{Printed.Count(Larger(count))} of {Wording.Sets(plan.Protocol, count.Sets)} went to one half, where chance "
                + $"gives {Printed.Expected(count.ByGuessing)}"),
        SetsCounted { Plan: { Protocol.Sides: 2 } plan } count =>
            Sentence.Of($"{Printed.Count(Larger(count))} of {Wording.Sets(plan.Protocol, count.Sets)} named one half, where guessing "
                + $"gives {Printed.Expected(count.ByGuessing)}"),
        SetsCounted { Plan: var plan } count =>
            Sentence.Of($"{Printed.Count(count.Right)} of {Wording.Sets(plan.Protocol, count.Sets)} "
                + $"{Wording.Were(count.Sets == 1 ? 1 : count.Right)} right, where guessing gives {Printed.Expected(count.ByGuessing)}"),
        KindsCounted kinds =>
            Sentence.Of($"{Printed.Count(kinds.Hits)} of {Printed.Count(kinds.Different, "unlike set")} "
                + $"{Wording.Were(kinds.Different == 1 ? 1 : kinds.Hits)} noticed, and {Printed.Count(kinds.FalseAlarms)} of "
                + $"{Printed.Count(kinds.Alike, "alike one")} taken for unlike"),
        _ => Sentence.Empty,
    };

    private static Sentence Allowed(TrialHeadline finding) =>
        finding.Margin is { Decision.StillAllowed: { } allowed } margin && allowed >= margin.Plan.Margin
            ? Sentence.Of($", and up to {Printed.Percent(allowed, against: margin.Plan.Margin)} of such tasters might in this task "
                + $"({PlanPhrases.Confidence(margin.Plan)})")
            : Sentence.Empty;

    /// <summary>How sure what is ruled out is: by the plan, or by the true rate of a sequential one.</summary>
    private static Sentence Confidence(TrialHeadline finding) => finding.Sequential is { } path
        ? Sentence.Of($"{Printed.Percent(1 - path.FalselyRuledOut)} confidence")
        : PlanPhrases.Confidence(finding.Plan!);

    private static Sentence Otherwise(TrialHeadline finding)
    {
        if (finding.Largest is not { } largest) return Sentence.Empty;
        if (largest.Finding is DepartedFromPlan departed) return PlanPhrases.Short(departed);
        var what = largest.Finding switch
        {
            LabDifference lab => Gap(finding, lab.Comparison),
            AnalyteApart other => Gap(finding, other.Comparison),
            HalvesDiffer halves => Sentence.Of($"the halves differ in {new Name(halves.Line.Quantity)}"),
            BiasShown bias => Sentence.Of($"answers depended on {new Name(bias.Check.Name)}"),
            HopLotsDiffer lots =>
                Sentence.Of($"the hop lots {(lots.Confound.IsUnknown ? "may differ" : "differ")} in "
                    + $"{Brewing.PlainWords.InWords(lots.Confound.Difference)} too"),
            NotMeasured gaps => Sentence.Of($"nobody measured {new Name(gaps.Quantities[0])} on both halves"),
            _ => Sentence.Of($"no batch log says whether the halves differ otherwise"),
        };
        return finding.Answer is HeadlineAnswer.Shown or HeadlineAnswer.ShownWithinMargin or HeadlineAnswer.PreferenceShown
            ? Sentence.Of($"But {what}, so the variable need not be the reason.")
            : Sentence.Of($"{what.Capital}.");
    }

    private static Sentence Gap(TrialHeadline finding, Lab.LabComparison comparison) => HasShortNames(finding)
        ? LabPhrases.Gap(comparison, finding.NameA, finding.NameB)
        : LabPhrases.Gap(comparison, "A", "B");

    private static Sentence Limit(TrialHeadline finding) =>
        finding.Answer is HeadlineAnswer.NoPanel or HeadlineAnswer.UnderWay or HeadlineAnswer.BelowChance
            ? Sentence.Empty
            : finding.Plan is { Standing: PlanStanding.Declared } ? Sentence.Of($"One batch of each; the plan was not sealed.")
            : Sentence.Of($"One batch of each.");

    private static Printed Margin(TrialHeadline finding) => PlanPhrases.Margin(finding.Plan!);

    private static string Direction(TrialHeadline finding) =>
        finding is { Margin: null, Plan.IsDirected: true } ? " in the direction expected" : "";

    private static Sentence Liked(TrialHeadline finding)
    {
        var count = (SetsCounted)finding.Count!;
        var half = 2 * count.Right > count.Sets ? count.Plan.Expected : count.Plan.Expected == Side.A ? Side.B : Side.A;
        return HasShortNames(finding)
            ? Sentence.Of($"{new Name(half == Side.A ? finding.NameA : finding.NameB)}")
            : Sentence.Of($"half {half}");
    }

    private static int Larger(SetsCounted count) => Math.Max(count.Right, count.Sets - count.Right);

    private static bool HasShortNames(TrialHeadline finding) => WordsOf(finding.NameA) + WordsOf(finding.NameB) <= MostWordsOfNames;

    private static Sentence Start(string lead, Sentence answer) => lead.Length > 0 ? Sentence.Of($"{lead}{answer}") : answer.Capital;

    private static int Words(Sentence sentence) => WordsOf(sentence.Text);

    private static int WordsOf(string text) => text.Split(' ', StringSplitOptions.RemoveEmptyEntries).Length;
}
