using static System.FormattableString;

namespace SplitBatch.Lab;

/// <summary>One precision figure whose meaning is known: its kind, its condition, and how it grows with the level measured.</summary>
/// <remarks>
/// <para>
/// The figure at level m is <c>Constant + Slope * m^Exponent</c>. That covers the three relations of ISO 5725-2 (1994), 7.5:
/// s = b m (a coefficient of variation), s = a + b m, and lg s = c + d lg m.
/// </para>
/// <para>
/// A 95 % limit is <see cref="LimitFactor"/> standard deviations. Ref. ISO 5725-6 (1994), 4.1: f times the root of 2, with
/// f = 1.96 rounded so that the product is 2.8 (exactly 2.772).
/// </para>
/// </remarks>
public sealed record Precision
{
    /// <summary>95 % limit divided by standard deviation, as ISO 5725-6 rounds it.</summary>
    public const double LimitFactor = 2.8;

    private Precision(PrecisionKind kind, PrecisionCondition condition, double constant, double slope, double exponent)
    {
        if (!Enum.IsDefined(kind)) throw new ArgumentOutOfRangeException(nameof(kind), $"{kind} is not a kind of precision figure.");
        if (!Enum.IsDefined(condition))
            throw new ArgumentOutOfRangeException(nameof(condition), $"{condition} is not a precision condition.");
        Kind = kind;
        Condition = condition;
        Constant = Guard.InRange(constant, -1e9, 1e9);
        Slope = Guard.NotNegative(slope);
        Exponent = Guard.InRange(exponent, 0.0, 3.0);
        if (slope == 0 && constant <= 0)
            throw new ArgumentOutOfRangeException(nameof(constant),
                "A precision of zero would make every difference significant; give the figure the laboratory states, above zero.");
    }

    /// <summary>What sort of figure it is.</summary>
    public PrecisionKind Kind { get; }

    /// <summary>Repeatability or reproducibility.</summary>
    public PrecisionCondition Condition { get; }

    /// <summary>
    /// The part of the figure that does not depend on the level, in the analyte's unit; may be below zero where the slope makes up for it.
    /// </summary>
    public double Constant { get; }

    /// <summary>How much the figure grows with the level: a share of the level where <see cref="Exponent"/> is 1.</summary>
    public double Slope { get; }

    /// <summary>The power of the level; 1 unless the laboratory states a power law.</summary>
    public double Exponent { get; }

    /// <summary>From a coefficient of variation in percent of the level.</summary>
    /// <param name="percent">In (0, 100]: 4.3 for 4.3 %. A value below 0.1 is refused as a fraction by mistake.</param>
    /// <param name="condition">Repeatability or reproducibility.</param>
    /// <exception cref="ArgumentOutOfRangeException">The percentage lies outside.</exception>
    public static Precision CoefficientOfVariation(double percent, PrecisionCondition condition) =>
        new(PrecisionKind.CoefficientOfVariation, condition, 0, Percentage(percent) / 100, 1);

    /// <summary>From a standard deviation in the analyte's unit, the same at every level.</summary>
    /// <param name="value">Above zero.</param>
    /// <param name="condition">Repeatability or reproducibility.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public static Precision StandardDeviation(double value, PrecisionCondition condition) =>
        new(PrecisionKind.StandardDeviation, condition, Guard.Positive(value), 0, 1);

    /// <summary>From a 95 % limit (r or R) in the analyte's unit, the same at every level.</summary>
    /// <param name="value">Above zero.</param>
    /// <param name="condition">Repeatability or reproducibility.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public static Precision Limit95(double value, PrecisionCondition condition) =>
        new(PrecisionKind.Limit95, condition, Guard.Positive(value), 0, 1);

    /// <summary>From a 95 % limit (r or R) in percent of the level.</summary>
    /// <param name="percent">In (0, 100].</param>
    /// <param name="condition">Repeatability or reproducibility.</param>
    /// <exception cref="ArgumentOutOfRangeException">The percentage lies outside.</exception>
    public static Precision Limit95Percent(double percent, PrecisionCondition condition) =>
        new(PrecisionKind.Limit95, condition, 0, Percentage(percent) / 100, 1);

