using SplitBatch.Numbers;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Teaching;

/// <summary>The exercises of the workshop's first notebook: what eighteen people who cannot tell two beers apart would answer.</summary>
public static class GuessOrTaste
{
    private const int Tasters = 18;
    private static readonly Protocol Test = Protocol.Triangle;

    /// <summary>How many right answers guessing gives on average.</summary>
    public static NumberExercise Average { get; } = new NumberExercise(
        "Eighteen people each guess at one triangle. How many are right, on average?", () => Tasters * Test.Chance, tolerance: 0.34)
    {
        Start = "There are three cups, and one of them is the odd one. How likely is one guess to be right? And how many out of eighteen?",
        Because = "One guess in three is right, so a third of eighteen guesses are. Counts around that say nothing about the beers.",
        Otherwise = ("That is fewer than luck alone gives. How many cups does a taster choose from?",
            "That is more than luck alone gives. How many cups does a taster choose from?"),
    }
        .When(Slip.CoinFlip, () => Tasters / 2.0,
            "That would be tossing a coin: right or wrong, half and half. A taster chooses from three cups, not from two.")
        .When(Slip.ShareForCount, () => Test.Chance, "That is the chance for one guess. The question is how many of eighteen.")
        .When(Slip.UpsideDown, () => Tasters * (1 - Test.Chance), "That is how many are wrong on average.");

    /// <summary>How often nine or more of eighteen are right by guessing.</summary>
    public static NumberExercise NineOrMore { get; } = new NumberExercise(
        "In what share of panels of eighteen guessers are nine or more right?", () => ExactBinomial.AtLeast(9, Tasters, Test.Chance),
        tolerance: 0.01)
    {
        IsShare = true,
        Start = "Ask the simulated panels: many.AtLeast(9), or add up the bars from nine to the right.",
        Because = "About one panel of guessers in nine gets half of its answers right. A count of nine should impress nobody.",
        Otherwise = ("It happens more often than that. Add up every bar from nine to the right, nine itself included.",
            "It does not happen that often. Add up the bars from nine to the right, and none to the left."),
    }
        .When(Slip.ExactlyForAtLeast, () => ExactBinomial.Exactly(9, Tasters, Test.Chance),
            "That is the one bar at nine: exactly nine. A panel with ten or eleven right would have impressed you too, so count those "
                + "bars as well.")
        .When(Slip.MoreThanForAtLeast, () => ExactBinomial.AtLeast(10, Tasters, Test.Chance),
            "Nine itself is missing. The question is nine or more.")
        .When(Slip.WrongTail, () => ExactBinomial.AtMost(9, Tasters, Test.Chance),
            "Those are the panels with nine or fewer. Look to the other side.")
        .When(Slip.Complement, () => ExactBinomial.AtMost(8, Tasters, Test.Chance),
            "Those are the panels with fewer than nine. The question is about the others.");

    /// <summary>The smallest count that guessing reaches in at most one panel in twenty.</summary>
    public static NumberExercise CriticalCount { get; } = new NumberExercise(
        "What is the smallest count that guessers reach or pass in at most 5 % of panels of eighteen?",
        () => Power.CriticalCount(Test, Tasters, 0.05)!.Value)
    {
        IsCount = true,
        Start = "Try one count after another: many.AtLeast(8), many.AtLeast(9), and so on. Stop at the first that gives 0.05 or less.",
        Because = "Guessers reach it so rarely that a panel which does is said to show a difference. The line was drawn before anybody "
            + "tasted, and one panel of guessers in about 23 still crosses it.",
        Otherwise = ("More than 5 % of panels of guessers get there. Look further to the right.",
            "Fewer than 5 % of panels get there, but the same is true of a smaller count. Find the smallest."),
    }
        .When(Slip.OneTooFew, () => Power.CriticalCount(Test, Tasters, 0.05)!.Value - 1,
            "Close. How often do guessers get that many or more? If it is more than 5 %, the line lies further right.")
        .When(Slip.TwoSided, () => Power.CriticalCount(Test, Tasters, 0.025)!.Value,
            "Did you halve the 5 %, as for a test with two sides? Fewer right answers than guessing gives would not show a difference, so "
                + "a triangle has one side, and all of the 5 % lies on it.")
        .When(Slip.ShareForCount, () => 0.05, "That is the risk you accept. The question is which count of right answers goes with it.");

    /// <summary>What eight of eighteen allows one to say.</summary>
    public static ChoiceExercise EightOfEighteen { get; } = new ChoiceExercise("Eight of eighteen were right. What may be said?")
    {
        Start = "What does the count show, and what does it leave open? Answer with a letter in quotation marks.",
    }
        .Option("The beers taste the same.", right: false,
            "Guessing often gives eight. But eight also comes up easily if some people can tell. Which of the two is it? The count does "
                + "not say.")
        .Option("Nearly half of all people can tell the beers apart.", right: false,
            "Nearly half of the answers were right, but a third would be right by luck alone. Perhaps nobody tasted anything.")
        .Option("No difference was shown, and some people may still be able to tell.",
            () => !DifferenceTest.Of(Test, Tasters, 8).DifferenceShown,
            "Not shown is not the same as not there. The next notebook asks how many tasters it takes to say more.")
        .Option("The panel was bad, so it does not count.", right: false,
            "A count is not bad because it settles nothing. Leaving out panels that disappoint is how false differences get into "
                + "the world.");
}
