namespace SplitBatch.Bitterness;

/// <summary>Quantiles of a large sample without sorting it.</summary>
internal static class Quantiles
{
    private const int Bins = 1 << 14;

    /// <summary>
    /// Quantiles by linear interpolation between order statistics (type 7 of Hyndman, R. J. and Fan, Y. (1996), Am. Stat. 50, 361),
    /// exact: bins find where an order statistic lies, and only that bin is sorted.
    /// </summary>
    /// <param name="values">The sample, not empty, all finite; left as it is.</param>
    /// <param name="shares">Shares in [0, 1].</param>
    internal static double[] Of(ReadOnlySpan<double> values, params ReadOnlySpan<double> shares)
    {
        var (low, high) = (double.PositiveInfinity, double.NegativeInfinity);
        foreach (var value in values)
        {
            low = Math.Min(low, value);
            high = Math.Max(high, value);
        }

        var result = new double[shares.Length];
        if (low == high)
        {
            Array.Fill(result, low);
            return result;
        }

        var scale = (Bins - 1) / (high - low);
        var counts = new int[Bins];
        foreach (var value in values) counts[(int)((value - low) * scale)]++;
        for (var i = 0; i < shares.Length; i++)
        {
            var place = shares[i] * (values.Length - 1);
            var below = (int)Math.Floor(place);
            var left = Ranked(values, counts, low, scale, below);
            var right = below + 1 < values.Length && place > below ? Ranked(values, counts, low, scale, below + 1) : left;
            result[i] = left + (place - below) * (right - left);
        }

        return result;
    }

    /// <summary>The value of a rank, counted from 0.</summary>
    private static double Ranked(ReadOnlySpan<double> values, int[] counts, double low, double scale, int rank)
    {
        var bin = 0;
        while (rank >= counts[bin]) rank -= counts[bin++];
        var inside = new double[counts[bin]];
        var next = 0;
        foreach (var value in values)
        {
            if ((int)((value - low) * scale) == bin) inside[next++] = value;
        }

        Array.Sort(inside);
        return inside[rank];
    }
}
