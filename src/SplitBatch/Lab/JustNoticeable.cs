using System.Globalization;

namespace SplitBatch.Lab;

/// <summary>The smallest difference that people notice, as a range, with the source that says so. There is no default.</summary>
/// <remarks>
/// For orientation: unhopped lager was told from lager with iso-alpha acids at 7.1 mg/L (4.5 to 11.2) by trained tasters (Kolpin and
/// Shellhammer 2009, J. Am. Soc. Brew. Chem. 67(4), 200-205, abstract). That is a detection threshold from zero and not the smallest
/// difference between two hopped beers, so it is not used as one. Difference thresholds in beer were measured by Guinard and others (1996,
/// Physiology and Behavior 59, 625-631); the abstract, which is all that was seen, gives no figure.
/// </remarks>
public sealed record JustNoticeable
{
    /// <summary>From a stated range.</summary>
    /// <param name="low">The smallest difference that anyone is said to notice, above zero, in the analyte's unit.</param>
    /// <param name="high">The difference that most are said to notice, at least <paramref name="low"/>.</param>
    /// <param name="source">Who says so; not blank.</param>
    /// <exception cref="ArgumentException">The source is blank.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside.</exception>
    public JustNoticeable(double low, double high, string source)
    {
        Low = Guard.Positive(low);
        High = Guard.InRange(high, low, 1e6);
        Source = Guard.NotBlank(source).Trim();
    }

    /// <summary>The smallest difference that anyone is said to notice.</summary>
    public double Low { get; }

    /// <summary>The difference that most are said to notice.</summary>
    public double High { get; }

    /// <summary>Who says so.</summary>
    public string Source { get; }

    /// <summary>What a measured difference lets one expect in the glass. It is an expectation, and the panel is the test.</summary>
    /// <param name="comparison">The measured difference.</param>
    /// <param name="range">The stated range, or null where there is none.</param>
    public static string Expect(LabComparison comparison, JustNoticeable? range)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        if (range is null)
            return "No just-noticeable difference with a source is stated, so nothing is said about the taste; the panel is the test.";
        var analyte = comparison.Analyte;
        var stated = $"the stated just-noticeable difference of {analyte.Format(range.Low)} to {analyte.Format(range.High)} "
            + $"({range.Source})";
        var reach = comparison.CriticalDifference ?? 0;
        var (least, most) = (Math.Max(0, Math.Abs(comparison.Difference) - reach), Math.Abs(comparison.Difference) + reach);
        var measured = comparison.CriticalDifference is null
            ? $"The measured difference of {analyte.Format(Math.Abs(comparison.Difference))}, whose uncertainty is not known,"
            : $"The difference, between {analyte.Format(least)} and {analyte.Format(most)} as far as the method can tell,";
        var verdict = most < range.Low
            ? "is smaller than"
            : least > range.High ? "is larger than" : "cannot be placed clearly above or below";
        return $"{measured} {verdict} {stated}. The panel is the test.";
    }

    /// <summary>For example <c>3 to 5 (source)</c>.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Printed.Chosen(Low)} to {Printed.Chosen(High)} ({Source})");
}
