using System.Globalization;

namespace SplitBatch.Bitterness;

/// <summary>What is believed of any brewery before its own batches speak. A judgement, stated so that it can be changed.</summary>
/// <param name="Factor">The factor expected, measured over estimated, in (0, 5]: 1 is no correction.</param>
/// <param name="Batches">How many batches that expectation is worth, in (0, 100].</param>
/// <param name="Scatter">The scatter of measured over estimated from batch to batch that is expected, as a standard deviation of its
/// logarithm, in (0, 2].</param>
/// <param name="ScatterBatches">How many batches that scatter is worth, in (0, 100].</param>
public sealed record CalibrationPrior(double Factor = 1, double Batches = 0.5, double Scatter = 0.25, double ScatterBatches = 3)
{
    /// <summary>The factor expected.</summary>
    public double Factor { get; init; } = Guard.InRange(Factor, 0.01, 5.0);

    /// <summary>How many batches the factor is worth.</summary>
    public double Batches { get; init; } = Guard.InRange(Batches, 0.001, 100.0);

    /// <summary>The scatter expected.</summary>
    public double Scatter { get; init; } = Guard.InRange(Scatter, 0.001, 2.0);

    /// <summary>How many batches the scatter is worth.</summary>
    public double ScatterBatches { get; init; } = Guard.InRange(ScatterBatches, 0.001, 100.0);

    /// <summary>For example <c>factor 1.00 worth 0.5 batches, scatter 25 % worth 3 batches</c>.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture, $"factor {Printed.Ratio(Factor)} worth {Printed.Chosen(Batches)} batches, scatter "
            + $"{Printed.Percent(Scatter)} worth {Printed.Chosen(ScatterBatches)} batches");
}
