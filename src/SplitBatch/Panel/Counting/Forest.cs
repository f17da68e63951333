using MathNet.Numerics.Distributions;
using SplitBatch.Numbers;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Counting;

/// <summary>The count of one panel, for setting panels side by side.</summary>
/// <param name="Name">Which panel.</param>
/// <param name="Protocol">A protocol with a known guessing chance.</param>
/// <param name="Tasters">Sets tasted, at least 1.</param>
/// <param name="Correct">Right answers.</param>
public sealed record PanelCount(string Name, Protocol Protocol, int Tasters, int Correct)
{
    /// <summary>The level of this panel's interval, where it has its own; null for that of the forest.</summary>
    public double? Level { get; init; }

    /// <summary>Each taster's sets and right answers, where tasters had more than one set; null where each had one.</summary>
    public IReadOnlyList<TasterCount>? Repeats { get; init; }
}

/// <summary>Several panels side by side: the data of a forest chart. They are combined only on request, by a stated method.</summary>
/// <param name="Rows">One row for each panel, in the order given.</param>
/// <param name="Level">Level of the intervals.</param>
public sealed record Forest(IReadOnlyList<ForestRow> Rows, double Level)
{
    /// <summary>Sets panels side by side.</summary>
    /// <param name="panels">At least one panel.</param>
    /// <param name="level">Level of the intervals, above 0 and below 1.</param>
    /// <exception cref="ArgumentException">No panels.</exception>
    /// <exception cref="ArgumentOutOfRangeException">More right answers than sets.</exception>
    public static Forest Of(IEnumerable<PanelCount> panels, double level = 0.95)
    {
        ArgumentNullException.ThrowIfNull(panels);
        ForestRow[] rows = [.. panels.Select(p => new ForestRow(p, TestOf(p, level)))];
        return rows.Length > 0 ? new(rows, level) : throw new ArgumentException("There are no panels to show.", nameof(panels));
    }

    private static DifferenceTest TestOf(PanelCount panel, double level)
    {
        var test = DifferenceTest.Of(panel.Protocol, panel.Tasters, panel.Correct, 0.05, panel.Level ?? level);
        return panel.Repeats is { } repeats ? test with { Repeats = ReplicatedTest.Of(panel.Protocol, repeats) } : test;
    }

    /// <summary>Combines the panels; see <see cref="StratifiedCombination"/> for the method and what it takes for granted.</summary>
    /// <exception cref="ArgumentException">A panel is two-sided, so that its right answers have no direction, or holds repeats, which are
    /// not new tasters.</exception>
    public StratifiedCombination Combine() => StratifiedCombination.Of([.. Rows.Select(r => r.Panel)], Level);
}

/// <summary>One panel of a forest chart.</summary>
/// <param name="Panel">The count.</param>
/// <param name="Test">Its test, estimates and intervals.</param>
public sealed record ForestRow(PanelCount Panel, DifferenceTest Test)
{
    /// <summary>The estimate of d-prime, which can be compared between protocols, with its interval.</summary>
    public DPrimeEstimate DPrime
    {
        get
        {
            var own = Test.DPrime;
            var limit = CountLimit.DPrime(Panel.Protocol, Panel.Tasters, Panel.Correct, (1 - Test.Level) / 2);
            return own with { Interval = own.Interval with { High = Math.Max(own.Interval.High, limit) } };
        }
    }

    /// <summary>The estimated share of discriminators with its exact interval; comparable only within one protocol.</summary>
    public Interval Discriminators => Test.DiscriminatorsInterval;

    /// <summary>For example <c>home: 11 right of 20 (triangle), d-prime 1.72 (0.38 to 2.77, 95 %)</c>.</summary>
    public override string ToString() => $"{Panel.Name}: {Panel.Correct} right of {Panel.Tasters} ({Panel.Protocol.Name}), {DPrime}";
}

