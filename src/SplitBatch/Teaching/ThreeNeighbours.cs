using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Teaching;

/// <summary>The exercises of the workshop's third notebook: three neighbours taste six rounds each. Their counts are invented.</summary>
public static class ThreeNeighbours
{
    private const int Answers = 18;
    private const double Half = 0.5;
    private static readonly Protocol Test = Protocol.Triangle;

    /// <summary>The neighbours' counts: one was right in all six rounds, the others in three and in two.</summary>
    public static IReadOnlyList<TasterCount> Counts { get; } = [new TasterCount(6, 6), new TasterCount(6, 3), new TasterCount(6, 2)];

    /// <summary>The average count of eighteen answers, whoever gives them.</summary>
    public static NumberExercise AverageOfEighteen { get; } = new NumberExercise(
        "Half of all people can tell. How many of eighteen answers are right on average, if eighteen people give one each?",
        () => Answers * Test.CorrectFromDiscriminators(Half), tolerance: 0.34)
    {
        Start = "Nine of the eighteen can tell. The other nine guess: how many of them are lucky?",
        Because = "The average is the same for three neighbours with six rounds each. Now look at how far single panels stray from it.",
        Otherwise = ("More than that: those who guess are right one time in three.",
            "Not as many: those who guess are right only one time in three."),
    }
        .When(Slip.LuckForgotten, () => Answers * Half, "Those are the ones who can tell. Now and then the others are lucky.")
        .When(Slip.ShareForCount, () => Test.CorrectFromDiscriminators(Half),
            "That is the share. The question is how many of eighteen answers are right.")
        .When(Slip.CoinFlip, () => Answers * (Half + (Half / 2)),
            "That would be tossing a coin. A guess among three cups is right less often.");

    /// <summary>The chance that none of the neighbours can tell although half of all people can.</summary>
    public static NumberExercise NoneCanTell { get; } = new NumberExercise(
        "Half of all people can tell. How likely is it that none of three neighbours can?", () => Math.Pow(1 - Half, Counts.Count),
        tolerance: 0.01)
    {
        IsShare = true,
        Start = "The chance that one neighbour cannot tell is one half. And the second as well? And the third?",
        Because = "In one group of three out of eight nobody can tell, and then all eighteen rounds are guesses, however many rounds they "
            + "taste. Among eighteen people that happens about once in 260,000 panels.",
        Otherwise = ("It happens more often than that.", "It does not happen that often: all three have to be among those who cannot."),
    }
        .When(Slip.OneForBoth, () => Half, "That is the chance for one neighbour. All three have to be unable to tell.")
        .When(Slip.OneForBoth, () => Half * Half, "That is the chance for two of them. There is a third.")
        .When(Slip.Complement, () => 1 - Math.Pow(Half, Counts.Count),
            "That is the chance that at least one of them can. The question is that none can.");

    /// <summary>How many people the evidence is about.</summary>
    public static NumberExercise People { get; } = new NumberExercise(
        "Eighteen rounds, eleven right. How many people is that evidence about?", () => Counts.Count)
    {
        IsCount = true,
        Start = "Count people, not cups.",
        Because = "Repeats make it surer what these three can do. They say nothing more about what a fourth person can do.",
        Otherwise = ("Somebody was asked.", "Where would so many people come from? Count those who sat at the table."),
    }
        .When(Slip.PooledRepeats, () => Counts.Sum(neighbour => neighbour.Sets),
            "Those are rounds. Six rounds by one person are not six people: if that person cannot tell, all six are guesses.")
        .When(Slip.PooledRepeats, () => Counts.Sum(neighbour => neighbour.Correct),
            "Those are the right answers. How many people gave them?")
        .When(Slip.PooledRepeats, () => Counts[0].Sets, "That is the number of rounds that one neighbour tasted.");

    /// <summary>What eleven of eighteen rounds by three neighbours allow one to say.</summary>
    public static ChoiceExercise ElevenOfEighteen { get; } =
        new ChoiceExercise("One neighbour was right in all six rounds, the others in three and in two. What may be said?")
        {
            Start = "Ask ReplicatedTest.Of(Protocol.Triangle, ThreeNeighbours.Counts) what it makes of the rounds, and read its last "
                + "sentence. Answer with a letter in quotation marks.",
        }
            .Option("Eleven of eighteen is more than the ten needed, so most people can tell the beers apart.", right: false,
                "The first half is right: a difference is shown. The second half turns three people into eighteen.")
            .Option("One of three can tell, so a third of all people can.", right: false,
                "Perhaps a third of these three. Three people are a small sample of everybody.")
            .Option("The beers differ: somebody at this table can tell them apart. How many others can is open.",
                () => ReplicatedTest.Of(Test, Counts).Pooled.DifferenceShown,
                "If nobody could tell, every round would be a guess, so the rounds may be pooled to show a difference. As to how many "
                    + "people can tell, they are worth little more than three tasters.")
            .Option("Nothing, because three people are too few.", right: false,
                "Too few to say how many people can tell. But so many right answers are more than luck: somebody tasted something.");
}
