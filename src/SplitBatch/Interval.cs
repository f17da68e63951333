using System.Globalization;

namespace SplitBatch;

/// <summary>A range of values with the level of confidence (or credibility) it claims.</summary>
/// <param name="Low">The lower end, inclusive.</param>
/// <param name="High">The upper end, inclusive; never below <paramref name="Low"/>.</param>
/// <param name="Level">The level as a share: 0.95 for 95 %.</param>
public readonly record struct Interval(double Low, double High, double Level = 0.95)
{
    /// <summary>High less low.</summary>
    public double Width => High - Low;

    /// <summary>Whether <paramref name="value"/> lies in the interval, ends included.</summary>
    public bool Contains(double value) => value >= Low && value <= High;

    /// <summary>The interval of the values after a rising function.</summary>
    public Interval Select(Func<double, double> rising)
    {
        ArgumentNullException.ThrowIfNull(rising);
        return this with { Low = rising(Low), High = rising(High) };
    }

    /// <summary>For example <c>21.3 to 30.8 (95 %)</c>.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Printed.Ratio(Low)} to {Printed.Ratio(High)} ({Printed.ChosenPercent(Level)})");
}
