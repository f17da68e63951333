using SplitBatch.Bitterness.Models;
using SplitBatch.Brewing;
using UnitsNet;

namespace SplitBatch.Bitterness;

/// <summary>Charges of the boil and a model whose answers follow by hand.</summary>
internal static class InventedDose
{
    public static HopCharge Boil(HopLot lot, double grams, double minutes = 60) => HopCharge.Boil(lot, Mass.FromGrams(grams), minutes);
}

/// <summary>A model that uses and corrects as told.</summary>
/// <param name="name">Its name.</param>
/// <param name="used">The share of the alpha acid used, by the minutes of boil that a charge counts for.</param>
/// <param name="settle">The correction of the beer as a whole.</param>
internal sealed class InventedModel(string name, Func<double, double> used, Func<double, double> settle) : IBitternessModel
{
    public string Name => name;

    public string Citation => "none";

    public ValidRange Range { get; } = new(1.000, 1.200, 300, "none") { CoversStand = true };

    public string Character => "As told.";

    public double Utilisation(in Exposure exposure) => used(exposure.EquivalentMinutes);

    public double Settle(double sum, in WortState wort) => settle(sum);
}
