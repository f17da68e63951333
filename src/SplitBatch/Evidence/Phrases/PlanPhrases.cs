using SplitBatch.Evidence.Findings;
using SplitBatch.Panel.Planning;

namespace SplitBatch.Evidence.Phrases;

/// <summary>What was planned, how firmly, and where practice left it.</summary>
internal static class PlanPhrases
{
    /// <summary>A level of error and whether it was fixed beforehand: "the 5 % declared beforehand".</summary>
    public static Sentence Level(CountedPlan plan) => plan.Standing switch
    {
        PlanStanding.Sealed => Sentence.Of($"the {Printed.ChosenPercent(plan.Alpha)} sealed beforehand"),
        PlanStanding.Declared => Sentence.Of($"the {Printed.ChosenPercent(plan.Alpha)} declared beforehand"),
        PlanStanding.DeclaredAfterServing => Sentence.Of($"{Printed.ChosenPercent(plan.Alpha)}, which was declared after serving"),
        _ => Sentence.Of($"{Printed.ChosenPercent(plan.Alpha)}, which nobody declared beforehand"),
    };

    /// <summary>The margin as a share in the task, with the digits of a choice or of a computed share.</summary>
    public static Printed Margin(CountedPlan plan) =>
        plan.DeclaredMargin.IsDPrime ? Printed.Percent(plan.Margin) : Printed.ChosenPercent(plan.Margin);

    /// <summary>How sure a limit is: "95 % confidence".</summary>
    public static Sentence Confidence(CountedPlan plan) => Sentence.Of($"{Printed.ChosenPercent(plan.Confidence)} confidence");

    public static Sentence Of(DepartedFromPlan finding)
    {
        var (what, planned, done, meaning) =
            (finding.Departure.What, finding.Departure.Planned, finding.Departure.Done, finding.Departure.Meaning);
        return Sentence.Of($"Panel {new Name(finding.Plan.Panel)} departed from its plan. {new Name(Capital(what))}: planned "
            + $"{new Quote(planned)}, done {new Quote(done)}. {new Quote(meaning)}");
    }

    /// <summary>A serious departure in a few words, for a headline.</summary>
    public static Sentence Short(DepartedFromPlan finding) => Sentence.Of($"{finding.Departure.Kind switch
    {
        DepartureKind.DeclaredAfterServing => "The plan was written after serving.",
        DepartureKind.NotDeclared => "No plan was declared beforehand.",
        DepartureKind.Protocol => "Another protocol was served than was planned.",
        DepartureKind.Orders => "The cups stood in lopsided orders.",
        DepartureKind.Stopping => "The panel stopped by another rule than was planned.",
        DepartureKind.Looks => "The count was looked at before its end.",
        _ => "A limit was changed after it was declared.",
    }}");

    /// <summary>What was done to a sealed plan, as the opening of a headline.</summary>
    public static Sentence Lead(DepartedFromPlan finding)
    {
        var departure = finding.Departure;
        return departure.Kind switch
        {
            DepartureKind.ChangedTooLate => Sentence.Of(
                $"somebody changed {new Quote(departure.What)} from {new Quote(departure.Planned)} to {new Quote(departure.Done)} after "
                    + $"the first ballot, {new Quote(departure.WhenAndWhy)}"),
            DepartureKind.Broken => Sentence.Of($"the seal or the key of panel {new Name(finding.Plan.Panel)} is not what it was"),
            DepartureKind.LookedAt => Sentence.Of($"the count of panel {new Name(finding.Plan.Panel)} was looked at before the close"),
            DepartureKind.EndedEarly =>
                Sentence.Of($"{new Quote(departure.Done)} of {new Quote(departure.Planned)} sealed ballots came "
                    + $"in{Price(departure.FalselyShown)}"),
            DepartureKind.TooMany =>
                Sentence.Of($"{new Quote(departure.Done)} ballots came in where {new Quote(departure.Planned)} were sealed, and the first "
                    + $"{new Quote(departure.Planned)} decide"),
            DepartureKind.AfterTheClose => Sentence.Of($"{new Quote(departure.Done)} came in after the close"),
            DepartureKind.AnotherPanel =>
                Sentence.Of($"panel {new Name(departure.Planned)}, sealed to decide, is not counted, and this is panel "
                    + $"{new Name(departure.Done)}"),
            _ => Sentence.Empty,
        };
    }

    /// <summary>Missing ballots that could not have changed the answer, for a headline.</summary>
    public static Sentence Fewer(DepartedFromPlan finding) => Sentence.Of(
        $"{new Quote(finding.Departure.Done)} of {new Quote(finding.Departure.Planned)} sealed ballots came in; what is missing could not "
            + $"have changed the answer.");

    private static Sentence Price(double? falselyShown) => falselyShown is { } share
        ? Sentence.Of($", and stopping when one likes finds a false difference in {Printed.Percent(share)} of panels")
        : Sentence.Empty;

    public static Sentence Of(PlanUnsealed finding) => Sentence.Of(
        $"The plan of panel {new Name(finding.Plan.Panel)} was not sealed before its first ballot, so nobody can check that it was fixed "
            + $"beforehand.");

    public static Sentence Of(CountRemarked finding) => Sentence.Of($"Panel {new Name(finding.Plan.Panel)}: {new Quote(finding.Remark)}");

    /// <summary>With a capital letter in front.</summary>
    public static string Capital(string words) => words.Length == 0 ? words : char.ToUpperInvariant(words[0]) + words[1..];
}
