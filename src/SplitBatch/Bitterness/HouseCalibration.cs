using System.Collections.Immutable;
using System.Globalization;
using MathNet.Numerics.Distributions;
using SplitBatch.Numbers;

namespace SplitBatch.Bitterness;

/// <summary>What this brewery's past returns say about its estimates: a factor, held back while there are few batches.</summary>
/// <remarks>
/// <para>
/// The logarithm of measured over estimated is taken as normal from batch to batch, with unknown mean and scatter, and the usual
/// conjugate (normal-inverse-gamma) prior on the two. Prediction is then by Student's t. Ref. Gelman, A. et al. (2013), Bayesian Data
/// Analysis, 3rd ed., section 3.3.
/// </para>
/// <para>
/// Two halves of a split batch share wort, yeast and kettle, so they are one batch here, by the mean of their logarithms; what halves
/// of one batch scatter is added to the prediction of a single beer.
/// </para>
/// </remarks>
public sealed record HouseCalibration
{
    private readonly Fitted fit;
    private readonly Lazy<ImmutableArray<CalibrationPoint>> points;

    private HouseCalibration(ImmutableArray<CalibrationPair> pairs, CalibrationPrior prior, double level)
    {
        (fit, Prior, Level) = (Fitted.Of(pairs, prior), prior, level);
        points = new(() => [.. pairs.Select(pair => Point(pair, pairs))]);
    }

    /// <summary>What was believed before.</summary>
    public CalibrationPrior Prior { get; }

    /// <summary>One point for each beer: the rows of the table and the chart.</summary>
    public ImmutableArray<CalibrationPoint> Points => points.Value;

    /// <summary>Level of the intervals, as a share.</summary>
    public double Level { get; }

    /// <summary>How many batches it rests on.</summary>
    public int Batches => fit.Batches;

    /// <summary>Measured over estimated, after shrinkage: multiply a published estimate by it.</summary>
    public double Factor => Math.Exp(fit.Mean);

    /// <summary>The plain geometric mean of measured over estimated, before shrinkage; null without batches.</summary>
    public double? RawFactor => fit.Batches == 0 ? null : Math.Exp(fit.RawMean);

    /// <summary>Where the factor lies: the house's long-run mean, not the next batch.</summary>
    public Interval FactorInterval => fit.Range(fit.MeanScale, Level).Select(Math.Exp);

    /// <summary>How far batches scatter about the factor, as a share (0.2 for about 20 %).</summary>
    public double Scatter => fit.Scale;

    /// <summary>The weight of the house's own batches against the prior, in [0, 1).</summary>
    public double OwnWeight => fit.Batches / (fit.Batches + Prior.Batches);

    /// <summary>
    /// Typical error of a prediction made without the batch in question, as a share of the value: root mean square of the logarithms;
    /// null with fewer than two batches.
    /// </summary>
    public double? LeaveOneOutError =>
        Batches < 2 ? null : RootMeanSquare(Points.Select(point => Math.Log(point.Pair.Measured / point.LeftOut)));

    /// <summary>Typical error of the published estimate on the same beers, as a share of the value; null without batches.</summary>
    public double? UncorrectedError => Batches == 0 ? null : RootMeanSquare(Points.Select(point => Math.Log(point.Pair.Ratio)));

    /// <summary>What these returns can and cannot tell, in plain words.</summary>
    public string Statement => CalibrationStatement.Of(this);

    /// <summary>Learns from past beers.</summary>
    /// <param name="pairs">Past beers; none gives the prior.</param>
    /// <param name="prior">What was believed before; the defaults unless given.</param>
    /// <param name="level">Level of the intervals.</param>
    /// <example><code>HouseCalibration.Fit(PastTrials.In("my-trials").Pairs)</code></example>
    public static HouseCalibration Fit(IEnumerable<CalibrationPair> pairs, CalibrationPrior? prior = null, double level = 0.90)
    {
        ArgumentNullException.ThrowIfNull(pairs);
        Guard.OpenShare(level);
        return new([.. pairs], prior ?? new(), level);
    }

