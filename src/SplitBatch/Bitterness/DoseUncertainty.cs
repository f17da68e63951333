using System.Collections.Immutable;
using System.Globalization;
using System.Runtime.CompilerServices;
using SplitBatch.Numbers;

namespace SplitBatch.Bitterness;

/// <summary>How sure two doses are: intervals for each beer and for their difference, and what contributes most.</summary>
/// <remarks>
/// <para>
/// Ref. JCGM 100:2008 (GUM) for the contributions: sensitivities by central differences of one standard uncertainty, squares added.
/// JCGM 101:2008 (Supplement 1) for the intervals: all errors drawn at once, a million times unless told otherwise.
/// </para>
/// <para>
/// Draws are made in blocks, each with a stream of random numbers of its own, so the result depends on the seed and the number of
/// draws but not on the number of processors.
/// </para>
/// </remarks>
public sealed record DoseUncertainty
{
    private readonly double[] draws;

    private DoseUncertainty(double[] draws) => this.draws = draws;

    /// <summary>Bitterness of half A.</summary>
    public required Interval A { get; init; }

    /// <summary>Bitterness of half B.</summary>
    public required Interval B { get; init; }

    /// <summary>Bitterness of B minus A: shared errors have cancelled as far as they do.</summary>
    public required Interval Difference { get; init; }

    /// <summary>Mean of the draws for A, B and the difference, in IBU.</summary>
    public required (double A, double B, double Difference) Mean { get; init; }

    /// <summary>Standard deviation of the draws for A, B and the difference, in IBU.</summary>
    public required (double A, double B, double Difference) Deviation { get; init; }

    /// <summary>Standard uncertainty of A, B and the difference by the law of propagation (first order), in IBU.</summary>
    public required (double A, double B, double Difference) FirstOrder { get; init; }

    /// <summary>The laboratory's critical difference that was passed in, in IBU.</summary>
    public double? CriticalDifference { get; init; }

    /// <summary>Chance that the true difference, either way, is larger than the laboratory's critical difference.</summary>
    public double? ChanceBeyondCriticalDifference => CriticalDifference is { } limit ? ChanceBeyond(limit) : null;

    /// <summary>The difference that people could taste, as passed in, in IBU.</summary>
    public double? TasteMargin { get; init; }

    /// <summary>Chance that the true difference, either way, is larger than the taste margin.</summary>
    public double? ChanceBeyondTasteMargin => TasteMargin is { } margin ? ChanceBeyond(margin) : null;

    /// <summary>Sources of error, the largest in the difference first: the rows of the chart.</summary>
    public required ImmutableArray<Contribution> Contributions { get; init; }

    /// <summary>The seed that the draws came from.</summary>
    public required int Seed { get; init; }

    /// <summary>How many times both beers were drawn.</summary>
    public int Draws => draws.Length;

    /// <summary>What to do first to make the difference surer.</summary>
    public string Advice => Contributions.IsEmpty || Contributions[0].Share == 0 ? "No source of error is left."
        : $"The largest doubt about the difference: "
            + $"{Contributions[0].Term.Name}."
            + $"{(Contributions[0].Term.Remedy is { Length: > 0 } remedy ? $" To reduce it, {remedy}." : "")}";

