using System.Globalization;
using UnitsNet;
using UnitsNet.Units;

namespace SplitBatch;

/// <summary>Quantities in the words of the units they were given in: ounces and gallons stay ounces and gallons.</summary>
internal static class Spoken
{
    /// <summary>For example <c>38.0 g</c>, or <c>0.85 oz</c> for a mass given in ounces or pounds.</summary>
    internal static string Of(Mass mass) => IsUs(mass)
        ? string.Create(CultureInfo.InvariantCulture, $"{mass.Ounces:0.00} oz")
        : string.Create(CultureInfo.InvariantCulture, $"{mass.Grams:0.0} g");

    /// <summary>As short as the number allows: <c>38 g</c>, <c>0.85 oz</c>.</summary>
    internal static string Short(Mass mass) => IsUs(mass)
        ? string.Create(CultureInfo.InvariantCulture, $"{mass.Ounces:0.###} oz")
        : string.Create(CultureInfo.InvariantCulture, $"{mass.Grams:0.##} g");

    /// <summary>For example <c>20.0 L</c>, or <c>5.3 gal</c> for a volume given in US gallons.</summary>
    internal static string Of(Volume volume) => IsUs(volume)
        ? string.Create(CultureInfo.InvariantCulture, $"{volume.UsGallons:0.0} gal")
        : string.Create(CultureInfo.InvariantCulture, $"{volume.Liters:0.0} L");

    /// <summary>A volume to serve, for example <c>50 mL</c>, or <c>1.75 fl oz</c> for one given in US ounces.</summary>
    internal static string Cup(Volume volume) => IsUs(volume)
        ? string.Create(CultureInfo.InvariantCulture, $"{volume.UsOunces:0.##} fl oz")
        : string.Create(CultureInfo.InvariantCulture, $"{volume.Milliliters:0.#} mL");

    /// <summary>What many cups hold, for example <c>1.80 L</c>, or <c>61 fl oz</c> for a volume given in US ounces.</summary>
    internal static string Cups(Volume volume) => IsUs(volume)
        ? string.Create(CultureInfo.InvariantCulture, $"{volume.UsOunces:0} fl oz")
        : string.Create(CultureInfo.InvariantCulture, $"{volume.Liters:0.00} L");

    /// <summary>For example <c>4 °C</c>, or <c>39 °F</c> for a temperature given in degrees Fahrenheit.</summary>
    internal static string Of(Temperature temperature) => temperature.Unit == TemperatureUnit.DegreeFahrenheit
        ? string.Create(CultureInfo.InvariantCulture, $"{temperature.DegreesFahrenheit:0.#} °F")
        : string.Create(CultureInfo.InvariantCulture, $"{temperature.DegreesCelsius:0.#} °C");

    /// <summary>For example <c>430 m</c>, or <c>5280 ft</c> for a height given in feet.</summary>
    internal static string Of(Length height) => IsUs(height)
        ? string.Create(CultureInfo.InvariantCulture, $"{height.Feet:0} ft")
        : string.Create(CultureInfo.InvariantCulture, $"{height.Meters:0} m");

    /// <summary>For example <c>4.2 g/L</c>, or <c>0.56 oz/gal</c> where the volume is in US gallons.</summary>
    internal static string Rate(double gramsPerLiter, bool us) => us
        ? string.Create(CultureInfo.InvariantCulture, $"{Mass.FromGrams(gramsPerLiter).Ounces * Volume.FromUsGallons(1).Liters:0.##} oz/gal")
        : string.Create(CultureInfo.InvariantCulture, $"{gramsPerLiter:0.#} g/L");

    internal static bool IsUs(Length height) => height.Unit is LengthUnit.Foot or LengthUnit.Yard or LengthUnit.Mile or LengthUnit.Inch;

    internal static bool IsUs(Mass mass) => mass.Unit is MassUnit.Ounce or MassUnit.Pound;

    internal static bool IsUs(Volume volume) => volume.Unit is VolumeUnit.UsGallon or VolumeUnit.UsQuart or VolumeUnit.UsOunce;
}
