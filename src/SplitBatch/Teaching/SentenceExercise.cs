using System.Globalization;
using SplitBatch.Evidence;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;

namespace SplitBatch.Teaching;

/// <summary>
/// An exercise whose answer is a sentence about a panel's count. It looks for words that claim too much and for numbers that are
/// missing; it does not understand the sentence, so a person should read it as well.
/// </summary>
public sealed class SentenceExercise
{
    private static readonly Dictionary<int, string> InWords = new()
    {
        [8] = "eight", [15] = "fifteen", [18] = "eighteen", [20] = "twenty", [24] = "twenty-four", [60] = "sixty",
    };

    private readonly Lazy<PanelReading> reading;
    private readonly string beers;

    internal SentenceExercise(string beers, Func<PanelReading> reading) =>
        (this.beers, this.reading) = (beers, new Lazy<PanelReading>(reading));

    /// <summary>What the panel answered.</summary>
    public PanelReading Reading => reading.Value;

    private int Count => Reading.Difference.Count;

    private int Tasters => Reading.Difference.Tasters;

    private bool IsShown => Reading.Difference.DifferenceShown;

    /// <summary>Looks at a sentence, and says what is the matter with it.</summary>
    /// <param name="sentence">The learner's sentence; null while there is none.</param>
    public Feedback Check(string? sentence)
    {
        if (string.IsNullOrWhiteSpace(sentence))
        {
            return new Feedback(Slip.Unanswered,
                "Write what was counted first: who tasted, and how many of how many were right. Then what that shows, and then what it "
                    + "leaves open.");
        }

        var read = new ReadSentence(sentence);
        if (TooMuch(read) is { } claim) return claim;
        if (TooLittle(read) is { } gap) return gap;
        if (read.Words is < 8 or > 60 || read.Stops > 2)
        {
            return new Feedback(Slip.NotOneSentence,
                "One sentence, or two short ones: a reader should be able to repeat it. Leave out what the reader does not need.");
        }

        return new Feedback(Slip.None,
            $"It says the count, claims no more than the count shows, and leaves open what is open. Only words are checked here: read it "
                + $"aloud to somebody who was not there. The tool would write: "
                + $"{string.Join(" ", CountInWords.Of(Reading).Select(claim => claim.Sentence))}");
    }

    /// <summary>The task.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Tasters} tasters each got one {Reading.Difference.Protocol.Name} set of {beers}; {Count} were right. A share of "
            + $"{Printed.ChosenPercent(Reading.Similarity.Margin)} who can tell was declared to matter. Write one honest sentence "
            + $"about it.");

    private Feedback? TooMuch(ReadSentence read)
    {
        if (read.SaysTheSame)
            return new Feedback(Slip.SaysTheSame,
                "A panel that shows no difference has not shown that there is none: a few people may tell the beers apart, and this panel "
                    + "may have been too small to notice. Say what the count did not show.");
        if (read.SaysProven)
            return new Feedback(Slip.SaysProven,
                "A panel proves nothing. At 5 %, one panel of guessers in twenty shows a difference. Choose a word that leaves room "
                    + "for that.");
        if (read.SaysBetter)
            return new Feedback(Slip.SaysBetter,
                "The tasters were asked which cup is the odd one, and not which they like. Leave liking out.");
        if (read.SaysEverybody)
            return new Feedback(Slip.SaysEverybody,
                "The count is of these tasters, and some of the right answers were luck. It says nothing about each single person.");
        if (!IsShown && read.ClaimsADifference)
            return new Feedback(Slip.ClaimsADifference,
                "Compare the count with the smallest count that shows a difference. Was it reached? If not, the sentence must not say "
                    + "that people tell the beers apart.");
        return null;
    }

    private Feedback? TooLittle(ReadSentence read)
    {
        if (!Says(read, Count) || !Says(read, Tasters))
            return new Feedback(Slip.NoCount, "A reader wants to check it: say how many answers were right, and of how many.");
        if (IsShown && !read.ClaimsADifference)
            return new Feedback(Slip.HidesTheDifference,
                "The count reached what was fixed beforehand. Say so: too careful is not honest either.");
        if (!IsShown && !read.NamesALimit)
            return new Feedback(Slip.NoLimit,
                "The sentence stops too early. Which share of people who can tell does the count still allow, or rule out? Is the "
                    + "question settled or open?");
        return null;
    }

    private static bool Says(ReadSentence read, int number) =>
        read.Has(number.ToString(CultureInfo.InvariantCulture)) || (InWords.TryGetValue(number, out var word) && read.Has(word));
}
