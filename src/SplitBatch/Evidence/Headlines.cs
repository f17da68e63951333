using SplitBatch.Panel.Counting;

namespace SplitBatch.Evidence;

/// <summary>One headline for each answer a panel can give. None of them says that two beers are the same.</summary>
internal static class Headlines
{
    public static string Of(Verdict verdict)
    {
        var (a, b) = (verdict.Evidence.NameA, verdict.Evidence.NameB);
        var text = verdict.Answer switch
        {
            null => "No panel has been counted yet, so nothing can be said about taste.",
            PanelAnswer.DifferenceShown =>
                $"The panel could tell {a} from {b}: a difference is shown, and it may be as large as one that was declared to matter.",
            PanelAnswer.DifferenceWithinMargin =>
                $"The panel could tell {a} from {b}, but the difference is smaller than the one that was declared to matter.",
            PanelAnswer.MarginRuledOut =>
                $"The panel did not show a difference between {a} and {b}, and one as large as was declared to matter is ruled out.",
            _ when verdict.Main!.IsUnderWay =>
                $"The panel is not finished: between {a} and {b} neither a difference is shown nor one that matters ruled out so far.",
            _ when verdict.Main!.YesNo is not null =>
                $"The panel settles nothing: it did not show a difference between {a} and {b}, and this way of asking cannot rule out one that matters. That is not the same as finding no difference.",
            _ => $"The panel settles nothing: it did not show a difference between {a} and {b}, and it was too small to rule out one that matters. That is not the same as finding no difference.",
        };
        return verdict.Answer is null || verdict.KeptToPlan
            ? text
            : $"{text} Practice departed from the plan, so this is a lead to follow and not a test.";
    }
}
