using System.Runtime.Intrinsics;
using SplitBatch.Brewing;
using SplitBatch.Numbers;

namespace SplitBatch.Bitterness.Models;

/// <summary>Isomerisation kinetics over the wort's own temperatures, times a stated yield from kettle to beer.</summary>
/// <remarks>
/// Rates: see <see cref="Isomerisation"/>. The default yield is made from Justus (2018), MBAA TQ 55(3), 67-74: a mean kettle
/// utilisation of 44.0 % at 60 min, where the kinetics give 47.6 % at 100 °C, and a mean loss of 33.7 % from cast wort to finished
/// beer: 0.440 / 0.476 × (1 − 0.337) = 0.613. Breweries differ; give your own when you know it.
/// </remarks>
public sealed class IsomerisationKinetics : IBitternessModel
{
    /// <summary>The yield used unless another is given.</summary>
    public const double DefaultYield = 0.613;

    /// <summary>The lowest temperature at which the rates were measured, in °C.</summary>
    private const double MeasuredFrom = 90;

    /// <summary>Kinetics with a yield.</summary>
    /// <param name="kettleToBeer">Share of the iso-alpha acid formed in the kettle that is in the finished beer, in (0, 1].</param>
    public IsomerisationKinetics(double kettleToBeer = DefaultYield) =>
        KettleToBeer = Guard.InRange(kettleToBeer, 0.01, 1.0);

    /// <summary>Share of the iso-alpha acid formed in the kettle that is in the finished beer.</summary>
    public double KettleToBeer { get; }

    /// <inheritdoc/>
    public string Name => "Kinetics";

    /// <inheritdoc/>
    public string Citation =>
        "Malowicki, M. G. and Shellhammer, T. H. (2005), J. Agric. Food Chem. 53, 4434-4439; yield after Justus, A. (2018), MBAA TQ "
            + "55(3), 67-74";

    /// <inheritdoc/>
    public ValidRange Range { get; } =
        new(1.000, 1.130, 180, "measured at pH 5.2; no effect of pH from 4.8 to 6.0 or of sugar up to 10 °P was found (Malowicki 2004, "
            + "thesis, abstract); higher gravities and wort cooler than 90 °C are extrapolated, and so are doses beyond the 90 mg/L of "
            + "alpha acid that dissolved in the study") { CoversStand = true };

    /// <inheritdoc/>
    public string Character =>
        "Follows the wort's temperature through boil, stand and cooling, so it counts late hops; it knows no effect of gravity, and rests "
            + "on the yield given.";

    /// <inheritdoc/>
    public double Utilisation(in Exposure exposure)
    {
        var boil = Isomerisation.Hold(exposure.BoilCelsius, exposure.BoilMinutes);
        return Math.Max(0, exposure.Before.Then(boil).Then(exposure.After).IsoMade) * KettleToBeer;
    }

    /// <inheritdoc/>
    public IEnumerable<string> Warnings(Kettle kettle, IReadOnlyList<HopCharge> charges)
    {
        ArgumentNullException.ThrowIfNull(kettle);
        ArgumentNullException.ThrowIfNull(charges);
        foreach (var text in ModelWarnings.OfRange(this, kettle, charges)) yield return text;
        foreach (var charge in charges)
        {
            var cooler = Extrapolated(kettle, charge);
            if (cooler >= 0.1)
            {
                yield return FormattableString.Invariant(
                    $"{charge.Lot.Name}: {Printed.Percent(cooler)} of its isomerisation happens below 90 °C (194 °F), where {Name} is ")
                        + FormattableString.Invariant($"extrapolated from rates measured in hotter wort.");
            }
        }
    }

    /// <summary>The share of a charge's isomerisation that happens in wort cooler than the rates were measured in.</summary>
    private static double Extrapolated(Kettle kettle, HopCharge charge)
    {
        var exposure = Exposure.Of(kettle, charge);
        var boil = Isomerisation.K1(exposure.BoilCelsius) * exposure.BoilMinutes;
        var all = exposure.Before.Conversion + boil + exposure.After.Conversion;
        if (all <= 0) return 0;
        var from = charge.Stage is AdditionStage.Whirlpool or AdditionStage.Cooling ? charge.Time.Minutes : 0;
        var cool = kettle.AfterBoil is { } profile ? Isomerisation.Over(profile, from, below: MeasuredFrom).Conversion : 0;
        if (kettle.FirstWort.DegreesCelsius < MeasuredFrom) cool += exposure.Before.Conversion;
        if (exposure.BoilCelsius < MeasuredFrom) cool += boil;
        return cool / all;
    }

    /// <inheritdoc/>
    public void Utilisation(in Exposure exposure, ReadOnlySpan<double> gravity, ReadOnlySpan<double> minutes, Span<double> result)
    {
        // Iso-alpha acid at the end is a sum of two decays in the boil's length: fast e^(-k1 t) + slow e^(-k2 t).
        var (k1, k2) = (Isomerisation.K1(exposure.BoilCelsius), Isomerisation.K2(exposure.BoilCelsius));
        var (before, after, ratio) = (exposure.Before, exposure.After, k1 / (k2 - k1));
        var fast = KettleToBeer * before.AlphaLeft * (after.IsoMade + ratio * after.IsoLeft);
        var slow = KettleToBeer * (before.IsoMade - before.AlphaLeft * ratio) * after.IsoLeft;
        var t = VectorMath.Vectors(minutes);
        var u = VectorMath.Vectors(result);
        for (var i = 0; i < u.Length; i++)
        {
            u[i] = Vector256.Max(Vector256<double>.Zero, fast * Vector256.Exp(-k1 * t[i]) + slow * Vector256.Exp(-k2 * t[i]));
        }

        for (var i = u.Length * Vector256<double>.Count; i < result.Length; i++)
        {
            result[i] = Math.Max(0, fast * Math.Exp(-k1 * minutes[i]) + slow * Math.Exp(-k2 * minutes[i]));
        }
    }
}
