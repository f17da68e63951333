using SplitBatch.Numbers;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Teaching;

/// <summary>The exercises of the workshop's first notebook: what twenty people who cannot tell two beers apart would answer.</summary>
public static class GuessOrTaste
{
    private const int Tasters = 20;
    private static readonly Protocol Test = Protocol.Triangle;

    /// <summary>How many right answers guessing gives on average.</summary>
    public static NumberExercise Average { get; } = new NumberExercise(
        "Twenty people guess at one triangle each. How many are right, on average?", () => Tasters * Test.Chance, tolerance: 0.34)
    {
        Start = "There are three cups, and one of them is the odd one. How likely is one guess right? And twenty of them?",
        Because = "One guess in three is right, so twenty guesses give between six and seven. Counts around that say nothing about the beers.",
        Otherwise = ("That is fewer than luck alone gives. How many cups does a taster choose from?", "That is more than luck alone gives. How many cups does a taster choose from?"),
    }
        .When(Slip.CoinFlip, () => Tasters / 2.0, "That would be tossing a coin: right or wrong, half and half. A taster chooses from three cups, not from two.")
        .When(Slip.ShareForCount, () => Test.Chance, "That is the chance of one guess. Asked is how many of twenty.")
        .When(Slip.UpsideDown, () => Tasters * (1 - Test.Chance), "That is how many are wrong on average.");

    /// <summary>How often eight or more of twenty are right by guessing.</summary>
    public static NumberExercise EightOrMore { get; } = new NumberExercise(
        "In which share of panels of twenty guessers are eight or more right?", () => ExactBinomial.AtLeast(8, Tasters, Test.Chance), tolerance: 0.025)
    {
        IsShare = true,
        Start = "Ask the simulated panels: many.AtLeast(8), or add up the bars from eight to the right.",
        Because = "About one panel of guessers in three gets eight or more. Nobody should be impressed by eight.",
        Otherwise = ("It happens more often than that. Add up every bar from eight to the right, with eight itself.", "It does not happen that often. Add up every bar from eight to the right, and none on the left of it."),
    }
        .When(Slip.ExactlyForAtLeast, () => ExactBinomial.Exactly(8, Tasters, Test.Chance), "That is the one bar at eight: exactly eight. A panel with nine or ten right would have impressed you as well, so those bars belong to it.")
        .When(Slip.MoreThanForAtLeast, () => ExactBinomial.AtLeast(9, Tasters, Test.Chance), "Eight itself is missing: asked is eight or more.")
        .When(Slip.WrongTail, () => ExactBinomial.AtMost(8, Tasters, Test.Chance), "Those are the panels with eight or fewer. Look to the other side.")
        .When(Slip.Complement, () => ExactBinomial.AtMost(7, Tasters, Test.Chance), "Those are the panels with fewer than eight. Asked are the others.");

    /// <summary>The smallest count that guessing reaches in at most one panel in twenty.</summary>
    public static NumberExercise CriticalCount { get; } = new NumberExercise(
        "What is the smallest count that guessers reach, or pass, in at most 5 % of panels of twenty?", () => Power.CriticalCount(Test, Tasters, 0.05)!.Value)
    {
        IsCount = true,
        Start = "Try counts one after the other: many.AtLeast(9), many.AtLeast(10) ... Stop at the first that is 0.05 or less.",
        Because = "Such a count is rare enough among guessers that one speaks of a difference. It was fixed before anybody tasted, and one panel of guessers in about 27 gets there all the same.",
        Otherwise = ("Guessers get there more often than in one panel out of twenty. Look further to the right.", "Guessers get there less often than 5 %, and so they do at a smaller count. Asked is the smallest."),
    }
        .When(Slip.OneTooFew, () => Power.CriticalCount(Test, Tasters, 0.05)!.Value - 1, "Close. How often do guessers get that many or more? If it is more than 5 %, the line lies further right.")
        .When(Slip.TwoSided, () => Power.CriticalCount(Test, Tasters, 0.025)!.Value, "Did you halve the 5 %, as for a test with two sides? Fewer right answers than guessing gives would not show a difference, so a triangle has one side, and all of the 5 % lies on it.")
        .When(Slip.ShareForCount, () => 0.05, "That is the error you allow. Asked is the count of right answers that goes with it.");

    /// <summary>What seven of twenty allows one to say.</summary>
    public static ChoiceExercise SevenOfTwenty { get; } = new ChoiceExercise("Seven of twenty were right. What may be said?")
    {
        Start = "What does the count show, and what does it leave open? Answer with a letter in quotation marks.",
    }
        .Option("The beers taste the same.", right: false, "Seven is what guessing gives on average. But it is also what comes up easily if some people can tell. Which of the two is it? The count does not say.")
        .Option("A third of people can tell the beers apart.", right: false, "A third of the answers were right, and a third is right by luck alone. Nobody at all may have tasted anything.")
        .Option("No difference was shown, and some people may still be able to tell.", () => !DifferenceTest.Of(Test, Tasters, 7).DifferenceShown, "Not shown is not the same as not there. The next notebook asks how many tasters it takes to say more.")
        .Option("The panel was bad, so it does not count.", right: false, "A count is not bad because it settles nothing. Leaving out panels that disappoint is how false differences get into the world.");
}
