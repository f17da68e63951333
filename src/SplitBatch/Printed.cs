using System.Globalization;
using UnitsNet;
using UnitsNet.Units;

namespace SplitBatch;

/// <summary>
/// A number as a reader sees it. How many digits each kind of quantity gets is decided here and nowhere else, so that a sentence, a table
/// and a chart never print one number in two ways.
/// </summary>
/// <remarks>
/// <para>
/// What was measured or computed gets a fixed number of decimals by kind: as many as its instrument or its scatter supports, and always
/// as many, so that 4.40 is never 4.4. What a person chose (a significance level, a pour, a target) is printed as chosen; see
/// <see cref="Chosen(double, string)"/>.
/// </para>
/// <para>
/// A minus is the true minus sign (U+2212), in charts, tables, prose and terminal alike: the files are UTF-8, as the ° and ± beside it
/// need anyhow. Data files for programs (CSV, JSON, SVG coordinates) do not come through here; their numbers stay plain, unrounded, with
/// a hyphen. Thousands are parted by a comma from 1,000 on. A unit, the percent sign included, stands one space behind its number, as in
/// the SI. Decimals have a point.
/// </para>
/// <para>
/// A difference between the beers is always B minus A, the changed beer less the reference: above zero, B has more of it.
/// </para>
/// </remarks>
public readonly record struct Printed
{
    private Printed(double value, string bare, string unit)
    {
        Value = value;
        Bare = bare;
        Unit = unit;
    }

    /// <summary>The unrounded number, in the unit that is printed: 6.958 for 7.0 %.</summary>
    public double Value { get; }

    /// <summary>The digits without the unit: <c>7.0</c>.</summary>
    public string Bare { get; }

    /// <summary>The unit, or an empty text.</summary>
    public string Unit { get; }

    /// <summary>With its sign, for a difference: <c>+2.3 BU</c>, <c>−2.3 BU</c>. What rounds to zero has none.</summary>
    public Printed WithSign => Value > 0 && Bare.AsSpan().ContainsAnyInRange('1', '9') ? new(Value, "+" + Bare, Unit) : this;

    /// <summary>The digits, with the unit behind them if there is one.</summary>
    public override string ToString() => Unit is null or "" ? Bare ?? "" : $"{Bare} {Unit}";

    /// <summary>The text, so that a printed number stands wherever a text is asked for.</summary>
    public static implicit operator string(Printed number) => number.ToString();

    /// <summary>Two ends with one unit: <c>21.3 to 30.8 BU</c>.</summary>
    public static string Range(Printed low, Printed high) => $"{low.Bare} to {high}";

    /// <summary>The ends of an interval, each printed by the rule of its kind: <c>Printed.Range(interval, Printed.DPrime)</c>.</summary>
    public static string Range(Interval interval, Func<double, Printed> kind)
    {
        ArgumentNullException.ThrowIfNull(kind);
        return double.IsPositiveInfinity(interval.High) ? $"{kind(interval.Low)} or more" : Range(kind(interval.Low), kind(interval.High));
    }

    /// <summary>
    /// A computed share or chance, as a percentage: whole from 10 % to 99 %, one decimal below and above, two below 0.1 %. A panel of a
    /// hundred fixes a share to some ten points, so a decimal of 74.18 % says nothing; of a small chance the first two digits count.
    /// What is whole, as 5 % or 0 %, has no decimal.
    /// </summary>
    /// <param name="share">The share: 0.07 for 7.0 %.</param>
    /// <param name="against">A limit that the share is compared with in the same sentence: as many digits follow as show on which side it
    /// lies.</param>
    public static Printed Percent(double share, double? against = null) => (share * 100) switch
    {
        0 => Fixed(0, 0, "%"),
        100 => Fixed(100, 0, "%"),
        var whole when Math.Abs(whole - Math.Round(whole)) < 1e-9 && Math.Round(whole) is > 0 and < 100 =>
            Fixed(Math.Round(whole), 0, "%"),
        > 0 and < 0.01 and var tiny => new(tiny, "less than 0.01", "%"),
        > 99.9 and < 100 and var near => new(near, "more than 99.9", "%"),
        var percent => Fixed(percent, Math.Abs(percent) switch { < 0.1 => 2, < 9.95 => 1, > 99 => 1, _ => 0 }, "%", against * 100),
    };

    /// <summary>
    /// A p-value with its letter: <c>p = 0.070</c>. Three decimals, as journals print it, and <c>p &lt; 0.001</c> below: tails so far out
    /// depend on assumptions that nobody checked.
    /// </summary>
    /// <param name="p">The p-value, in [0, 1].</param>
    /// <param name="against">The level that it is compared with: as many digits follow as show on which side it lies.</param>
    public static Printed PValue(double p, double? against = null) =>
        p < 0.001 ? new(p, "p < 0.001", "") : new(p, "p = " + Fixed(p, 3, "", against).Bare, "");

    /// <summary>A count of whole things: <c>24</c>, <c>10,000</c>.</summary>
    public static Printed Count(long count) => Fixed(count, 0, "");

    /// <summary>A count with its noun: <c>1 taster</c>, <c>24 tasters</c>.</summary>
    public static Printed Count(long count, string one, string? many = null) => Fixed(count, 0, count == 1 ? one : many ?? one + "s");

    /// <summary>
    /// A count to be expected on average, such as what guessing gives: whole from 10 on, one decimal below, none where it is whole.
    /// </summary>
    public static Printed Expected(double count) =>
        Fixed(count, Math.Abs(count) < 9.95 && Math.Abs(count - Math.Round(count)) > 1e-9 ? 1 : 0, "");

    /// <summary>A d-prime: two decimals, as the tables of the standards print it.</summary>
    public static Printed DPrime(double value) => Fixed(value, 2, "");

    /// <summary>Bitterness, estimated or measured: one decimal, which is what a lab reports and more than it repeats.</summary>
    /// <param name="value">In IBU or BU.</param>
    /// <param name="unit"><c>IBU</c> for an estimate, <c>BU</c> for a lab's value, or nothing.</param>
    /// <param name="against">A limit that it is compared with in the same sentence.</param>
    public static Printed Bitterness(double value, string unit = "", double? against = null) => Fixed(value, 1, unit, against);

    /// <summary>Specific gravity: three decimals, the marks of a hydrometer.</summary>
    public static Printed Gravity(double specific) => Fixed(specific, 3, "");

    /// <summary>Extract in degrees Plato: one decimal, the marks of a saccharometer.</summary>
    public static Printed Plato(double degrees) => Fixed(degrees, 1, "°P");

    /// <summary>Alpha or beta acids of a hop: one decimal, since two assays of one lot differ by more.</summary>
    /// <param name="percent">Percent by weight.</param>
    public static Printed HopAcid(double percent) => Fixed(percent, 1, "%");

    /// <summary>The share of alpha acid that is used: one decimal, because people calculate on with it.</summary>
    /// <param name="share">The share: 0.254 for 25.4 %.</param>
    public static Printed Utilisation(double share) => Fixed(share * 100, 1, "%");

    /// <summary>Alcohol: one decimal, as on a label.</summary>
    /// <param name="percent">Percent by volume.</param>
    public static Printed Alcohol(double percent) => Fixed(percent, 1, "%");

    /// <summary>A mass in the units it was given in: <c>38.0 g</c>, <c>0.85 oz</c>, what a hop scale shows.</summary>
    public static Printed Mass(Mass mass) => Mass(mass, mass.Unit is MassUnit.Ounce or MassUnit.Pound ? UnitSystem.Us : UnitSystem.Metric);

    /// <summary>A mass in the units asked for.</summary>
    public static Printed Mass(Mass mass, UnitSystem units) =>
        units == UnitSystem.Us ? Fixed(mass.Ounces, 2, "oz") : Fixed(mass.Grams, 1, "g");

    /// <summary>A computed mass of alpha acid: one decimal more than the scale's, or a small charge would have a single digit.</summary>
    public static Printed AlphaMass(Mass mass, UnitSystem units) =>
        units == UnitSystem.Us ? Fixed(mass.Ounces, 3, "oz") : Fixed(mass.Grams, 2, "g");

    /// <summary>A mass known only roughly, such as plant matter: <c>86 g</c>, <c>3.0 oz</c>.</summary>
    public static Printed RoughMass(Mass mass, UnitSystem units) =>
        units == UnitSystem.Us ? Fixed(mass.Ounces, 1, "oz") : Fixed(mass.Grams, 0, "g");

    /// <summary>A volume in the units it was given in: <c>20.0 L</c>, <c>5.3 gal</c>; a kettle is read to a tenth.</summary>
    public static Printed Volume(Volume volume) =>
        Volume(volume, volume.Unit is VolumeUnit.UsGallon or VolumeUnit.UsQuart or VolumeUnit.UsOunce ? UnitSystem.Us : UnitSystem.Metric);

    /// <summary>A volume in the units asked for.</summary>
    public static Printed Volume(Volume volume, UnitSystem units) =>
        units == UnitSystem.Us ? Fixed(volume.UsGallons, 1, "gal") : Fixed(volume.Liters, 1, "L");

    /// <summary>Wort that hops keep back: litres or quarts, one decimal; the figure behind it is a rule of thumb.</summary>
    public static Printed WortHeld(Volume volume, UnitSystem units) =>
        units == UnitSystem.Us ? Fixed(volume.UsQuarts, 1, "qt") : Fixed(volume.Liters, 1, "L");

    /// <summary>
    /// A measured temperature in the units it was given in: <c>19.5 °C</c>, <c>67 °F</c>; either is what a brewer's thermometer shows.
    /// </summary>
    public static Printed Temperature(Temperature temperature) => temperature.Unit == TemperatureUnit.DegreeFahrenheit
        ? Fixed(temperature.DegreesFahrenheit, 0, "°F")
        : Fixed(temperature.DegreesCelsius, 1, "°C");

    /// <summary>A length of time in whole minutes: <c>60 min</c>.</summary>
    public static Printed Minutes(double minutes) => Fixed(minutes, 0, "min");

    /// <summary>A ratio or factor: two decimals, <c>1.25</c>.</summary>
    public static Printed Ratio(double ratio) => Fixed(ratio, 2, "");

    /// <summary>
    /// How many times as likely: whole from 10 on, one decimal from 1 on, else two; its first two digits count, and beyond a million none
    /// do.
    /// </summary>
    public static Printed Times(double ratio) =>
        ratio > 1e6 ? new(ratio, "more than 1,000,000", "")
            : Fixed(ratio, Math.Abs(ratio) switch { >= 9.95 => 0, >= 0.995 => 1, _ => 2 }, "");

    /// <summary>A rating on a scale, or the mean of ratings: one decimal.</summary>
    public static Printed Rating(double value) => Fixed(value, 1, "");

    /// <summary>The statistic of a test, such as an outlier test's, to be held against a table of three decimals.</summary>
    /// <param name="value">The statistic, or the table's value.</param>
    /// <param name="against">What it is compared with in the same sentence: as many digits follow as show on which side it lies.</param>
    public static Printed Statistic(double value, double? against = null) => Fixed(value, 3, "", against);

    /// <summary>What a person chose, as it was chosen, up to three decimals: <c>5 %</c>, <c>1.75 fl oz</c>, <c>90 min</c>.</summary>
    public static Printed Chosen(double value, string unit = "") =>
        new(value, Shown(value.ToString("#,0.###", CultureInfo.InvariantCulture)), unit);

    /// <summary>A share that a person chose, as a percentage: 0.05 is <c>5 %</c>, 0.025 is <c>2.5 %</c>.</summary>
    public static Printed ChosenPercent(double share) => Chosen(Math.Round(share * 100, 6), "%");

    /// <summary>A quantity with the decimals that its own definition names, such as one of the lab's analytes.</summary>
    /// <param name="value">The number.</param>
    /// <param name="decimals">From 0 to 8.</param>
    /// <param name="unit">The unit, or nothing.</param>
    /// <param name="against">A limit that it is compared with in the same sentence: as many digits follow as show on which side it lies,
    /// and tell the two apart.</param>
    public static Printed Fixed(double value, int decimals, string unit = "", double? against = null)
    {
        if (double.IsNaN(value)) return new(value, "–", "");
        if (double.IsInfinity(value)) return new(value, value > 0 ? "no upper limit" : "no lower limit", "");
        var most = Math.Min(decimals + 4, 8);
        while (against is { } limit && decimals < most && Math.Abs(value - limit) > 1e-9 * Math.Abs(limit)
            && (Math.Sign(Math.Round(value, decimals) - limit) != Math.Sign(value - limit)
                || Math.Round(value, decimals) == Math.Round(limit, decimals))) decimals++;
        return new(value, Shown(value.ToString("#,0." + new string('0', decimals), CultureInfo.InvariantCulture)), unit);
    }

    /// <summary>With a true minus sign, and without one before a zero.</summary>
    private static string Shown(string digits) =>
        digits.AsSpan().ContainsAnyInRange('1', '9') ? digits.Replace('-', '\u2212') : digits.TrimStart('-');
}
