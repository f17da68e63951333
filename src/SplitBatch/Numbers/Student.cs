using MathNet.Numerics.Distributions;

namespace SplitBatch.Numbers;

/// <summary>Student's t distribution.</summary>
internal static class Student
{
    /// <summary>The chance that t lies below a value.</summary>
    public static double Below(double t, double freedom) => StudentT.CDF(0, 1, freedom, t);

    /// <summary>The chance of a t as far from zero, either way.</summary>
    public static double TwoSided(double t, double freedom) => Math.Min(1, 2 * StudentT.CDF(0, 1, freedom, -Math.Abs(t)));

    /// <summary>The value below which t lies with the given chance; the normal one where the freedom is infinite.</summary>
    public static double Quantile(double share, double freedom) =>
        double.IsPositiveInfinity(freedom) ? Gauss.Quantile(share) : StudentT.InvCDF(0, 1, freedom, share);
}
