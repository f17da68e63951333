namespace SplitBatch.Numbers;

/// <summary>Wilcoxon's signed-rank test, exact also with ties.</summary>
/// <remarks>
/// Differences of zero are left out (Wilcoxon); tied sizes share their mean rank; the distribution under no effect is that of random signs
/// on the very ranks at hand, counted exactly. Ref. F. Wilcoxon (1945), Biometrics Bulletin 1, 80.
/// </remarks>
/// <param name="Used">Differences that are not zero.</param>
/// <param name="Zeros">Differences of zero, left out.</param>
/// <param name="RankSum">The sum of the ranks of positive differences.</param>
/// <param name="PValue">Two-sided; 1 where every difference is zero.</param>
public sealed record SignedRanks(int Used, int Zeros, double RankSum, double PValue)
{
    /// <summary>Tests whether differences lie about zero.</summary>
    /// <param name="differences">One for each taster, finite; at most 1000 that are not zero.</param>
    /// <exception cref="ArgumentException">A difference is not a finite number.</exception>
    public static SignedRanks Of(IEnumerable<double> differences)
    {
        ArgumentNullException.ThrowIfNull(differences);
        double[] all = [.. differences];
        if (all.Any(d => !double.IsFinite(d))) throw new ArgumentException("A difference is not a finite number.", nameof(differences));
        double[] used = [.. all.Where(d => d != 0).OrderBy(Math.Abs)];
        Guard.InRange(used.Length, 0, 1000);
        if (used.Length == 0) return new(0, all.Length, 0, 1);

        // Twice the mean ranks are whole numbers.
        var doubled = new int[used.Length];
        for (int start = 0, end; start < used.Length; start = end)
        {
            end = start + 1;
            while (end < used.Length && Math.Abs(Math.Abs(used[end]) - Math.Abs(used[start])) <= 1e-9 * Math.Abs(used[start])) end++;
            for (var i = start; i < end; i++) doubled[i] = start + end + 1;
        }

        var total = doubled.Sum();
        var observed = doubled.Where((_, i) => used[i] > 0).Sum();
        // chance[s]: that the doubled rank sum of the positive differences is s.
        var chance = new double[total + 1];
        chance[0] = 1;
        var reach = 0;
        foreach (var rank in doubled)
        {
            for (var s = reach; s >= 0; s--)
            {
                chance[s + rank] += chance[s] / 2;
                chance[s] /= 2;
            }

            reach += rank;
        }

        double below = chance.Take(observed + 1).Sum(), above = chance.Skip(observed).Sum();
        return new(used.Length, all.Length - used.Length, observed / 2.0, Math.Min(1, 2 * Math.Min(below, above)));
    }
}
