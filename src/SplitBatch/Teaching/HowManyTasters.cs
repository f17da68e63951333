using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Teaching;

/// <summary>The exercises of the workshop's second notebook: what a panel can find when three in ten can tell.</summary>
public static class HowManyTasters
{
    private const int Tasters = 18;
    private const double Discriminators = 0.30, Alpha = 0.05, Wanted = 0.80;
    private static readonly Protocol Test = Protocol.Triangle;

    /// <summary>The share of right answers when three in ten can tell.</summary>
    public static NumberExercise RightAnswers { get; } = new NumberExercise(
        "Three people in ten always tell the beers apart, the others guess. What share of all answers is right?",
        () => Test.CorrectFromDiscriminators(Discriminators), tolerance: 0.006)
    {
        IsShare = true,
        Start = "Think of a hundred people: how many can tell, how many guess, and how many of those are lucky?",
        Because = "Of a hundred people thirty can tell, and a third of the seventy who guess are lucky. So there are more right answers "
            + "than people who can tell.",
        Otherwise = ("More than that: do not forget that some of those who guess are lucky.",
            "Not as many: a guess is right only one time in three."),
    }
        .When(Slip.LuckForgotten, () => Discriminators, "That is the share who can tell. The others guess, and some of them are lucky.")
        .When(Slip.LuckForAll, () => Discriminators + Test.Chance,
            "That gives luck to everybody. Those who can tell need none: only the others guess.")
        .When(Slip.CoinFlip, () => Discriminators + ((1 - Discriminators) / 2),
            "That would be tossing a coin. A guess among three cups is right less often.");

    /// <summary>How often eighteen tasters show such a difference.</summary>
    public static NumberExercise PowerOfThePanel { get; } = new NumberExercise(
        "In what share of panels of eighteen is a difference shown at 5 %, if three in ten can tell?",
        () => Power.Of(Test, Tasters, Alpha, Discriminators), tolerance: 0.02)
    {
        IsShare = true,
        Start = "Let panels taste: panels.ShowingADifference(0.05) counts those that reach the critical count.",
        Because = "That is the power of the panel: little better than tossing a coin. Nearly half of such panels would miss a difference "
            + "that three people in ten can taste.",
        Otherwise = ("More panels than that show it. Did you use the right share of people who can tell?",
            "Fewer panels than that show it. Did you use the right number of tasters?"),
    }
        .When(Slip.Complement, () => 1 - Power.Of(Test, Tasters, Alpha, Discriminators),
            "Those are the panels that miss the difference. The question is how many show it.")
        .When(Slip.GuessersOnly, () => Power.Of(Test, Tasters, Alpha, 0),
            "That is how often a panel of guessers shows a difference. Simulate tasters of whom three in ten can tell.");

    /// <summary>The first panel size with a power of 80 %.</summary>
    public static NumberExercise TastersForEighty { get; } = new NumberExercise(
        "How many tasters does it take to show it in 80 % of panels?",
        () => Power.TastersNeeded(Test, Alpha, Wanted, Discriminators).First)
    {
        IsCount = true,
        Start = "Try a size: Power.Of(Protocol.Triangle, tasters: 30, alpha: 0.05, discriminators: 0.30). Go up until 0.80 is reached.",
        Because = "It is the first size that reaches 80 %. One more taster falls short again, because the critical count moves up by a "
            + "whole answer: power rises in a saw-tooth.",
        Otherwise = ("With so few the power stays below 80 %. Go further.",
            "A panel of that size reaches it, but so does a smaller one. Find the first size."),
    }
        .When(Slip.TwoSided, () => Power.TastersNeeded(Test, Alpha / 2, Wanted, Discriminators).First,
            "That is the size for half of the error, as for a test with two sides. A triangle has one side: ask for all of the 5 %.")
        .When(Slip.TooHigh, () => Power.TastersNeeded(Test, Alpha, 0.90, Discriminators).First,
            "That is the size for 90 %. The question is 80 %.")
        .When(Slip.ToothOfTheSaw, () => Power.TastersNeeded(Test, Alpha, Wanted, Discriminators).First + 1,
            "Look at that size again: it falls just short of 80 %, although a slightly smaller panel reaches it. Power rises in a "
                + "saw-tooth.")
        .When(Slip.ToothOfTheSaw, () => Power.TastersNeeded(Test, Alpha, Wanted, Discriminators).Always,
            "From there on every panel reaches it, which is the careful answer. The question is the first size that does: look at the "
                + "sizes just below.")
        .When(Slip.OneTooFew, () => Power.TastersNeeded(Test, Alpha, Wanted, Discriminators).First - 1,
            "Almost: look at the power of that size once more, to two decimals.");

    /// <summary>What half the share of people who can tell costs.</summary>
    public static NumberExercise HalfAsMany { get; } = new NumberExercise(
        "Only half as many people can tell: 15 % instead of 30 %. By what factor does the panel have to grow for the same power?",
        () => (double)Power.TastersNeeded(Test, Alpha, Wanted, Discriminators / 2).First / Power.TastersNeeded(Test, Alpha, Wanted,
            Discriminators).First, tolerance: 0.4)
    {
        Start = "Ask Power.TastersNeeded for both shares, and divide.",
        Because = "Nearly fourfold: the effect is half as large, and chance shrinks only with the square root of the number of tasters.",
        Otherwise = ("It takes more than that. Ask Power.TastersNeeded for both sizes.",
            "Not quite as many. Ask Power.TastersNeeded for both sizes."),
    }
        .When(Slip.Proportional, () => 2,
            "That would be so if the panel grew in proportion. Compute both sizes: the smaller the difference, the more chance gets in "
                + "the way.");
}
