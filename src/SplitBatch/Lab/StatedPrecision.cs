using static System.FormattableString;

namespace SplitBatch.Lab;

/// <summary>
/// A precision figure as a laboratory or a text gave it, with whatever it left unsaid: a number or a range of numbers, in percent
/// or in the analyte's unit, of a kind and a condition that may be unknown.
/// </summary>
public sealed record StatedPrecision
{
    private StatedPrecision(double low, double high, bool isPercent)
    {
        Low = Guard.Positive(low);
        High = Guard.InRange(high, low, isPercent ? 100 : double.MaxValue);
        IsPercent = isPercent;
    }

    /// <summary>The smaller end of what was stated.</summary>
    public double Low { get; }

    /// <summary>The larger end; the same as <see cref="Low"/> for a single figure.</summary>
    public double High { get; }

    /// <summary>Whether the figure is a percentage of the level rather than in the analyte's unit.</summary>
    public bool IsPercent { get; }

    /// <summary>Its kind, or null where it was not said.</summary>
    public PrecisionKind? Kind { get; init; }

    /// <summary>Its condition, or null where it was not said.</summary>
    public PrecisionCondition? Condition { get; init; }

    /// <summary>Who says so, in words; for instance "letter of the laboratory" or "common practice, no source".</summary>
    public string Source { get; init; } = "";

    /// <summary>Percent of the level: one figure, or a range from low to high.</summary>
    /// <param name="low">Percent, above zero.</param>
    /// <param name="high">Percent, at least <paramref name="low"/> and at most 100; left out for a single figure.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside.</exception>
    public static StatedPrecision Percent(double low, double? high = null) => new(low, high ?? low, true);

    /// <summary>In the analyte's unit: one figure, or a range from low to high.</summary>
    /// <param name="low">Above zero.</param>
    /// <param name="high">At least <paramref name="low"/>; left out for a single figure.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside.</exception>
    public static StatedPrecision Absolute(double low, double? high = null) => new(low, high ?? low, false);

    /// <summary>Every precision the statement could mean: each kind, condition and end of the range that is not ruled out.</summary>
    /// <exception cref="ArgumentException">A coefficient of variation is given in the analyte's unit.</exception>
    public IReadOnlyList<Precision> Readings()
    {
        var kinds = Kind is { } kind ? [kind] : IsPercent
            ? new[] { PrecisionKind.CoefficientOfVariation, PrecisionKind.Limit95 }
            : [PrecisionKind.StandardDeviation, PrecisionKind.Limit95];
        PrecisionCondition[] conditions = Condition is { } condition
            ? [condition]
            : [PrecisionCondition.Repeatability, PrecisionCondition.Reproducibility];
        double[] figures = Low == High ? [Low] : [Low, High];
        return [.. from k in kinds from c in conditions from f in figures select Read(f, k, c)];
    }

    /// <summary>The statement in words, with what it leaves open.</summary>
    public override string ToString()
    {
        var figure = Low == High ? Invariant($"{Printed.Chosen(Low)}") : Invariant($"{Printed.Chosen(Low)} to {Printed.Chosen(High)}");
        var kind = Kind switch
        {
            PrecisionKind.CoefficientOfVariation => "coefficient of variation",
            PrecisionKind.StandardDeviation => "standard deviation",
            PrecisionKind.Limit95 => "95 % limit",
            _ => "kind not stated",
        };
        var condition = Condition switch
        {
            PrecisionCondition.Repeatability => "repeatability",
            PrecisionCondition.Intermediate => "intermediate precision",
            PrecisionCondition.Reproducibility => "reproducibility",
            _ => "repeatability or reproducibility not stated",
        };
        return $"{figure}{(IsPercent ? " %" : "")}, {kind}, {condition}{(Source.Length > 0 ? $" ({Source})" : "")}";
    }

    private Precision Read(double figure, PrecisionKind kind, PrecisionCondition condition) => (kind, IsPercent) switch
    {
        (PrecisionKind.Limit95, true) => Precision.Limit95Percent(figure, condition),
        (PrecisionKind.Limit95, false) => Precision.Limit95(figure, condition),
        (_, true) => Precision.CoefficientOfVariation(figure, condition),
        (PrecisionKind.StandardDeviation, false) => Precision.StandardDeviation(figure, condition),
        _ => throw new ArgumentException("A coefficient of variation is a percentage of the level; this figure is in the analyte's unit."),
    };
}