    /// <summary>From a figure that grows with the level: <c>constant + slope * level^exponent</c>.</summary>
    /// <param name="kind">A standard deviation or a 95 % limit; a coefficient of variation has its own maker.</param>
    /// <param name="condition">Repeatability or reproducibility.</param>
    /// <param name="constant">In the analyte's unit; below zero only where the level makes up for it.</param>
    /// <param name="slope">Zero or more; with <paramref name="exponent"/> 1 a share of the level (0.05 = 5 %).</param>
    /// <param name="exponent">In [0, 3].</param>
    /// <exception cref="ArgumentException">The kind is a coefficient of variation.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside, or the figure would be zero at every level.</exception>
    public static Precision GrowingWithLevel(PrecisionKind kind, PrecisionCondition condition, double constant, double slope,
        double exponent = 1) =>
            kind == PrecisionKind.CoefficientOfVariation
                ? throw new ArgumentException(
                    "A coefficient of variation is already a share of the level: use Precision.CoefficientOfVariation.", nameof(kind))
                : new(kind, condition, constant, slope, exponent);

    /// <summary>The standard deviation at a level, in the analyte's unit.</summary>
    /// <param name="level">The mean of the results compared; its size is taken.</param>
    /// <exception cref="ArgumentOutOfRangeException">The level is not a finite number, or the figure is not above zero there.</exception>
    public double StandardDeviationAt(double level)
    {
        var figure = FigureAt(level);
        return Kind == PrecisionKind.Limit95 ? figure / LimitFactor : figure;
    }

    /// <summary>The 95 % limit (r or R) at a level, in the analyte's unit.</summary>
    /// <param name="level">The mean of the results compared; its size is taken.</param>
    /// <exception cref="ArgumentOutOfRangeException">The level is not a finite number, or the figure is not above zero there.</exception>
    public double LimitAt(double level)
    {
        var figure = FigureAt(level);
        return Kind == PrecisionKind.Limit95 ? figure : figure * LimitFactor;
    }

    /// <summary>For example <c>repeatability, coefficient of variation 4.3 %</c>.</summary>
    public override string ToString()
    {
        var name = Kind switch
        {
            PrecisionKind.CoefficientOfVariation => "coefficient of variation",
            PrecisionKind.StandardDeviation => "standard deviation",
            _ => "95 % limit",
        };
        var condition = Condition switch
        {
            PrecisionCondition.Repeatability => "repeatability",
            PrecisionCondition.Intermediate => "intermediate precision",
            _ => "reproducibility",
        };
        return $"{condition}, {name} {FigureText()}";
    }

    private string FigureText()
    {
        var growing = Exponent == 1 ? Invariant($"{Printed.ChosenPercent(Slope)}")
            : Invariant($"{Printed.Chosen(Slope)} x level^{Printed.Chosen(Exponent)}");
        if (Constant == 0) return growing;
        var constant = Invariant($"{Printed.Chosen(Constant)}");
        return Slope == 0 ? constant : Exponent == 1 ? $"{constant} + {growing} of the level" : $"{constant} + {growing}";
    }

    private double FigureAt(double level)
    {
        Guard.InRange(level, -1e9, 1e9);
        var figure = Constant + Slope * (Exponent == 1 ? Math.Abs(level) : Math.Pow(Math.Abs(level), Exponent));
        return figure > 0
            ? figure
            : throw new ArgumentOutOfRangeException(nameof(level),
                Invariant($"The precision is stated as {FigureText()}, which is not above zero at {level}; it does not hold at ")
                    + Invariant($"that level."));
    }

    private static double Percentage(double percent) =>
        percent is > 0 and < 0.1
            ? throw new ArgumentOutOfRangeException(nameof(percent),
                Invariant($"{percent} % is finer than any beer analysis; it looks like a share: write {Printed.Chosen(percent * 100)} ")
                    + Invariant($"for {Printed.ChosenPercent(percent)}."))
            : Guard.InRange(Guard.Positive(percent), 0.0, 100.0, nameof(percent));
}

/// <summary>What sort of figure a laboratory gave for its precision. The same "5 %" means very different things.</summary>
public enum PrecisionKind
{
    /// <summary>Standard deviation as a percentage of the level (relative standard deviation).</summary>
    CoefficientOfVariation,

    /// <summary>Standard deviation in the analyte's own unit.</summary>
    StandardDeviation,

    /// <summary>
    /// The limit two single results stay within in 95 cases out of 100: 2.8 standard deviations (r or R, r95 or R95). In the
    /// analyte's own unit, or as a percentage of the level.
    /// </summary>
    Limit95,
}

/// <summary>Under which conditions the results varied that a precision figure describes (ISO 5725-1).</summary>
public enum PrecisionCondition
{
    /// <summary>One laboratory, one operator, one instrument, a short time: how well a run agrees with itself.</summary>
    Repeatability,

    /// <summary>One laboratory on different days, in different runs: how well its runs agree with each other (ISO 5725-3).</summary>
    Intermediate,

    /// <summary>Different laboratories, operators and instruments: how well laboratories agree with each other.</summary>
    Reproducibility,
}
