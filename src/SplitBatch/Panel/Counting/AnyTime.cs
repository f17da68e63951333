using SplitBatch.Numbers;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Counting;

/// <summary>
/// Rules that hold however often a count was looked at, and whatever made the panel stop: the answer to looks that nobody planned.
/// </summary>
/// <remarks>
/// A difference is shown when every share of tasters from 0 to 100 %, each as likely, foretells the count 1/alpha times better than
/// guessing. A margin is ruled out when every share from 0 to the margin foretells it 1/beta times better than the margin. Such a factor
/// seldom ever reaches 1/alpha if guessing is true, at any look, so the errors hold together over all looks. Valid for one set by each
/// taster, in order of arrival, with the rule fixed before the first look; not if the looks chose which ballots count.
/// <para>Ref. J. Ville (1939), Étude critique de la notion de collectif; H. Robbins (1970), Ann. Math. Statist. 41, 1397 (both from
/// memory).</para>
/// </remarks>
public static class AnyTime
{
    /// <summary>
    /// How many times better all shares from 0 to 100 %, each as likely, foretell the count than guessing does; for a two-sided pair, in
    /// either direction.
    /// </summary>
    /// <param name="protocol">A protocol with a known guessing chance.</param>
    /// <param name="sets">Sets answered, at least 1.</param>
    /// <param name="right">Right answers, from 0 to <paramref name="sets"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    /// <exception cref="NotApplicableException">The protocol has no known guessing chance.</exception>
    public static double Factor(Protocol protocol, int sets, int right)
    {
        ArgumentNullException.ThrowIfNull(protocol);
        Counts.Check(right, sets);
        return UniformMixture.Factor(right, sets, protocol.Sides == 1 ? protocol.Chance : 0, 1, protocol.Chance);
    }

    /// <summary>
    /// The smallest count that shows a difference (for a two-sided pair, of the more frequent answer); null where none does.
    /// </summary>
    /// <param name="protocol">A protocol with a known guessing chance.</param>
    /// <param name="sets">Sets answered, at least 1.</param>
    /// <param name="alpha">The chance of a false difference at any look, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    /// <exception cref="NotApplicableException">The protocol has no known guessing chance.</exception>
    public static int? DifferenceCount(Protocol protocol, int sets, double alpha = 0.05)
    {
        Guard.OpenShare(alpha);
        if (Factor(protocol, Guard.Positive(sets), sets) < 1 / alpha) return null;
        var (low, high) = (sets / 2 * (protocol.Sides - 1), sets); // The factor rises from low to high, and high reaches.
        while (low < high)
        {
            var middle = low + ((high - low) / 2);
            if (Factor(protocol, sets, middle) >= 1 / alpha) high = middle;
            else low = middle + 1;
        }

        return high;
    }

    /// <summary>The counts that rule the margin out; null where the panel is too small for any to.</summary>
    /// <param name="protocol">A protocol with a known guessing chance.</param>
    /// <param name="sets">Sets answered, at least 1.</param>
    /// <param name="margin">The margin declared.</param>
    /// <param name="beta">The chance of ruling it out at any look although it is true, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    /// <exception cref="NotApplicableException">The protocol has no known guessing chance.</exception>
    public static CountRange? RuledOut(Protocol protocol, int sets, DeclaredMargin margin, double beta = 0.05)
    {
        ArgumentNullException.ThrowIfNull(margin);
        Guard.OpenShare(beta);
        Guard.Positive(sets);
        var highest = Largest(sets, protocol.Chance, margin.CorrectIn(protocol), beta);
        var lowest = protocol.Sides == 2 ? sets - highest
            : protocol.IsDirected ? sets - Largest(sets, 1 - protocol.Chance, 1 - margin.CorrectReversedIn(protocol), beta)
            : 0;
        return lowest <= highest && highest >= sets * protocol.Chance ? new(lowest, highest) : null;
    }

    /// <summary>
    /// The largest share of tasters who can tell that the count still allows at any look; never below what as many right answers as
    /// guessing gives would allow.
    /// </summary>
    /// <param name="protocol">A protocol with a known guessing chance.</param>
    /// <param name="sets">Sets answered, at least 1.</param>
    /// <param name="right">Right answers, from 0 to <paramref name="sets"/>.</param>
    /// <param name="beta">The one-sided error at any look, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    /// <exception cref="NotApplicableException">The protocol has no known guessing chance.</exception>
    public static double Limit(Protocol protocol, int sets, int right, double beta = 0.05)
    {
        ArgumentNullException.ThrowIfNull(protocol);
        Counts.Check(right, sets);
        var count = protocol.Sides == 2 ? Math.Max(right, sets - right) : right;
        count = Math.Max(count, (int)Math.Ceiling((sets * protocol.Chance) - 1e-9));
        var needed = 1 / Guard.OpenShare(beta);
        var fitting = Math.Max((double)count / sets, Math.BitIncrement(protocol.Chance));
        const double end = 1 - 1e-9;
        return fitting >= end || FactorBelow(end) < needed
            ? 1
            : protocol.Discriminators(Root.Of(p => FactorBelow(p) - needed, fitting, end));

        double FactorBelow(double p) => UniformMixture.Factor(count, sets, protocol.Chance, p, p);
    }

    /// <summary>The true chance of a false difference when the count is looked at after each ballot, exactly.</summary>
    /// <param name="protocol">A protocol with a known guessing chance.</param>
    /// <param name="sets">Sets in all, at least 1.</param>
    /// <param name="alpha">The chance that the rule allows itself, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static double TrueAlpha(Protocol protocol, int sets, double alpha = 0.05)
    {
        var critical = Every(sets).Select(n => DifferenceCount(protocol, n, alpha)).ToArray();
        return CountPath.ChanceOfStopping(protocol.Chance, Every(sets),
            (n, x) => (protocol.Sides == 1 ? x : Math.Max(x, n - x)) >= critical[n - 1]);
    }

    /// <summary>
    /// The true chance of ruling the margin out although it is true, when the count is looked at after each ballot, exactly; for a
    /// directed task in the worse of the two directions.
    /// </summary>
    /// <param name="protocol">A protocol with a known guessing chance.</param>
    /// <param name="sets">Sets in all, at least 1.</param>
    /// <param name="margin">The margin declared.</param>
    /// <param name="beta">The chance that the rule allows itself, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static double TrueBeta(Protocol protocol, int sets, DeclaredMargin margin, double beta = 0.05)
    {
        ArgumentNullException.ThrowIfNull(margin);
        var ranges = Every(sets).Select(n => RuledOut(protocol, n, margin, beta)).ToArray();
        var path = If(margin.CorrectIn(protocol));
        return protocol.IsDirected ? Math.Max(path, If(margin.CorrectReversedIn(protocol))) : path;

        double If(double correct) => CountPath.ChanceOfStopping(correct, Every(sets), (n, x) => ranges[n - 1]?.Contains(x) == true);
    }

    private static int[] Every(int sets) => [.. Enumerable.Range(1, Guard.Positive(sets))];

    // The largest count that the shares from chance to the margin foretell 1/beta times better than the margin; -1 for none. The factor
    // falls as the count rises.
    private static int Largest(int sets, double chance, double atMargin, double beta)
    {
        var (low, high) = (-1, sets);
        while (low < high)
        {
            var middle = low + ((high - low + 1) / 2);
            if (UniformMixture.Factor(middle, sets, chance, atMargin, atMargin) >= 1 / beta) low = middle;
            else high = middle - 1;
        }

        return low;
    }
}
