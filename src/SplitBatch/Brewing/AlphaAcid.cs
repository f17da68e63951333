using System.Globalization;

namespace SplitBatch.Brewing;

/// <summary>The share of alpha acid in a hop product, by weight.</summary>
/// <remarks>Built by name, so that 0.056 cannot pass for 5.6. The default value is no alpha acid.</remarks>
public readonly record struct AlphaAcid : IComparable<AlphaAcid>
{
    private AlphaAcid(double fraction) => Fraction = fraction;

    /// <summary>Grams of alpha acid in one gram of the product.</summary>
    public double Fraction { get; }

    /// <summary>Grams of alpha acid in 100 g of the product.</summary>
    public double Percent => Fraction * 100;

    /// <summary>From percent by weight, as printed on a packet: 5.6 for 5.6 %.</summary>
    /// <param name="percent">Percent in [0, 90]; zero, or at least 0.5, because a smaller number is almost always a fraction by mistake.
    /// The upper end leaves room for extracts.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside.</exception>
    public static AlphaAcid FromPercent(double percent)
    {
        if (percent is > 0 and < 0.5)
        {
            throw new ArgumentOutOfRangeException(nameof(percent), string.Create(
                CultureInfo.InvariantCulture,
                $"{percent} % alpha acid is too little for any hop; it looks like a fraction: write {Printed.Chosen(percent * 100)} for "
                    + $"{Printed.ChosenPercent(percent)}."));
        }

        return new AlphaAcid(Guard.InRange(percent, 0.0, 90.0) / 100);
    }

    /// <summary>From a fraction by weight: 0.056 for 5.6 %.</summary>
    /// <param name="fraction">Fraction in [0, 0.9].</param>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside; above 1 it looks like a percentage.</exception>
    public static AlphaAcid FromFraction(double fraction)
    {
        if (fraction is > 1 and <= 90)
        {
            throw new ArgumentOutOfRangeException(nameof(fraction), string.Create(
                CultureInfo.InvariantCulture,
                $"{fraction} is not a fraction; it looks like a percentage: use AlphaAcid.FromPercent({fraction})."));
        }

        return new AlphaAcid(Guard.InRange(fraction, 0.0, 0.9));
    }

    /// <inheritdoc/>
    public int CompareTo(AlphaAcid other) => Fraction.CompareTo(other.Fraction);

    /// <summary>Whether the left holds less alpha acid than the right.</summary>
    public static bool operator <(AlphaAcid left, AlphaAcid right) => left.Fraction < right.Fraction;

    /// <summary>Whether the left holds more alpha acid than the right.</summary>
    public static bool operator >(AlphaAcid left, AlphaAcid right) => left.Fraction > right.Fraction;

    /// <summary>Whether the left holds no more alpha acid than the right.</summary>
    public static bool operator <=(AlphaAcid left, AlphaAcid right) => left.Fraction <= right.Fraction;

    /// <summary>Whether the left holds no less alpha acid than the right.</summary>
    public static bool operator >=(AlphaAcid left, AlphaAcid right) => left.Fraction >= right.Fraction;

    /// <summary>For example <c>5.6 % alpha acid</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Printed.HopAcid(Percent)} alpha acid");
}
