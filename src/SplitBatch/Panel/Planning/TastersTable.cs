using SplitBatch.Numbers;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Planning;

/// <summary>One cell of a table of tasters needed.</summary>
/// <param name="Alpha">The chance of showing a difference that is not there.</param>
/// <param name="Power">The chance wanted of showing the one that is.</param>
/// <param name="Discriminators">The true share of discriminators.</param>
/// <param name="First">The first size that reaches the power; null where none up to the largest does.</param>
/// <param name="Always">The size from which every larger one reaches it; null where it lies beyond the largest.</param>
public sealed record TastersCell(double Alpha, double Power, double Discriminators, int? First, int? Always);

/// <summary>
/// A table of tasters needed over alphas, powers and shares of discriminators, found in one walk over panel sizes for each alpha.
/// </summary>
/// <param name="Protocol">The protocol.</param>
/// <param name="Largest">The largest panel looked at.</param>
/// <param name="Cells">One cell for each combination: alphas outermost, shares next, powers innermost.</param>
public sealed record TastersTable(Protocol Protocol, int Largest, IReadOnlyList<TastersCell> Cells)
{
    /// <summary>The cell of a combination.</summary>
    /// <exception cref="ArgumentException">The combination is not in the table.</exception>
    public TastersCell this[double alpha, double power, double discriminators] =>
        Cells.FirstOrDefault(c => c.Alpha == alpha && c.Power == power && c.Discriminators == discriminators)
        ?? throw new ArgumentException(
            FormattableString.Invariant($"The table has no cell for alpha {alpha}, power {power}, discriminators {discriminators}."));

    /// <summary>Computes the table.</summary>
    /// <param name="protocol">A one-sided protocol with a known guessing chance.</param>
    /// <param name="alphas">Each above 0 and below 1.</param>
    /// <param name="powers">Each above 0 and below 1.</param>
    /// <param name="discriminators">True shares, each above 0 and at most 1.</param>
    /// <param name="largest">The largest panel that may stand in the table, at least 1.</param>
    /// <remarks>
    /// Each share is followed until every power is certainly reached for good (see <see cref="Sizing"/>), so "always" is proven and not
    /// only seen so far.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    /// <exception cref="ArgumentException">The protocol is two-sided; use <see cref="Panel.Planning.Power.TastersNeeded"/>.</exception>
    public static TastersTable Of(Protocol protocol, IReadOnlyList<double> alphas, IReadOnlyList<double> powers,
        IReadOnlyList<double> discriminators, int largest = 2000)
    {
        ArgumentNullException.ThrowIfNull(protocol);
        ArgumentNullException.ThrowIfNull(alphas);
        ArgumentNullException.ThrowIfNull(powers);
        ArgumentNullException.ThrowIfNull(discriminators);
        if (protocol.Sides != 1)
            throw new ArgumentException($"The table is for one-sided protocols; ask Power.TastersNeeded for {protocol.Name}.",
                nameof(protocol));
        foreach (var alpha in alphas) Guard.OpenShare(alpha);
        foreach (var power in powers) Guard.OpenShare(power);
        foreach (var share in discriminators) Guard.Share(Guard.Positive(share, nameof(discriminators)), nameof(discriminators));
        Guard.InRange(largest, 1, 1_000_000);
        var cells = new List<TastersCell>(alphas.Count * powers.Count * discriminators.Count);
        foreach (var alpha in alphas) Fill(cells, protocol, alpha, powers, discriminators, largest);
        return new(protocol, largest, cells);
    }

    private static void Fill(List<TastersCell> cells, Protocol protocol, double alpha, IReadOnlyList<double> powers,
        IReadOnlyList<double> shares, int largest)
    {
        int s = shares.Count, k = powers.Count;
        var truth = new TailWalk[s];
        var ends = new int[s];
        int[] first = new int[s * k], miss = new int[s * k];
        var chance = protocol.Chance;
        for (var i = 0; i < s; i++)
        {
            var share = protocol.CorrectFromDiscriminators(shares[i]);
            truth[i] = new TailWalk(share);
            // Beyond the end of a share every power is reached. Where the end is past the table, a miss on the table's
            // last rows leaves "always" open; the walk goes on as far as it must to tell.
            ends[i] = powers.Max(p => Sizing.Beyond(new(chance, share, alpha, p)));
        }

        var walk = new TailWalk(chance);
        var targets = powers.ToArray();
        for (int n = 1, last = ends.Max(); n <= last; n++)
        {
            walk.Step();
            var raise = !walk.Reaches(alpha);
            if (raise) walk.Raise();
            for (var i = 0; i < s; i++)
            {
                if (n > ends[i]) continue;
                ref var tail = ref truth[i];
                tail.Step();
                if (raise) tail.Raise();
                for (var j = 0; j < k; j++)
                {
                    var gap = tail.Tail - targets[j];
                    if (Math.Abs(gap) < 1e-9) gap = tail.Exact - (targets[j] * (1 - 1e-12));
                    var at = (i * k) + j;
                    if (gap < 0) miss[at] = n;
                    else if (first[at] == 0) first[at] = n;
                }
            }
        }

        for (var i = 0; i < s; i++)
        for (var j = 0; j < k; j++)
        {
            var at = (i * k) + j;
            cells.Add(new(alpha, powers[j], shares[i], UpTo(first[at]), UpTo(miss[at] + 1)));
        }

        int? UpTo(int n) => n <= largest ? n : null;
    }
}
