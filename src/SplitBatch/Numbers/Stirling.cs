namespace SplitBatch.Numbers;

/// <summary>The two small parts of a binomial point probability that must be computed without cancellation.</summary>
/// <remarks>Ref. C. Loader (2000), Fast and Accurate Computation of Binomial Probabilities.</remarks>
internal static class Stirling
{
    // log(n!) - log(sqrt(2 pi n) (n/e)^n) for n = 0..15; the entry at 0 is never used.
    private static readonly double[] Small =
    [
        0,
        0.0810614667953272582196702, 0.0413406959554092940938221, 0.02767792568499833914878929,
        0.02079067210376509311152277, 0.01664469118982119216319487, 0.01387612882307074799874573,
        0.01189670994589177009505572, 0.010411265261972096497478567, 0.009255462182712732917728637,
        0.008330563433362871256469318, 0.007573675487951840794972024, 0.006942840107209529865664152,
        0.006408994188004207068439631, 0.005951370112758847735624416, 0.005554733551962801371038690,
    ];

    /// <summary>The error of Stirling's formula, log(n!) less its leading terms, for n of 1 or more.</summary>
    public static double Error(int n)
    {
        if (n < Small.Length) return Small[n];
        double x = n, s = 1 / (x * x);
        return ((1.0 / 12) - (((1.0 / 360) - (((1.0 / 1260) - (((1.0 / 1680) - (s / 1188)) * s)) * s)) * s)) / x;
    }

    /// <summary>x log(x/m) + m - x, for x and m above 0.</summary>
    public static double Deviance(double x, double m)
    {
        var difference = x - m;
        if (Math.Abs(difference) >= 0.1 * (x + m)) return (x * Math.Log(x / m)) + m - x;
        var v = difference / (x + m);
        var sum = difference * v;
        var term = 2 * x * v;
        for (var j = 1; j < 1000; j++)
        {
            term *= v * v;
            var next = sum + (term / ((2 * j) + 1));
            if (next == sum) break;
            sum = next;
        }

        return sum;
    }
}
