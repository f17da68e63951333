using SplitBatch.Evidence.Findings;

namespace SplitBatch.Evidence.Phrases;

/// <summary>What was planned, how firmly, and where practice left it.</summary>
internal static class PlanPhrases
{
    /// <summary>A level of error and whether it was fixed beforehand: "the 5 % declared beforehand".</summary>
    public static Sentence Level(CountedPlan plan) => plan.Standing switch
    {
        PlanStanding.Declared => Sentence.Of($"the {Printed.ChosenPercent(plan.Alpha)} declared beforehand"),
        PlanStanding.DeclaredAfterServing => Sentence.Of($"{Printed.ChosenPercent(plan.Alpha)}, which was declared after serving"),
        _ => Sentence.Of($"{Printed.ChosenPercent(plan.Alpha)}, which nobody declared beforehand"),
    };

    /// <summary>How sure a limit is: "95 % confidence".</summary>
    public static Sentence Confidence(CountedPlan plan) => Sentence.Of($"{Printed.ChosenPercent(plan.Confidence)} confidence");

    public static Sentence Of(DepartedFromPlan finding)
    {
        var (what, planned, done, meaning) = (finding.Departure.What, finding.Departure.Planned, finding.Departure.Done, finding.Departure.Meaning);
        return Sentence.Of($"Panel {new Name(finding.Plan.Panel)} departed from its plan. {Capital(what)}: planned {new Quote(planned)}, done {new Quote(done)}. {meaning}");
    }

    /// <summary>A serious departure in a few words, for a headline.</summary>
    public static Sentence Short(DepartedFromPlan finding) => Sentence.Of($"{finding.Departure.What switch
    {
        "declared" when finding.Plan.Standing == PlanStanding.DeclaredAfterServing => "The plan was written after serving.",
        "declared" => "No plan was declared beforehand.",
        "protocol" => "Another protocol was served than was planned.",
        "serving orders" => "The cups stood in lopsided orders.",
        "stopping" => "The panel stopped by another rule than was planned.",
        "looks" => "The count was looked at before its end.",
        _ => "A limit was changed after it was declared.",
    }}");

    public static Sentence Of(CountRemarked finding) => Sentence.Of($"Panel {new Name(finding.Plan.Panel)}: {new Quote(finding.Remark)}");

    /// <summary>With a capital letter in front.</summary>
    public static string Capital(string words) => words.Length == 0 ? words : char.ToUpperInvariant(words[0]) + words[1..];
}
