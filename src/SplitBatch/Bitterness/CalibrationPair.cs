using System.Globalization;
using SplitBatch.Numbers;

namespace SplitBatch.Bitterness;

/// <summary>One beer's estimate and what the laboratory measured.</summary>
/// <param name="Batch">The batch it belongs to; both halves of a split batch share it.</param>
/// <param name="Estimated">The estimate in IBU, uncorrected; above zero.</param>
/// <param name="Measured">The laboratory's value in IBU; above zero.</param>
public sealed record CalibrationPair(string Batch, double Estimated, double Measured)
{
    /// <summary>The batch it belongs to.</summary>
    public string Batch { get; init; } = Guard.NotBlank(Batch);

    /// <summary>The estimate in IBU.</summary>
    public double Estimated { get; init; } = Guard.Positive(Estimated);

    /// <summary>The laboratory's value in IBU.</summary>
    public double Measured { get; init; } = Guard.Positive(Measured);

    /// <summary>Measured over estimated.</summary>
    public double Ratio => Measured / Estimated;

    /// <summary>For example <c>autumn bitter: estimated 31.0, measured 24.5 (0.79)</c>.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture,
            $"{Batch}: estimated {Printed.Bitterness(Estimated)}, measured {Printed.Bitterness(Measured)} ({Printed.Ratio(Ratio)})");
}

/// <summary>One beer in the calibration: a point of its chart and a row of its table.</summary>
/// <param name="Pair">What was estimated and measured.</param>
/// <param name="Fitted">The estimate corrected by the factor of all batches, in IBU.</param>
/// <param name="LeftOut">The estimate corrected by the factor of all <em>other</em> batches, in IBU: what would have been said before
/// this one was known.</param>
/// <param name="Interval">The prediction interval that the other batches gave for this beer, in IBU.</param>
public sealed record CalibrationPoint(CalibrationPair Pair, double Fitted, double LeftOut, Interval Interval)
{
    /// <summary>Measured less predicted from the other batches, in IBU.</summary>
    public double Error => Pair.Measured - LeftOut;

    /// <summary>For example <c>autumn bitter: estimated 31.0, measured 24.5 (0.79); the other batches said 23.9</c>.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Pair}; the other batches said {Printed.Bitterness(LeftOut)}");
}
