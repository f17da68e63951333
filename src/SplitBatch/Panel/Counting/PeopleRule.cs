using SplitBatch.Numbers;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Counting;

/// <summary>What a panel with repeats may say against a margin: people counted, not sets.</summary>
/// <remarks>
/// A directed task is read from both sides, the other one with right and wrong exchanged. For repeats of a two-sided pair people may lean
/// to opposite beers, which cancels out in a count; so as few people as would be so steady if the margin were true must be steady as well.
/// </remarks>
internal sealed class PeopleRule
{
    private readonly PersonSets[] people, mirrored;
    private readonly Leanings? leanings;
    private readonly double margin, beta;
    private readonly int sets, right;
    private readonly bool directed;

    public PeopleRule(Protocol protocol, DeclaredMargin declared, double beta, IReadOnlyList<TasterCount> tasters)
    {
        var chance = protocol.Chance;
        people = [.. tasters.Select(taster => new PersonSets(new SetsAtChance(taster.Sets, chance)))];
        mirrored = [.. tasters.Select(taster => new PersonSets(new SetsAtChance(taster.Sets, 1 - chance)))];
        leanings = protocol.Sides == 2 ? new(tasters) : null;
        (margin, this.beta, directed) = (declared.ShareIn(protocol), beta, protocol.IsDirected);
        (sets, right) = (tasters.Sum(taster => taster.Sets), tasters.Sum(taster => taster.Correct));
        int? highest = PeopleMargin.LargestCount(people, margin, beta);
        int? lowest = leanings is not null ? sets - highest
            : !directed ? 0
            : sets - PeopleMargin.LargestCount(mirrored, declared.ShareReversedIn(protocol), beta);
        Range = lowest <= highest ? new(lowest.Value, highest.Value) : null;
        PValue = leanings is null ? PeopleMargin.PValue(people, right, margin)
            : Math.Max(leanings.ChanceOfSoFewSteady(margin), PeopleMargin.PValue(people, Math.Max(right, sets - right), margin));
        PValueReversed = directed ? PeopleMargin.PValue(mirrored, sets - right, declared.ShareReversedIn(protocol)) : null;
    }

    /// <summary>The counts that may rule the margin out; null where the people are too few for any to.</summary>
    public CountRange? Range { get; }

    /// <summary>
    /// The chance of so few right answers if the margin were true; for a two-sided pair, of so even a count or of so few steady people.
    /// </summary>
    public double PValue { get; }

    /// <summary>The same the other way round, for a directed task.</summary>
    public double? PValueReversed { get; }

    /// <summary>The largest mean ability that is still allowed; null where no limit is stated.</summary>
    public double? StillAllowed => leanings is null ? PeopleMargin.Limit(people, right, beta)
        : PeopleMargin.Limit(people, Math.Max(right, sets - right), beta) is { } limit
            ? Math.Max(limit, leanings.SteadyAllowed(beta))
            : null;

    /// <summary>Whether a count rules the margin out.</summary>
    public bool Allows(int count) =>
        Range?.Contains(count) == true && (leanings is null || ExactBinomial.Reaches(leanings.ChanceOfSoFewSteady(margin), beta));
}
