using MathNet.Numerics;
using MathNet.Numerics.Integration;

namespace SplitBatch.Numbers;

/// <summary>The normal distribution and integrals over it.</summary>
internal static class Gauss
{
    /// <summary>Beyond this many standard deviations the normal density is below the rounding of a double.</summary>
    private const double Far = 9;

    private static readonly GaussLegendreRule Fine = new(-1, 1, 96);
    private static readonly GaussLegendreRule Coarse = new(-1, 1, 48);

    /// <summary>The normal density.</summary>
    public static double Density(double z) => Math.Exp(-z * z / 2) / Constants.Sqrt2Pi;

    /// <summary>The chance that a normal value lies below z.</summary>
    public static double Below(double z) => SpecialFunctions.Erfc(-z / Constants.Sqrt2) / 2;

    /// <summary>The z below which a normal value lies with the given chance.</summary>
    public static double Quantile(double share) => -Constants.Sqrt2 * SpecialFunctions.ErfcInv(2 * share);

    /// <summary>The integral of the density times f over the whole line.</summary>
    public static double Mean(Func<double, double> f) => Integral(z => Density(z) * f(z), -Far, Far);

    /// <summary>The integral of the density times f over the positive half.</summary>
    public static double HalfMean(Func<double, double> f) => Integral(z => Density(z) * f(z), 0, Far);

    /// <summary>Gauss-Legendre quadrature of a smooth function with 96 points.</summary>
    public static double Integral(Func<double, double> f, double low, double high) => Integral(Fine, f, low, high);

    /// <summary>The same with 48 points, enough for one normal bump within nine standard deviations to 1e-9.</summary>
    public static double BumpIntegral(Func<double, double> f, double low, double high) => Integral(Coarse, f, low, high);

    private static double Integral(GaussLegendreRule rule, Func<double, double> f, double low, double high)
    {
        double[] nodes = rule.Abscissas, weights = rule.Weights;
        double half = (high - low) / 2, middle = (high + low) / 2, sum = 0;
        for (var i = 0; i < nodes.Length; i++) sum += weights[i] * f(middle + (half * nodes[i]));
        return half * sum;
    }
}
