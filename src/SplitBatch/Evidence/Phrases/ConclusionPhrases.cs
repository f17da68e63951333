using SplitBatch.Evidence.Findings;

namespace SplitBatch.Evidence.Phrases;

/// <summary>What a result does not show, and what to do next.</summary>
internal static class ConclusionPhrases
{
    public static Sentence Of(OverReading finding) => Sentence.Of($"{Warning(finding.Kind)}");

    public static Sentence Of(NextStep finding) => finding is { Kind: NextStepKind.LargerPanel, Tasters: > 0 }
        ? Sentence.Of($"Serve a new panel of {Printed.Count(finding.Tasters, "taster")} or more, one set each, planned beforehand; adding "
            + $"tasters to this one after seeing the count would raise the error.")
        : Sentence.Of($"{Step(finding.Kind)}");

    private static string Warning(OverReadingKind kind) => kind switch
    {
        OverReadingKind.Everybody => "It does not show that everybody notices: some of those who answered right may only have guessed.",
        OverReadingKind.EverybodyPrefers => "It does not show that everybody prefers it, or why.",
        OverReadingKind.Liking => "It does not show which beer is better liked, or why the beers differ.",
        OverReadingKind.SameBelowMargin => "It does not show that the beers are the same: a few tasters may still tell them apart.",
        OverReadingKind.SameThoughOpen => "It does not show that the beers taste the same.",
        OverReadingKind.Belief => "It does not show that the belief behind the question is wrong, or right.",
        OverReadingKind.BelowChance => "It shows nothing about the beers until it is known why so few answers were right.",
        OverReadingKind.PreferenceIsNoTest =>
            "It does not show that people cannot tell the beers apart: which they like and whether they can tell are two questions.",
        OverReadingKind.Taste => "It shows nothing about taste yet.",
        OverReadingKind.MeasuredIsTasted => "A difference that the lab measures is not by itself a difference that people taste.",
        OverReadingKind.WithinScatterIsEqual =>
            "A lab difference within the method's scatter does not show that the halves are equally bitter.",
        _ => "It does not carry over to other recipes, lots, doses or breweries.",
    };

    private static string Step(NextStepKind kind) => kind switch
    {
        NextStepKind.ServePanel => "Serve the panel of the plan, and type its ballots into the trial folder.",
        NextStepKind.ServeNextTaster =>
            "Serve the next taster of the sequential panel, as its plan says, until a line is reached or the last taster is served.",
        NextStepKind.FindTheFault => "Look for what went wrong: compare the key with the cups that were poured, the codes, the direction "
            + "that was expected, and how tasters read the question. Then serve a new panel.",
        NextStepKind.OtherProtocol => "Serve a new panel, planned beforehand, by a protocol with a known guessing chance, such as the "
            + "triangle: it can also rule a difference out.",
        NextStepKind.LargerPanel => "Serve a new, larger panel, one set each, planned beforehand; adding tasters to this one after seeing "
            + "the count would raise the error.",
        NextStepKind.BrewAgain =>
            "Brew the pair again and serve a new panel, to see whether the result belongs to the variable and not to these two batches.",
        NextStepKind.AskWhat => "Ask other tasters what differs and which beer they prefer, in a panel planned for that question.",
        NextStepKind.LargerChange =>
            "Brew the pair again before relying on it, and try a larger change of the variable to learn where a difference begins.",
        NextStepKind.TestTelling =>
            "Test whether people can tell the beers apart, in a panel planned for that question, such as a triangle.",
        NextStepKind.SendToLab => "Send both halves to a lab, blind and in one run, with two readings of each.",
        NextStepKind.AskPrecision => "Ask the lab whether its precision figure is a coefficient of variation, a standard deviation or a "
            + "limit at a stated confidence, and of repeatability or reproducibility.",
        _ => "Correct the doses by what the lab measured before brewing the pair again.",
    };
}