/// <summary>
/// Panels combined as strata of one question: each keeps its own protocol and guessing chance, and all share one d-prime.
/// </summary>
/// <remarks>
/// The test adds the right answers of all panels and compares the sum with its exact distribution under guessing (the convolution of
/// the panels' binomials). Its interval holds every d-prime by which that sum would be neither too large nor too small, so it covers at
/// least as often as its level says. The estimate maximises the sum of the panels' log likelihoods over one d-prime. Heterogeneity is
/// twice the gain when each panel has its own d-prime, about chi-square with one degree of freedom less than there are panels. No panel
/// is pooled across its own guessing chance. It takes for granted that the panels were independent and had no taster in common.
/// </remarks>
/// <param name="Panels">The panels.</param>
/// <param name="PValue">The exact chance of so many right answers in all, by guessing alone.</param>
/// <param name="DPrime">The common d-prime.</param>
/// <param name="Interval">Its exact interval, from the distribution of the sum.</param>
/// <param name="Heterogeneity">Twice the gain in log likelihood when each panel has its own d-prime.</param>
public sealed record StratifiedCombination(
    IReadOnlyList<PanelCount> Panels, double PValue, double DPrime, Interval Interval, double Heterogeneity)
{
    /// <summary>The method in words, to be printed wherever the result is.</summary>
    public const string Method = "stratified by panel: exact test and interval from the summed right answers, and one d-prime by the sum "
        + "of the panels' log likelihoods";

    /// <summary>
    /// The chance of so large a heterogeneity if all panels share one d-prime (chi-square, approximate); 1 for a single panel.
    /// </summary>
    public double HeterogeneityPValue => Panels.Count < 2 ? 1 : 1 - ChiSquared.CDF(Panels.Count - 1, Heterogeneity);

    internal static StratifiedCombination Of(IReadOnlyList<PanelCount> panels, double level)
    {
        foreach (var panel in panels)
        {
            if (panel.Repeats is not null)
                throw new ArgumentException($"The panel \"{panel.Name}\" holds repeats by the same tasters, which are not new tasters; "
                    + $"set it beside the others instead.", nameof(panels));
            if (panel.Protocol.Sides != 1)
                throw new ArgumentException($"The panel \"{panel.Name}\" is two-sided ({panel.Protocol.Name}); its right answers cannot "
                    + $"be added to others.", nameof(panels));
        }

        var tail = (1 - level) / 2;
        var best = Largest(Log);
        var top = Log(best);
        var low = AtLeast(panels, 0) >= tail ? 0 : Math.Min(best, Root.Of(d => AtLeast(panels, d) - tail, 0, Far));
        var high = AtMost(panels, Far) >= tail
            ? double.PositiveInfinity
            : AtMost(panels, 0) <= tail ? best : Math.Max(best, Root.Of(d => AtMost(panels, d) - tail, 0, Far));
        var apart = panels.Sum(p => LogOf(p, Math.Max(p.Protocol.Chance, (double)p.Correct / p.Tasters)));
        return new(panels, AtLeast(panels, 0), best >= Far - 1e-6 ? double.PositiveInfinity : best, new(low, high, level),
            Math.Max(0, 2 * (apart - top)));

        double Log(double d) => panels.Sum(p => LogOf(p, p.Protocol.CorrectShare(d)));
    }

    /// <summary>
    /// For example <c>Together (2 panels): d-prime 1.4 (0.8 to 2.0, 95 %), p = 0.0012; panels agree with one another (p = 0.61). Method:
    /// ...</c>
    /// </summary>
    public override string ToString()
    {
        var high = double.IsInfinity(Interval.High) ? "no upper limit" : Printed.DPrime(Interval.High);
        var agree = HeterogeneityPValue < 0.05 ? "the panels disagree, so one number hides something" : "no sign that the panels disagree";
        return FormattableString.Invariant(
            $"Together ({Panels.Count} panels): d-prime {Printed.DPrime(DPrime)} ({Printed.DPrime(Interval.Low)} to {high}, ")
                + FormattableString.Invariant($"{Printed.ChosenPercent(Interval.Level)}), {Printed.PValue(PValue)}; {agree} ")
                + FormattableString.Invariant($"({Printed.PValue(HeterogeneityPValue)}). Method: {Method}.");
    }

    private const double Far = 12;

    private static double LogOf(PanelCount panel, double share) =>
        (panel.Correct == 0 ? 0 : panel.Correct * Math.Log(share))
        + (panel.Correct == panel.Tasters ? 0 : (panel.Tasters - panel.Correct) * Math.Log(1 - share));

    /// <summary>The chance of so many right answers in all, or more, by panels at one distance.</summary>
    private static double AtLeast(IReadOnlyList<PanelCount> panels, double distance) =>
        Math.Min(1, Sums(panels, distance).Skip(panels.Sum(p => p.Correct)).Reverse().Sum());

    /// <summary>The chance of so many right answers in all, or fewer.</summary>
    private static double AtMost(IReadOnlyList<PanelCount> panels, double distance) =>
        Math.Min(1, Sums(panels, distance).Take(panels.Sum(p => p.Correct) + 1).Sum());

    /// <summary>The chance of each number of right answers in all: the convolution of the panels' binomials.</summary>
    private static double[] Sums(IReadOnlyList<PanelCount> panels, double distance)
    {
        double[] sum = [1];
        foreach (var panel in panels)
        {
            var (next, share) = (new double[sum.Length + panel.Tasters], panel.Protocol.CorrectShare(distance));
            for (var x = 0; x <= panel.Tasters; x++)
            {
                var chance = ExactBinomial.Exactly(x, panel.Tasters, share);
                for (var i = 0; i < sum.Length; i++) next[i + x] += sum[i] * chance;
            }

            sum = next;
        }

        return sum;
    }

    // The top of a function of d-prime: a coarse look, then golden section.
    private static double Largest(Func<double, double> f)
    {
        const int steps = 48;
        var best = Enumerable.Range(0, steps + 1).Select(i => Far * i / steps).MaxBy(f);
        double left = Math.Max(0, best - (Far / steps)), right = Math.Min(Far, best + (Far / steps));
        var ratio = (Math.Sqrt(5) - 1) / 2;
        double c = right - (ratio * (right - left)), d = left + (ratio * (right - left)), fc = f(c), fd = f(d);
        while (right - left > 1e-9)
        {
            if (fc > fd) (right, d, fd, c) = (d, c, fc, double.NaN);
            else (left, c, fc, d) = (c, d, fd, double.NaN);
            if (double.IsNaN(c)) fc = f(c = right - (ratio * (right - left)));
            if (double.IsNaN(d)) fd = f(d = left + (ratio * (right - left)));
        }

        var top = (left + right) / 2;
        return f(0) >= f(top) ? 0 : top;
    }
}
