using SplitBatch.Numbers;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Deciding;

/// <summary>
/// Both questions asked of one count: is there a difference, and is any difference smaller than the margin that matters?
/// </summary>
/// <param name="Difference">The test of a difference.</param>
/// <param name="Similarity">The test against the margin.</param>
/// <param name="ToSettle">The panel size at which every count would have given an answer.</param>
public sealed record PanelReading(DifferenceTest Difference, SimilarityTest Similarity, TastersNeeded ToSettle)
{
    /// <summary>Which of the answers the count gives; an alarm over a count far below chance comes before all others.</summary>
    public PanelAnswer Answer => AnswerOf(Difference, Similarity);

    /// <summary>
    /// The share of tasters who can tell in the task: the lower and the upper limit, each by itself at level 1 - beta. The upper one is
    /// <see cref="SimilarityTest.StillAllowed"/>, the one upper limit of this count.
    /// </summary>
    public Interval Limits =>
        new((Difference with { Level = 1 - (2 * Math.Min(Similarity.Beta, 0.4999)) }).DiscriminatorsInterval.Low, Similarity.StillAllowed,
            1 - (2 * Math.Min(Similarity.Beta, 0.4999)));

    /// <summary>Asks both questions of a count.</summary>
    /// <param name="protocol">A protocol with a known guessing chance.</param>
    /// <param name="tasters">Sets tasted, at least 1.</param>
    /// <param name="correct">Right answers, from 0 to <paramref name="tasters"/>.</param>
    /// <param name="margin">The share of discriminators that would matter, above 0 and below 1.</param>
    /// <param name="alpha">The chance of showing a difference that is not there, above 0 and below 1.</param>
    /// <param name="beta">The chance of ruling the margin out although it is true, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static PanelReading Of(Protocol protocol, int tasters, int correct, double margin, double alpha = 0.05,
        double beta = 0.05) => new(
            DifferenceTest.Of(protocol, tasters, correct, alpha),
            SimilarityTest.Of(protocol, tasters, correct, margin, beta),
            Power.TastersThatSettle(protocol, alpha, margin, beta));

    /// <summary>
    /// Asks both questions of a panel in which tasters had several sets. The difference is tested on all sets, or for a two-sided
    /// protocol by how each taster leans; the margin by the spread of tasters.
    /// </summary>
    /// <param name="protocol">A protocol with a known guessing chance.</param>
    /// <param name="tasters">Each taster's sets and right answers; for a two-sided protocol, answers for the one beer.</param>
    /// <param name="margin">The share of discriminators that would matter, above 0 and below 1.</param>
    /// <param name="alpha">The chance of showing a difference that is not there, above 0 and below 1.</param>
    /// <param name="beta">The chance of ruling the margin out although it is true, above 0 and below 0.5.</param>
    /// <exception cref="ArgumentException">No tasters.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static PanelReading OfRepeats(Protocol protocol, IEnumerable<TasterCount> tasters, double margin, double alpha = 0.05,
        double beta = 0.05)
    {
        var repeats = ReplicatedTest.Of(protocol, tasters, alpha);
        var similarity = SimilarityTest.Of(repeats, margin, beta);
        return new(repeats.Pooled with { Repeats = similarity.Repeats }, similarity,
            Power.TastersThatSettle(protocol, alpha, margin, beta));
    }

    /// <summary>The answer that the two tests of one count make together.</summary>
    internal static PanelAnswer AnswerOf(DifferenceTest difference, SimilarityTest similarity) =>
        LowCountAlarm.Of(difference.Protocol, difference.Tasters, difference.Correct).IsRaised
            ? PanelAnswer.Alarm
            : AnswerOf(difference.DifferenceShown, similarity.MarginRuledOut);

    /// <summary>The answer that two yes-or-no findings make together.</summary>
    internal static PanelAnswer AnswerOf(bool differenceShown, bool marginRuledOut) => (differenceShown, marginRuledOut) switch
    {
        (true, false) => PanelAnswer.DifferenceShown,
        (true, true) => PanelAnswer.DifferenceWithinMargin,
        (false, true) => PanelAnswer.MarginRuledOut,
        (false, false) => PanelAnswer.Inconclusive,
    };

    /// <summary>What the count says, in one or two sentences; never that the beers are the same.</summary>
    public override string ToString()
    {
        var counted = $"{Difference.Count} {(Difference.Protocol.Sides == 1 ? "right" : "alike")} of {Difference.Tasters}";
        var allowed = Printed.Percent(Similarity.StillAllowed);
        var margin = Printed.ChosenPercent(Similarity.Margin);
        var text = Answer switch
        {
            PanelAnswer.Alarm => LowCountAlarm.Of(Difference.Protocol, Difference.Tasters, Difference.Correct).ToString(),
            PanelAnswer.DifferenceShown =>
                $"{counted}: a difference is shown ({Printed.PValue(Difference.PValue)}); up to {allowed} of tasters may tell the beers "
                    + $"apart, and the margin of {margin} is not ruled out.",
            PanelAnswer.DifferenceWithinMargin =>
                $"{counted}: a difference is shown ({Printed.PValue(Difference.PValue)}), but a small one: {margin} or more "
                    + $"discriminators are ruled out.",
            PanelAnswer.MarginRuledOut =>
                $"{counted}: no difference is shown, and {margin} or more discriminators are ruled out; up to {allowed} are still "
                    + $"allowed.",
            _ => $"{counted} settles nothing: no difference is shown ({Printed.PValue(Difference.PValue)}), yet up to {allowed} "
                + $"discriminators are still allowed. "
                + $"That does not mean the same. {ToSettle.Always} tasters would settle it, whatever they answered.",
        };
        return Similarity.Repeats?.Warning is { } warning ? $"{text} {warning}" : text;
    }
}

/// <summary>The answers a panel can give.</summary>
public enum PanelAnswer
{
    /// <summary>A difference is shown, and it may be as large as the margin or larger.</summary>
    DifferenceShown,

    /// <summary>A difference is shown, and anything as large as the margin is ruled out.</summary>
    DifferenceWithinMargin,

    /// <summary>No difference is shown, and anything as large as the margin is ruled out.</summary>
    MarginRuledOut,

    /// <summary>Neither is shown nor ruled out.</summary>
    Inconclusive,

    /// <summary>
    /// So few right answers that something must be wrong with the key, the codes or the direction; nothing else is concluded.
    /// </summary>
    Alarm,
}
