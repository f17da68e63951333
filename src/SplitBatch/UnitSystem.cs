namespace SplitBatch;

/// <summary>The units that a brewer thinks in.</summary>
public enum UnitSystem
{
    /// <summary>Litres, grams and degrees Celsius.</summary>
    Metric,

    /// <summary>US gallons, ounces and degrees Fahrenheit.</summary>
    Us,
}
