namespace SplitBatch.Numbers;

/// <summary>A count that grows by one or stays, set by set, and is looked at on the way.</summary>
/// <remarks>
/// Ref. P. Armitage, C. K. McPherson and B. C. Rowe (1969), J. R. Stat. Soc. A 132, 235, for repeated looks (from memory); the recursion
/// is plain counting.
/// </remarks>
public static class CountPath
{
    /// <summary>The chance that one look or another finds a count that stops it, by exact dynamic programming over counts.</summary>
    /// <param name="share">The chance of a success in one set, in [0, 1].</param>
    /// <param name="looks">Numbers of sets after which the count is looked at, at least one, each at least 1, rising.</param>
    /// <param name="stops">Whether a look after so many sets (first) that finds so many successes (second) stops.</param>
    /// <exception cref="ArgumentException">No looks, or they do not rise.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The share lies outside, or a look is before the first set.</exception>
    public static double ChanceOfStopping(double share, IReadOnlyList<int> looks, Func<int, int, bool> stops)
    {
        ArgumentNullException.ThrowIfNull(stops);
        Guard.Share(share);
        Check(looks);
        var alive = new double[looks[^1] + 1];
        alive[0] = 1;
        double stopped = 0;
        var next = 0;
        for (var n = 1; n <= looks[^1]; n++)
        {
            for (var x = n; x >= 0; x--) alive[x] = (alive[x] * (1 - share)) + (x > 0 ? alive[x - 1] * share : 0);
            if (looks[next] != n) continue;
            next++;
            for (var x = 0; x <= n; x++)
            {
                if (alive[x] == 0 || !stops(n, x)) continue;
                stopped += alive[x];
                alive[x] = 0;
            }
        }

        return stopped;
    }

    /// <summary>Refuses looks that do not rise.</summary>
    /// <exception cref="ArgumentException">No looks, or they do not rise.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A look is before the first set.</exception>
    internal static void Check(IReadOnlyList<int> looks)
    {
        ArgumentNullException.ThrowIfNull(looks);
        if (looks.Count == 0)
            throw new ArgumentException("Give at least one number of tasters at which the count is looked at.", nameof(looks));
        foreach (var look in looks) Guard.Positive(look);
        if (looks.Zip(looks.Skip(1)).Any(pair => pair.Second <= pair.First))
            throw new ArgumentException("The looks must rise, as in 10, 15, 20.", nameof(looks));
    }
}
