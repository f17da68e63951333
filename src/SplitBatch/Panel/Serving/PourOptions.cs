using UnitsNet;
using static System.FormattableString;

namespace SplitBatch.Panel.Serving;

/// <summary>
/// How a panel is poured; change what differs with <c>with</c>. Defaults are common practice, no source, unless one is named.
/// </summary>
public sealed record PourOptions
{
    /// <summary>Beer in one cup; 30 to 60 mL is usual. Given in US ounces, the plan and the sheets speak in them.</summary>
    public Volume Pour { get; init; } = Volume.FromMilliliters(50);

    /// <summary>Beer to have beyond what the cups hold, as a share: foam, dregs, a spilt tray.</summary>
    public double Spare { get; init; } = 0.15;

    /// <summary>What one bottle, can or keg holds, or null where that does not matter.</summary>
    public Volume? Container { get; init; }

    /// <summary>The temperature in the cup; 8 to 14 °C is usual. Both beers must have the same.</summary>
    public Temperature Serving { get; init; } = Temperature.FromDegreesCelsius(11);

    /// <summary>How long a poured cup stands covered before it is tasted.</summary>
    public Duration Settle { get; init; } = Duration.FromMinutes(5);

    /// <summary>The rest between one set and the next; bitterness lingers.</summary>
    public Duration Rest { get; init; } = Duration.FromMinutes(4);

    /// <summary>What in the beers may harm somebody; null while nobody has said, and then no sheet is made.</summary>
    public Allergens? Allergens { get; init; }

    /// <summary>The defaults for a brewer who thinks in these units: 50 mL in a cup, or 1.75 fl oz.</summary>
    /// <param name="units">The brewer's units.</param>
    public static PourOptions For(UnitSystem units) => units == UnitSystem.Us ? new() { Pour = Volume.FromUsOunces(1.75) } : new();

    /// <summary>
    /// What goes into a cup, for example <c>50 mL in every cup, at 11 °C (52 °F)</c>, or <c>1.75 fl oz in every cup, at 52 °F (11 °C)</c>.
    /// </summary>
    public override string ToString() => $"{Spoken.Cup(Pour)} in every cup, at {ServedAt}";

    /// <summary>The temperature in the cup in both scales, the brewer's own first.</summary>
    internal string ServedAt => Spoken.IsUs(Pour)
        ? Invariant($"{Printed.Fixed(Serving.DegreesFahrenheit, 0)} °F ({Printed.Fixed(Serving.DegreesCelsius, 0)} °C)")
        : Invariant($"{Printed.Fixed(Serving.DegreesCelsius, 0)} °C ({Printed.Fixed(Serving.DegreesFahrenheit, 0)} °F)");
}
