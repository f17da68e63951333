using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Teaching;

/// <summary>The exercises of the workshop's third notebook: two friends taste ten rounds each.</summary>
public static class TwoFriends
{
    private const double Half = 0.5;
    private static readonly Protocol Test = Protocol.Triangle;

    /// <summary>The friends' counts: one was right in all ten rounds, the other in three.</summary>
    public static IReadOnlyList<TasterCount> Friends { get; } = [new TasterCount(10, 10), new TasterCount(10, 3)];

    /// <summary>The average count of twenty rounds, by whomever.</summary>
    public static NumberExercise AverageOfTwenty { get; } = new NumberExercise(
        "Half of all people can tell. How many of twenty answers are right on average, if twenty people give one each?", () => 20 * Test.CorrectFromDiscriminators(Half), tolerance: 0.34)
    {
        Start = "Ten of the twenty can tell. The other ten guess: how many of them are lucky?",
        Because = "It is the same for two friends with ten rounds each. The averages agree; look now at how far single panels lie from them.",
        Otherwise = ("More than that: those who guess are right one time in three.", "Not as many: those who guess are right only one time in three."),
    }
        .When(Slip.LuckForgotten, () => 20 * Half, "Those are the ones who can tell. The others are lucky now and then.")
        .When(Slip.ShareForCount, () => Test.CorrectFromDiscriminators(Half), "That is the share. Asked is the count of right answers out of twenty.")
        .When(Slip.CoinFlip, () => 20 * (Half + (Half / 2)), "That would be tossing a coin. A guess among three cups is right less often.");

    /// <summary>The chance that neither friend can tell although half of all people can.</summary>
    public static NumberExercise NeitherCanTell { get; } = new NumberExercise(
        "Half of all people can tell. With which chance can neither of two friends?", () => (1 - Half) * (1 - Half), tolerance: 0.01)
    {
        IsShare = true,
        Start = "One friend cannot with a chance of one half. And the other, besides?",
        Because = "In one pair of friends out of four nobody can tell, and then all twenty rounds are guesses, however many rounds they taste. Among twenty people that happens once in a million.",
        Otherwise = ("It happens more often than that.", "It does not happen that often: both have to be among those who cannot."),
    }
        .When(Slip.OneForBoth, () => Half, "That is the chance for one friend. Both have to be unable to tell.")
        .When(Slip.Complement, () => 1 - (Half * Half), "That is the chance that at least one of them can. Asked is that neither can.");

    /// <summary>How many people the evidence is about.</summary>
    public static NumberExercise People { get; } = new NumberExercise(
        "Twenty rounds, thirteen right. How many people have been asked how many others can tell?", () => Friends.Count)
    {
        IsCount = true,
        Start = "Count people, not cups.",
        Because = "Repeats make it surer what these two can do. They do not make it any surer what a third person can do.",
        Otherwise = ("Somebody was asked.", "Where would so many people come from? Count those who sat at the table."),
    }
        .When(Slip.PooledRepeats, () => Friends.Sum(friend => friend.Sets), "Those are rounds. Ten rounds of one person are not ten people: if that person cannot tell, all ten are guesses.")
        .When(Slip.PooledRepeats, () => Friends.Sum(friend => friend.Correct), "Those are the right answers. How many people gave them?")
        .When(Slip.PooledRepeats, () => Friends[0].Sets, "That is the number of rounds of one friend.");

    /// <summary>What thirteen of twenty rounds by two friends allow one to say.</summary>
    public static ChoiceExercise ThirteenOfTwenty { get; } = new ChoiceExercise("One friend was right in all ten rounds, the other in three. What may be said?")
    {
        Start = "Ask ReplicatedTest.Of(Protocol.Triangle, TwoFriends.Friends) what it makes of the rounds, and read its last sentence. Answer with a letter in quotation marks.",
    }
        .Option("Two thirds of the answers were right, so half of all people can tell.", right: false, "Half of these two, perhaps. Two people are a small sample of all.")
        .Option("The beers differ: one of the two can tell them apart. How many others can is open.", () => ReplicatedTest.Of(Test, Friends).Pooled.DifferenceShown, "If nobody could tell, every round would be a guess, so the rounds may be pooled to show a difference. For how many people can tell, they are worth little more than two tasters.")
        .Option("Nothing, because two people are too few.", right: false, "Too few for saying how many people can tell. But ten of ten is more than luck: somebody tasted something.")
        .Option("Thirteen of twenty is more than the eleven needed, so the beers differ for most people.", right: false, "The first half is right: a difference is shown. The second half makes twenty tasters out of two.");
}
