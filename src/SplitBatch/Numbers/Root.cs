namespace SplitBatch.Numbers;

/// <summary>The root of a function of one variable between two ends with opposite signs.</summary>
internal static class Root
{
    /// <summary>Illinois false position with bisection as a safety net; ends when the bracket cannot be told apart any more.</summary>
    /// <exception cref="ArgumentException">The function has the same sign at both ends.</exception>
    public static double Of(Func<double, double> f, double low, double high)
    {
        double fLow = f(low), fHigh = f(high);
        if (fLow == 0) return low;
        if (fHigh == 0) return high;
        if (Math.Sign(fLow) == Math.Sign(fHigh)) throw new ArgumentException("The function has the same sign at both ends.");
        var side = 0;
        for (var i = 0; i < 200; i++)
        {
            var width = high - low;
            if (Math.Abs(width) <= 4e-16 * Math.Max(Math.Abs(low), Math.Abs(high)) + 1e-300) break;
            var x = i % 4 == 3 ? low + (width / 2) : ((low * fHigh) - (high * fLow)) / (fHigh - fLow);
            if (!(x > Math.Min(low, high) && x < Math.Max(low, high))) x = low + (width / 2);
            var y = f(x);
            if (y == 0) return x;
            if (Math.Sign(y) == Math.Sign(fLow))
            {
                low = x;
                fLow = y;
                if (side == -1) fHigh /= 2;
                side = -1;
            }
            else
            {
                high = x;
                fHigh = y;
                if (side == 1) fLow /= 2;
                side = 1;
            }
        }

        return low + ((high - low) / 2);
    }
}
