using SplitBatch.Evidence.Findings;

namespace SplitBatch.Evidence.Phrases;

/// <summary>Limits that hold by design, or by what is missing.</summary>
internal static class LimitPhrases
{
    public static Sentence Of(StandingLimit finding) => Sentence.Of($"{Words(finding.Kind)}");

    private static string Words(StandingLimitKind kind) => kind switch
    {
        StandingLimitKind.Invented => "The data are invented to show how the work is done; nothing here is a finding about beer.",
        StandingLimitKind.OneBatchOfEach =>
            "One batch of each half was brewed. Two batches of one recipe also differ a little, so a difference cannot be put down to the "
                + "variable alone until the trial is repeated.",
        StandingLimitKind.NoLabReturn => "No lab return is logged, so it is not known how bitter the halves were.",
        StandingLimitKind.NoBitterness =>
            "The lab's return holds no bitterness of both halves, so it is not known how their bitterness compares.",
        StandingLimitKind.PrecisionUnclear => "The lab's precision is not known well enough to say what its difference means.",
        StandingLimitKind.RunNotTold =>
            "The return does not say whether both halves were measured in one run; they are judged as if they were, and halves from "
                + "separate runs would be told apart too easily.",
        StandingLimitKind.NotComparable =>
            "The two halves were not measured alike, so the lab's difference between them says nothing about the beers.",
        StandingLimitKind.DosedAlikeMeasuredApart =>
            "The two doses were estimated to be equally bitter, and the lab found that the beers are not. What tasters notice may be that "
                + "difference in bitterness and not the variable itself.",
        StandingLimitKind.OwnReading => "The bitterness was read on an instrument of one's own and not by a laboratory.",
        StandingLimitKind.NoBatchLog => "No batch log is kept, so it is not known whether the halves differ in anything but the variable.",
        StandingLimitKind.NoPanel => "No panel has been counted.",
        _ => "The panel speaks for people like those who sat at it, with beer served as it was served.",
    };
}
