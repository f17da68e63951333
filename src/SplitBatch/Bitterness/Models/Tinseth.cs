using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using SplitBatch.Numbers;
using UnitsNet;

namespace SplitBatch.Bitterness.Models;

/// <summary>Tinseth's formula: a gravity factor times a boil-time factor.</summary>
/// <remarks>
/// Ref. Tinseth, G., "Glenn's hop utilization numbers", author's page, 1990s:
/// U = 1.65 × 0.000125^(G − 1) × (1 − e^(−0.04 t)) / 4.15, with G the mean specific gravity over the boil and t in minutes.
/// </remarks>
public sealed class Tinseth : IBitternessModel
{
    /// <inheritdoc/>
    public string Name => "Tinseth";

    /// <inheritdoc/>
    public string Citation => "Tinseth, G., Glenn's hop utilization numbers, author's page, 1990s";

    /// <inheritdoc/>
    public ValidRange Range { get; } = new(1.030, 1.130, 120, "extent of the published table; boil near sea level")
    {
        LowestBoil = Temperature.FromDegreesCelsius(98),
    };

    /// <inheritdoc/>
    public string Character => "Starts at nothing for no boil and levels off after an hour; every gravity above water costs bitterness.";

    /// <inheritdoc/>
    public double Utilisation(in Exposure exposure) => Utilisation(exposure.MeanGravity, exposure.EquivalentMinutes);

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Utilisation(in Exposure exposure, ReadOnlySpan<double> gravity, ReadOnlySpan<double> minutes, Span<double> result)
    {
        var stand = (exposure with { BoilMinutes = 0 }).EquivalentMinutes;
        var g = VectorMath.Vectors(gravity);
        var t = VectorMath.Vectors(minutes);
        var u = VectorMath.Vectors(result);
        for (var i = 0; i < u.Length; i++)
        {
            var boil = Vector256.Max(Vector256<double>.Zero, t[i] + Vector256.Create(stand));
            u[i] = 1.65 / 4.15 * Vector256.Exp(LogBase * (g[i] - Vector256<double>.One))
                * (Vector256<double>.One - Vector256.Exp(-0.04 * boil));
        }

        for (var i = u.Length * Vector256<double>.Count; i < result.Length; i++)
        {
            result[i] = Utilisation(gravity[i], Math.Max(0, minutes[i] + stand));
        }
    }

    /// <summary>The formula itself.</summary>
    /// <param name="gravity">Mean specific gravity over the boil.</param>
    /// <param name="minutes">Minutes in the boil, zero or more.</param>
    public static double Utilisation(double gravity, double minutes) =>
        1.65 * Math.Exp(LogBase * (gravity - 1)) * (1 - Math.Exp(-0.04 * minutes)) / 4.15;

    /// <summary>The natural logarithm of 0.000125.</summary>
    internal static readonly double LogBase = Math.Log(0.000125);
}
