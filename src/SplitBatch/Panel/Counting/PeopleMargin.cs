using SplitBatch.Numbers;
using SplitBatch.Panel.Planning;

namespace SplitBatch.Panel.Counting;

/// <summary>
/// Which pooled counts rule a margin out when people tasted several sets: exact for people of whom each can always tell or only guesses.
/// </summary>
/// <remarks>
/// The margin m is taken as the share of people who are always right; the rest guess. It is ruled out only if so few right answers have
/// no more than the chance beta both then and if everybody were alike, and only if the largest such count is not below what guessing
/// gives. With one set each it is the exact binomial test. In 280 settings (4 to 30 people, 2 to 15 sets) no spread of ability at two
/// points broke beta; the project's own simulation is in its reports. Ref. pooling holds for a difference and not for similarity: ISO
/// 10399, 6.2, note; the rule itself is derived in the project.
/// </remarks>
public static class PeopleMargin
{
    /// <summary>
    /// The fewest people for whom a limit of ability is stated when they had several sets: with fewer it can be slightly short far above
    /// chance.
    /// </summary>
    public const int FewestForLimit = 6;

    /// <summary>
    /// The largest count of right answers in all that rules the margin out; null where the people are too few for any to.
    /// </summary>
    /// <param name="people">Each person's sets; at least one person.</param>
    /// <param name="margin">The share of people who can tell, above 0 and below 1.</param>
    /// <param name="beta">The chance of ruling it out although it is true, above 0 and below 1.</param>
    /// <exception cref="ArgumentException">No people.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static int? LargestCount(IEnumerable<PersonSets> people, double margin, double beta = 0.05)
    {
        Guard.OpenShare(margin);
        var spread = AbilitySpread.AllOrNothing(people);
        if (TellsNothing(spread)) return null;
        var largest = spread.LargestCount(margin, beta);
        if (spread.People.Any(person => person.Sets > 1))
            largest = Math.Min(largest, AbilitySpread.AllAlike(spread.People).LargestCount(margin, beta));
        return largest >= spread.ChanceCount ? largest : null;
    }

    /// <summary>
    /// The chance of so few right answers, or fewer, if the margin were true: the larger one of the two spreads of ability.
    /// </summary>
    /// <param name="people">Each person's sets; at least one person.</param>
    /// <param name="right">Right answers in all.</param>
    /// <param name="margin">The share of people who can tell, above 0 and below 1.</param>
    /// <exception cref="ArgumentException">No people.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The margin lies outside its range.</exception>
    public static double PValue(IEnumerable<PersonSets> people, int right, double margin)
    {
        var spread = AbilitySpread.AllOrNothing(people);
        return Math.Max(spread.AtMost(right, Guard.OpenShare(margin)), AbilitySpread.AllAlike(spread.People).AtMost(right, margin));
    }

    /// <summary>
    /// The largest mean ability that the count still allows: never below what as many right answers as guessing gives would allow. Null
    /// for one person with several sets, from whom nothing follows for others, and for fewer than <see cref="FewestForLimit"/> people
    /// with repeats.
    /// </summary>
    /// <param name="people">Each person's sets; at least one person.</param>
    /// <param name="right">Right answers in all, from 0 to the number of sets.</param>
    /// <param name="beta">The one-sided error, above 0 and below 1.</param>
    /// <exception cref="ArgumentException">No people.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static double? Limit(IEnumerable<PersonSets> people, int right, double beta = 0.05)
    {
        var spread = AbilitySpread.AllOrNothing(people);
        Guard.InRange(right, 0, spread.Sets);
        var repeats = spread.People.Any(person => person.Sets > 1);
        if (repeats && spread.People.Count < FewestForLimit) return null;
        var count = Math.Max(right, spread.ChanceCount);
        var limit = spread.UpperLimit(count, beta);
        return repeats ? Math.Max(limit, AbilitySpread.AllAlike(spread.People).UpperLimit(count, beta)) : limit;
    }

    private static bool TellsNothing(AbilitySpread spread) => spread.People is [{ Sets: > 1 }];
}