    /// <summary>Draws both beers.</summary>
    /// <param name="match">The doses.</param>
    /// <param name="budget">The sources of error; <see cref="ErrorBudget.For"/> unless given.</param>
    /// <param name="seed">The seed.</param>
    /// <param name="draws">How many draws, in [1000, 50000000].</param>
    /// <param name="level">Level of the intervals; the middle share of the draws.</param>
    /// <param name="criticalDifference">The laboratory's critical difference in IBU, if known.</param>
    /// <param name="tasteMargin">The difference in IBU that people could taste, if one was declared.</param>
    /// <param name="threads">Processors to use; all when null. The result does not depend on it.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside its range.</exception>
    /// <example><code>DoseUncertainty.Of(trial.WeighedDoses, seed: 2026)</code></example>
    public static DoseUncertainty Of(
        ChargeMatch match, ErrorBudget? budget = null, int seed = 2026, int draws = 1_000_000, double level = 0.95,
        double? criticalDifference = null, double? tasteMargin = null, int? threads = null)
    {
        ArgumentNullException.ThrowIfNull(match);
        Guard.InRange(draws, 1000, 50_000_000);
        Guard.OpenShare(level);
        if (threads is { } count) Guard.Positive(count, nameof(threads));
        if (criticalDifference is { } limit) Guard.NotNegative(limit, nameof(criticalDifference));
        if (tasteMargin is { } margin) Guard.NotNegative(margin, nameof(tasteMargin));
        var workers = threads ?? Environment.ProcessorCount;
        var sampler = new DoseSampler(match.A.Dose, match.B.Dose, budget ?? ErrorBudget.For(match));
        var (a, b, difference) = DoseDraws.Make(sampler, seed, draws, workers);
        var contributions = FirstOrderLaw.Contributions(sampler, out var standard);
        double[][] columns = [a, b, difference];
        var described = new (double Mean, double Deviation, Interval Interval)[3];
        Parallel.For(0, 3, new ParallelOptions { MaxDegreeOfParallelism = workers },
            column => described[column] = Describe(columns[column], level));
        var (statsA, statsB, statsD) = (described[0], described[1], described[2]);
        return new(difference)
        {
            A = statsA.Interval,
            B = statsB.Interval,
            Difference = statsD.Interval,
            Mean = (statsA.Mean, statsB.Mean, statsD.Mean),
            Deviation = (statsA.Deviation, statsB.Deviation, statsD.Deviation),
            FirstOrder = standard,
            CriticalDifference = criticalDifference,
            TasteMargin = tasteMargin,
            Contributions = contributions,
            Seed = seed,
        };
    }

    /// <summary>Chance that the true difference, either way, is larger than so many IBU.</summary>
    public double ChanceBeyond(double ibu)
    {
        Guard.NotNegative(ibu);
        var beyond = 0;
        foreach (var value in draws)
        {
            if (Math.Abs(value) > ibu) beyond++;
        }

        return (double)beyond / draws.Length;
    }

    /// <summary>The difference as bars of equal width over its middle 99.9 %: the rows of a histogram.</summary>
    public ImmutableArray<HistogramBin> Histogram(int bins = 60)
    {
        Guard.InRange(bins, 2, 1000);
        var ends = Quantiles.Of(draws, 0.0005, 0.9995);
        var width = (ends[1] - ends[0]) / bins;
        if (width == 0) return [new(ends[0], ends[0], 1)];
        var counts = new int[bins];
        foreach (var value in draws)
        {
            var bin = (int)Math.Floor((value - ends[0]) / width);
            if (bin >= 0 && bin < bins) counts[bin]++;
        }

        return [.. counts.Select(
            (count, i) => new HistogramBin(ends[0] + i * width, ends[0] + (i + 1) * width, (double)count / draws.Length))];
    }

    /// <summary>
    /// For example <c>A 19.1 to 45.2, B 19.3 to 46.0, B minus A −5.1 to 6.4 IBU (95 %, 1,000,000 draws, seed 2026). The largest doubt
    /// ...</c>.
    /// </summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"A {Range(A)}, B {Range(B)}, B minus A {Range(Difference)} IBU ({Printed.ChosenPercent(A.Level)}, {Printed.Count(Draws)} draws, "
            + $"seed {Seed}).{Chance(" Chance of a difference beyond the laboratory's critical difference", CriticalDifference)}"
            + $"{Chance(" Chance of a difference beyond the taste margin", TasteMargin)} {Advice}");

    private static string Range(Interval interval) => Printed.Range(interval, ibu => Printed.Bitterness(ibu));

    private string Chance(string what, double? limit) => limit is not { } ibu ? ""
        : string.Create(CultureInfo.InvariantCulture, $"{what} of {Printed.Bitterness(ibu)} IBU: {Printed.Percent(ChanceBeyond(ibu))}.");

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static (double Mean, double Deviation, Interval Interval) Describe(double[] values, double level)
    {
        double sum = 0, squares = 0;
        foreach (var value in values) sum += value;
        var mean = sum / values.Length;
        foreach (var value in values) squares += (value - mean) * (value - mean);
        var ends = Quantiles.Of(values, (1 - level) / 2, (1 + level) / 2);
        return (mean, Math.Sqrt(squares / (values.Length - 1)), new(ends[0], ends[1], level));
    }
}

/// <summary>A bar of a histogram: the share of draws in [<paramref name="Low"/>, <paramref name="High"/>).</summary>
/// <param name="Low">Lower edge, in IBU.</param>
/// <param name="High">Upper edge, in IBU.</param>
/// <param name="Share">Share of all draws.</param>
public readonly record struct HistogramBin(double Low, double High, double Share);
