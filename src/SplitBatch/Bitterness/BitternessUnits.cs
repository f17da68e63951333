using System.Globalization;

namespace SplitBatch.Bitterness;

/// <summary>
/// Bitterness on the scale of the international bitterness unit (IBU): close to milligrams of iso-alpha acids per litre
/// in a young beer hopped in the kettle, and only there.
/// </summary>
/// <remarks>The default value is no bitterness. An estimate and a lab value are both on this scale and are not the same thing.</remarks>
public readonly record struct BitternessUnits : IComparable<BitternessUnits>
{
    private BitternessUnits(double value) => Value = value;

    /// <summary>The number of units.</summary>
    public double Value { get; }

    /// <summary>From a number of units.</summary>
    /// <param name="value">Units in [0, 1000]; beers as served rarely exceed 120.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside.</exception>
    public static BitternessUnits From(double value) => new(Guard.InRange(value, 0.0, 1000.0));

    /// <inheritdoc/>
    public int CompareTo(BitternessUnits other) => Value.CompareTo(other.Value);

    /// <summary>Whether the left is less bitter than the right.</summary>
    public static bool operator <(BitternessUnits left, BitternessUnits right) => left.Value < right.Value;

    /// <summary>Whether the left is more bitter than the right.</summary>
    public static bool operator >(BitternessUnits left, BitternessUnits right) => left.Value > right.Value;

    /// <summary>Whether the left is no more bitter than the right.</summary>
    public static bool operator <=(BitternessUnits left, BitternessUnits right) => left.Value <= right.Value;

    /// <summary>Whether the left is no less bitter than the right.</summary>
    public static bool operator >=(BitternessUnits left, BitternessUnits right) => left.Value >= right.Value;

    /// <summary>For example <c>31.5 IBU</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Printed.Bitterness(Value)} IBU");
}
