using SplitBatch.Numbers;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Counting;

/// <summary>
/// Is any difference smaller than the margin that matters? The exact test that rules out a share of discriminators, and the limit the
/// count still allows.
/// </summary>
/// <remarks>
/// Built by <c>Of</c>. With repeats the limit is that of the spread of tasters, never below that of as many single tasters. One-sided at
/// beta, as in ISO 4120 and 10399; for a two-sided protocol at beta on each side (two one-sided tests).
/// </remarks>
public sealed record SimilarityTest : CountedAnswers
{
    private SimilarityTest()
    {
    }

    /// <summary>The share of discriminators that would matter, fixed beforehand.</summary>
    public required double Margin { get; init; }

    /// <summary>The chance of ruling the margin out although it is true.</summary>
    public required double Beta { get; init; }

    /// <summary>
    /// The chance of a count as small as this if the margin were true; with repeats, for people of whom each can always tell or guesses,
    /// or who are all alike, whichever gives more.
    /// </summary>
    public double PValue => People?.PValue ?? ExactBinomial.AtMost(Count, Tasters, Protocol.CorrectFromDiscriminators(Margin));

    /// <summary>
    /// The chance of so many answers for the expected beer if the margin were true the other way round; null for a task without a
    /// direction.
    /// </summary>
    public double? PValueReversed =>
        People is { } people ? people.PValueReversed : MarginCounts.PValueReversed(Protocol, Tasters, Correct, Declared);

    /// <summary>
    /// The largest count at which the margin is ruled out; -1 where none would do. With repeats it is that of as many single tasters, and
    /// decides nothing.
    /// </summary>
    public int LargestCount => Power.SimilarityCount(Protocol, Tasters, Margin, Beta);

    /// <summary>
    /// The counts at which the margin is ruled out, from both sides where the task has a direction; null where the panel is too small, or
    /// holds too few people, for any.
    /// </summary>
    public CountRange? Range => People is { } people ? people.Range : MarginCounts.RuledOut(Protocol, Tasters, Declared, Beta);

    /// <summary>
    /// Whether the panel is large enough to make the statement at all: the counts that do reach what guessing gives on average (ISO 4120,
    /// 8.2).
    /// </summary>
    public bool LargeEnough => MarginCounts.RuledOut(Protocol, Tasters, Declared, Beta) is not null;

    /// <summary>
    /// Whether the margin is ruled out: the count lies in <see cref="Range"/>; for repeats of a two-sided protocol as few tasters must be
    /// steady, whichever beer each finds stronger.
    /// </summary>
    public bool MarginRuledOut => LargeEnough && (People is { } people ? people.Allows(Correct) : Range?.Contains(Correct) == true);

    /// <summary>
    /// The largest share of discriminators that the count still allows: one-sided exact upper limit at level 1 - beta, never below what
    /// as many right answers as guessing gives would allow. With repeats, never less than the limit for tasters who differ.
    /// </summary>
    public double StillAllowed => Math.Max(CountLimit.Discriminators(Protocol, Tasters, Correct, Beta), Repeats?.StillAllowed(Beta) ?? 0);

    /// <summary>
    /// The share of discriminators allowed by the normal approximation of the standards, for comparison with printed tables; not used in
    /// any decision.
    /// </summary>
    /// <remarks>
    /// ISO 4120, note on limits: [x/n - g]/(1 - g) + z sqrt((n x - x^2)/n^3)/(1 - g). It can be one count more generous than the exact
    /// rule.
    /// </remarks>
    internal double StillAllowedByNormalApproximation
    {
        get
        {
            double n = Tasters, share = Count / n;
            return (share - Protocol.Chance + (Gauss.Quantile(1 - Beta) * Math.Sqrt(share * (1 - share) / n))) / (1 - Protocol.Chance);
        }
    }

    /// <summary>Tests whether a count rules out the margin.</summary>
    /// <param name="protocol">A protocol with a known guessing chance.</param>
    /// <param name="tasters">Sets tasted, at least 1; one set per taster, because repeats hide differences between tasters (ISO 10399,
    /// 6.2).</param>
    /// <param name="correct">Right answers, from 0 to <paramref name="tasters"/>.</param>
    /// <param name="margin">The share of discriminators that would matter, above 0 and below 1; fix it before serving.</param>
    /// <param name="beta">The chance of ruling it out although it is true, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">No sets, more right answers than sets, or a share outside its range.</exception>
    /// <exception cref="InvalidOperationException">The protocol has no known guessing chance.</exception>
    /// <example><code>SimilarityTest.Of(Protocol.Triangle, tasters: 60, correct: 20, margin: 0.30)</code></example>
    public static SimilarityTest Of(Protocol protocol, int tasters, int correct, double margin, double beta = 0.05)
    {
        return new()
        {
            Protocol = Checked(protocol, tasters, correct),
            Tasters = tasters,
            Correct = correct,
            Margin = Guard.OpenShare(margin),
            Beta = Guard.OpenShare(beta),
        };
    }

    /// <summary>Tests whether counts with repeats rule out the margin.</summary>
    /// <param name="repeats">Each taster's sets and right answers, tested together.</param>
    /// <param name="margin">The share of discriminators that would matter, above 0 and below 1; fix it before serving.</param>
    /// <param name="beta">The chance of ruling it out although it is true, above 0 and below 0.5.</param>
    /// <exception cref="ArgumentOutOfRangeException">A share lies outside its range.</exception>
    public static SimilarityTest Of(ReplicatedTest repeats, double margin, double beta = 0.05)
    {
        ArgumentNullException.ThrowIfNull(repeats);
        return Of(repeats.Protocol, repeats.Sets, repeats.Pooled.Correct, margin, beta) with
        {
            Repeats = repeats.Sets > repeats.Tasters ? repeats : null,
        };
    }

    private DeclaredMargin Declared => DeclaredMargin.OfShare(Margin);

    private PeopleRule? People => Repeats is null ? null : new(Protocol, Declared, Beta, Repeats.PerTaster);

    /// <summary>
    /// For example <c>8 right of 18 (triangle): 30 % discriminators are not ruled out at 5 %; up to 49 % are still allowed.</c>
    /// </summary>
    public override string ToString()
    {
        var opening = $"{Opening}: ";
        if (MarginRuledOut)
        {
            return opening + $"{Printed.ChosenPercent(Margin)} or more discriminators are ruled out at {Printed.ChosenPercent(Beta)}; up "
                + $"to {Printed.Percent(StillAllowed)} are still allowed.";
        }

        if (!LargeEnough)
        {
            return opening + $"so small a panel cannot rule out {Printed.ChosenPercent(Margin)} discriminators; up to "
                + $"{Printed.Percent(StillAllowed)} are still allowed.";
        }

        var needed = Repeats is not null || Range is not { } range ? ""
            : range.Lowest > 0 ? $" ({range} would have done)"
            : $" ({range.Highest} or fewer would have done)";
        return opening + $"{Printed.ChosenPercent(Margin)} discriminators are not ruled out at {Printed.ChosenPercent(Beta)}; up to "
            + $"{Printed.Percent(StillAllowed)} are still allowed{needed}.";
    }
}