    /// <summary>What to expect of the next batch.</summary>
    /// <param name="published">Its published estimate in IBU, above zero.</param>
    public HouseEstimate Correct(double published) =>
        new(Guard.Positive(published), published * Factor, fit.Predict(published, Level), Batches);

    /// <summary>What to expect of the next batch.</summary>
    public HouseEstimate Correct(BitternessEstimate estimate)
    {
        ArgumentNullException.ThrowIfNull(estimate);
        return Correct(estimate.Value.Value);
    }

    /// <summary>
    /// The inverse of <see cref="Correct(double)"/>: the published estimate to dose to, so that the laboratory measures what is wanted.
    /// </summary>
    /// <param name="measured">The bitterness that the laboratory should measure, in IBU, above zero.</param>
    /// <example><code>ChargeMatch.Solve(kettle, house.EstimateFor(measured: 25), cones, pellets)</code></example>
    public HouseTarget EstimateFor(double measured)
    {
        var estimate = Guard.Positive(measured) / Factor;
        return new(measured, estimate, fit.Predict(estimate, Level), Batches);
    }

    /// <summary>For example <c>This house measures 0.69 of its estimates (90 %: 0.52 to 0.92), from 4 batches</c>.</summary>
    public override string ToString() => Batches == 0
        ? "No batches yet: estimates stand as published."
        : string.Create(CultureInfo.InvariantCulture,
            $"This house measures {Printed.Ratio(Factor)} of its estimates ({Printed.ChosenPercent(Level)}: "
                + $"{Printed.Range(FactorInterval, Printed.Ratio)}), from {Batches} {(Batches == 1 ? "batch" : "batches")}.");

    private CalibrationPoint Point(CalibrationPair pair, ImmutableArray<CalibrationPair> all)
    {
        var others = Fitted.Of([.. all.Where(other => other.Batch != pair.Batch)], Prior);
        return new(pair, pair.Estimated * Factor, pair.Estimated * Math.Exp(others.Mean), others.Predict(pair.Estimated, Level));
    }

    private static double RootMeanSquare(IEnumerable<double> values) => Math.Sqrt(values.Select(value => value * value).Average());

    /// <summary>The posterior: Student's t with so many degrees of freedom for the mean and for the next batch.</summary>
    private sealed record Fitted(int Batches, double RawMean, double Mean, double Freedom, double Scale, double MeanScale, double Within)
    {
        internal static Fitted Of(ImmutableArray<CalibrationPair> pairs, CalibrationPrior prior)
        {
            var batches = pairs.GroupBy(pair => pair.Batch)
                .Select(group => group.Select(pair => Math.Log(pair.Ratio)).ToArray()).ToArray();
            var n = batches.Length;
            var means = batches.Select(batch => batch.Average()).ToArray();
            var raw = n == 0 ? 0 : means.Average();
            var expected = Math.Log(prior.Factor);
            var weight = prior.Batches + n;
            var mean = (prior.Batches * expected + n * raw) / weight;
            var freedom = prior.ScatterBatches + n;
            var squares = prior.ScatterBatches * prior.Scatter * prior.Scatter
                + means.Sum(value => (value - raw) * (value - raw))
                + prior.Batches * n / weight * (raw - expected) * (raw - expected);
            var scale = Math.Sqrt(squares / freedom);

            // Halves of one batch: what the mean of several hides from a single beer.
            var spare = batches.Sum(batch => batch.Length - 1);
            var within = spare == 0 ? 0 : batches.Sum(batch => batch.Sum(value => Math.Pow(value - batch.Average(), 2))) / spare;
            var hidden = n == 0 ? 0 : within * (1 - batches.Average(batch => 1.0 / batch.Length));
            return new(n, raw, mean, freedom, scale, scale / Math.Sqrt(weight), hidden);
        }

        internal Interval Range(double scale, double level)
        {
            var reach = StudentT.InvCDF(0, 1, Freedom, (1 + level) / 2) * scale;
            return new(Mean - reach, Mean + reach, level);
        }

        internal Interval Predict(double published, double level) =>
            Range(Math.Sqrt(Scale * Scale + MeanScale * MeanScale + Within), level).Select(value => published * Math.Exp(value));
    }
}
