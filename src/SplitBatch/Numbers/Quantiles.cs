using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace SplitBatch.Numbers;

/// <summary>Quantiles of a large sample without sorting it.</summary>
internal static class Quantiles
{
    private const int Bins = 1 << 14;

    /// <summary>
    /// Quantiles by linear interpolation between order statistics (type 7 of Hyndman, R. J. and Fan, Y. (1996), Am. Stat. 50, 361),
    /// exact: bins find where the order statistics lie, and only those bins are sorted.
    /// </summary>
    /// <param name="values">The sample, not empty, all finite; left as it is.</param>
    /// <param name="shares">Shares in [0, 1].</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal static double[] Of(ReadOnlySpan<double> values, params ReadOnlySpan<double> shares)
    {
        var (low, high) = Ends(values);
        var result = new double[shares.Length];
        if (low == high)
        {
            Array.Fill(result, low);
            return result;
        }

        var scale = (Bins - 1) / (high - low);
        var first = new int[Bins + 1];
        foreach (var value in values) first[(int)((value - low) * scale) + 1]++;
        for (var bin = 0; bin < Bins; bin++) first[bin + 1] += first[bin];

        // Bins that hold a wanted rank, gathered in one pass.
        var inside = new List<double>?[Bins];
        foreach (var share in shares)
        {
            var below = (int)Math.Floor(share * (values.Length - 1));
            inside[BinOf(first, below)] ??= [];
            inside[BinOf(first, Math.Min(below + 1, values.Length - 1))] ??= [];
        }

        foreach (var value in values) inside[(int)((value - low) * scale)]?.Add(value);
        foreach (var bin in inside) bin?.Sort();
        double Ranked(int rank) => inside[BinOf(first, rank)]![rank - first[BinOf(first, rank)]];
        for (var i = 0; i < shares.Length; i++)
        {
            var place = shares[i] * (values.Length - 1);
            var below = (int)Math.Floor(place);
            var left = Ranked(below);
            result[i] = left + (place - below) * (Ranked(Math.Min(below + 1, values.Length - 1)) - left);
        }

        return result;
    }

    /// <summary>The bin that holds a rank, where <paramref name="first"/> has the lowest rank of each bin.</summary>
    private static int BinOf(int[] first, int rank)
    {
        var (low, high) = (0, Bins);
        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            if (first[middle] <= rank) low = middle;
            else high = middle;
        }

        return low;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static (double Low, double High) Ends(ReadOnlySpan<double> values)
    {
        var (low, high) = (Vector256.Create(double.PositiveInfinity), Vector256.Create(double.NegativeInfinity));
        var vectors = VectorMath.Vectors(values);
        foreach (var vector in vectors)
        {
            low = Vector256.Min(low, vector);
            high = Vector256.Max(high, vector);
        }

        var (least, most) = (double.PositiveInfinity, double.NegativeInfinity);
        for (var i = 0; i < Vector256<double>.Count; i++) (least, most) = (Math.Min(least, low[i]), Math.Max(most, high[i]));
        foreach (var value in values[(vectors.Length * Vector256<double>.Count)..])
            (least, most) = (Math.Min(least, value), Math.Max(most, value));
        return (least, most);
    }
}
