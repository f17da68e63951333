using System.Globalization;

namespace SplitBatch.Brewing;

/// <summary>What fermentation made of a wort: alcohol, real extract and attenuation from two hydrometer readings.</summary>
/// <remarks>
/// <para>
/// Balling's relations in the form used by the American Society of Brewing Chemists (constants from memory of the published form):
/// real extract RE = 0.1808 OE + 0.8192 AE in °P; alcohol by weight = (OE − RE) / (2.0665 − 0.010665 OE) in %;
/// alcohol by volume = alcohol by weight × FG / 0.7907.
/// </para>
/// <para>A beer can finish below the gravity of water; its apparent extract is then negative, and is used as such.</para>
/// </remarks>
/// <param name="Original">Gravity of the wort before the yeast.</param>
/// <param name="Final">Gravity of the degassed beer; not above <paramref name="Original"/>.</param>
public sealed record Alcohol(Gravity Original, Gravity Final)
{
    /// <summary>Gravity of the degassed beer.</summary>
    public Gravity Final { get; } = Final <= Original ? Final : throw new ArgumentOutOfRangeException(
        nameof(Final),
        string.Create(CultureInfo.InvariantCulture,
            $"The final gravity {Printed.Gravity(Final.Specific)} is above the original gravity {Printed.Gravity(Original.Specific)}; "
                + $"were they swapped?"));

    /// <summary>Real extract, in grams per 100 g of beer (°P).</summary>
    public double RealExtract => 0.1808 * Original.Plato + 0.8192 * Final.ApparentPlato;

    /// <summary>Alcohol in grams per 100 g of beer.</summary>
    public double PercentByWeight => (Original.Plato - RealExtract) / (2.0665 - 0.010665 * Original.Plato);

    /// <summary>Alcohol in millilitres per 100 mL of beer at 20 °C.</summary>
    public double PercentByVolume => PercentByWeight * Final.Specific / 0.7907;

    /// <summary>The short form 131.25 (OG − FG), in millilitres per 100 mL; it reads low for strong beer.</summary>
    internal double PercentByVolumeShort => 131.25 * (Original.Specific - Final.Specific);

    /// <summary>The share of extract that seems fermented when alcohol's lightness is ignored.</summary>
    public double ApparentAttenuation => Original.Plato == 0 ? 0 : 1 - Final.ApparentPlato / Original.Plato;

    /// <summary>The share of extract really fermented.</summary>
    public double RealAttenuation => Original.Plato == 0 ? 0 : 1 - RealExtract / Original.Plato;

    /// <summary>From two specific gravities, as 1.048 and 1.011.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A value is no specific gravity, or the second lies above the first.</exception>
    public static Alcohol FromSpecific(double original, double final) =>
        new(Gravity.FromSpecific(original), Gravity.FromSpecific(final));

    /// <summary>For example <c>4.9 % alcohol by volume, apparent attenuation 77 %, real extract 4.5 °P</c>.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Printed.Alcohol(PercentByVolume)} alcohol by volume, apparent attenuation {Printed.Percent(ApparentAttenuation)}, real extract "
            + $"{Printed.Plato(RealExtract)}");
}
