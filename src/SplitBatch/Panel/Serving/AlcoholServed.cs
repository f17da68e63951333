using UnitsNet;
using static System.FormattableString;

namespace SplitBatch.Panel;

/// <summary>What one taster drinks in one sitting if every cup is emptied.</summary>
/// <param name="Taster">The taster.</param>
/// <param name="Session">The sitting.</param>
/// <param name="Cups">Cups served.</param>
/// <param name="Beer">Beer served.</param>
/// <param name="Alcohol">Pure alcohol in it, by volume.</param>
public sealed record AlcoholServed(string Taster, int Session, int Cups, Volume Beer, Volume Alcohol)
{
    /// <summary>Ethanol at 20 °C, in g/mL: 0.78924 (OIML R 22; from memory).</summary>
    public const double EthanolDensity = 0.78924;

    /// <summary>Pure alcohol in it, by mass.</summary>
    public Mass AlcoholMass => Mass.FromGrams(Alcohol.Milliliters * EthanolDensity);

    /// <summary>For example <c>T07, session 1: 5 cups, 250 mL of beer, 12.5 mL (9.9 g) of alcohol</c>.</summary>
    public override string ToString() => Invariant(
        $"{Taster}, session {Session}: {Cups} cups, {Spoken.Cup(Beer)} of beer, {Alcohol.Milliliters:0.0} mL ({AlcoholMass.Grams:0.0} g) of alcohol");
}
