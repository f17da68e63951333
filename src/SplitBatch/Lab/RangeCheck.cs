using System.Globalization;

namespace SplitBatch.Lab;

/// <summary>Whether replicates of one run lie as close together as the stated repeatability says.</summary>
/// <remarks>
/// Ref. ISO 5725-6 (1994), 5.2: the range of n results may be the range factor times the repeatability standard deviation.
/// </remarks>
/// <param name="Sample">The replicates.</param>
/// <param name="CriticalRange">The largest range that 95 cases of 100 stay within.</param>
public sealed record RangeCheck(Replicates Sample, double CriticalRange)
{
    /// <summary>Whether the replicates agree as well as they should.</summary>
    public bool IsAcceptable => Sample.Range <= CriticalRange;

    /// <summary>Checks replicates against a repeatability; null for a single result.</summary>
    /// <exception cref="ArgumentException">The precision is not a repeatability.</exception>
    public static RangeCheck? Of(Replicates sample, Precision repeatability)
    {
        ArgumentNullException.ThrowIfNull(sample);
        ArgumentNullException.ThrowIfNull(repeatability);
        if (repeatability.Condition != PrecisionCondition.Repeatability)
        {
            throw new ArgumentException("Replicates of one run are judged by the repeatability, not by the reproducibility.",
                nameof(repeatability));
        }

        return sample.Count < 2 ? null
            : new(sample, CriticalDifference.RangeFactor(sample.Count) * repeatability.StandardDeviationAt(sample.Mean));
    }

    /// <summary>The result in a sentence.</summary>
    public override string ToString()
    {
        var analyte = Sample.Analyte;
        var counted = string.Create(CultureInfo.InvariantCulture,
            $"{Sample.Label}: {Sample.Count} replicates span {analyte.Format(Sample.Range)}; the stated repeatability allows "
                + $"{analyte.Format(CriticalRange)}");
        return IsAcceptable ? $"{counted}."
            : $"{counted}. The run did not repeat as well as the laboratory states; ask for further replicates.";
    }
}
