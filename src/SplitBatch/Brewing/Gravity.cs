using System.Globalization;
using static System.FormattableString;

namespace SplitBatch.Brewing;

/// <summary>
/// The strength of a wort or beer. Specific gravity (20 °C/20 °C) and degrees Plato are two views of one value.
/// </summary>
/// <remarks>
/// <para>The default value is that of water: 1.000, 0 °P.</para>
/// <para>
/// Plato from specific gravity S: P = 135.997 S³ − 630.272 S² + 1111.14 S − 616.868, a cubic fit to the extract table of
/// the American Society of Brewing Chemists (from memory of the published fit; checked against table anchors in the tests).
/// It gives −0.003 at S = 1, so the value is held at zero there. Plato to specific gravity inverts the same cubic, so a
/// round trip returns the value it started from.
/// </para>
/// </remarks>
public readonly record struct Gravity : IComparable<Gravity>
{
    private const double LowestSpecific = 0.980;
    private const double HighestSpecific = 1.200;
    private readonly double excess;

    private Gravity(double excess) => this.excess = excess;

    /// <summary>Specific gravity, as 1.050.</summary>
    public double Specific => 1 + excess;

    /// <summary>Degrees Plato: grams of extract in 100 g of wort. Zero at and below the gravity of water.</summary>
    public double Plato => Math.Max(0, PlatoOf(Specific));

    /// <summary>Degrees Plato without the hold at zero: the apparent extract of a beer lighter than water is negative.</summary>
    internal double ApparentPlato => excess >= 0 ? Plato : PlatoOf(Specific);

    /// <summary>Gravity points above water: 50 for 1.050.</summary>
    public double Points => excess * 1000;

    /// <summary>From a specific gravity such as 1.050.</summary>
    /// <param name="specific">Specific gravity in [0.980, 1.200]: from a very dry strong beer to the strongest wort.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside; the message says so when it looks like gravity points (1050)
    /// or degrees Plato.</exception>
    public static Gravity FromSpecific(double specific) =>
        specific is >= LowestSpecific and <= HighestSpecific
            ? new Gravity(specific - 1)
            : throw new ArgumentOutOfRangeException(nameof(specific), Complaint(specific));

    /// <summary>From degrees Plato.</summary>
    /// <param name="plato">Degrees Plato in [0, 42].</param>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside.</exception>
    /// <example><code>Gravity.FromPlato(12.4)</code></example>
    public static Gravity FromPlato(double plato)
    {
        Guard.InRange(plato, 0.0, 42.0);
        double low = 1, high = HighestSpecific;
        for (var step = 0; step < 60; step++)
        {
            var middle = (low + high) / 2;
            if (PlatoOf(middle) < plato) low = middle;
            else high = middle;
        }

        return new Gravity((low + high) / 2 - 1);
    }

    /// <inheritdoc/>
    public int CompareTo(Gravity other) => excess.CompareTo(other.excess);

    /// <summary>Whether the left is weaker than the right.</summary>
    public static bool operator <(Gravity left, Gravity right) => left.excess < right.excess;

    /// <summary>Whether the left is stronger than the right.</summary>
    public static bool operator >(Gravity left, Gravity right) => left.excess > right.excess;

    /// <summary>Whether the left is no stronger than the right.</summary>
    public static bool operator <=(Gravity left, Gravity right) => left.excess <= right.excess;

    /// <summary>Whether the left is no weaker than the right.</summary>
    public static bool operator >=(Gravity left, Gravity right) => left.excess >= right.excess;

    /// <summary>For example <c>1.050 (12.4 °P)</c>.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Printed.Gravity(Specific)} ({Printed.Plato(Plato)})");

    private static double PlatoOf(double s) => ((135.997 * s - 630.272) * s + 1111.14) * s - 616.868;

    private static string Complaint(double value)
    {
        var hint = value switch
        {
            >= 980 and <= 1200 =>
                Invariant($" {value} looks like a hydrometer reading without its point: write {Printed.Gravity(value / 1000)}."),
            > HighestSpecific and <= 42 => Invariant($" {value} looks like degrees Plato: use Gravity.FromPlato({value})."),
            _ => "",
        };
        return Invariant($"{value} is not a specific gravity; it must be between {Printed.Gravity(LowestSpecific)} and ")
            + Invariant($"{Printed.Gravity(HighestSpecific)}, such as 1.050.") + hint;
    }
}
