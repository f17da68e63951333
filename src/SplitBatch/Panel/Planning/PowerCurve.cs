using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Planning;

/// <summary>One point of a power curve.</summary>
/// <param name="Tasters">Panel size.</param>
/// <param name="Discriminators">The true share of discriminators.</param>
/// <param name="CriticalCount">The right answers that show a difference; null where none do.</param>
/// <param name="TrueAlpha">The chance of a false difference at this size, below alpha because counts are whole.</param>
/// <param name="Power">The chance of showing the difference.</param>
public sealed record PowerPoint(int Tasters, double Discriminators, int? CriticalCount, double TrueAlpha, double Power);

/// <summary>
/// Power as plain data for a chart: over panel sizes, where it saws, or over shares of discriminators, where it rises smoothly.
/// </summary>
public static class PowerCurve
{
    /// <summary>Power for every panel size in a range, at one share of discriminators.</summary>
    /// <param name="protocol">A protocol with a known guessing chance.</param>
    /// <param name="alpha">The chance of showing a difference that is not there, above 0 and below 1.</param>
    /// <param name="discriminators">The true share of discriminators in [0, 1].</param>
    /// <param name="from">Smallest panel, at least 1.</param>
    /// <param name="to">Largest panel, at most 100 000.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static IReadOnlyList<PowerPoint> OverTasters(Protocol protocol, double alpha, double discriminators, int from, int to)
    {
        Guard.Positive(from);
        Guard.InRange(to, from, 100_000);
        return [.. Enumerable.Range(from, to - from + 1).Select(n => Point(protocol, n, alpha, discriminators))];
    }

    /// <summary>Power for one panel size over evenly spaced shares of discriminators from 0 to 1.</summary>
    /// <param name="protocol">A protocol with a known guessing chance.</param>
    /// <param name="tasters">Panel size, at least 1.</param>
    /// <param name="alpha">The chance of showing a difference that is not there, above 0 and below 1.</param>
    /// <param name="points">How many shares, at least 2.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static IReadOnlyList<PowerPoint> OverDiscriminators(Protocol protocol, int tasters, double alpha, int points = 51)
    {
        Guard.InRange(points, 2, 100_000);
        return [.. Enumerable.Range(0, points).Select(i => Point(protocol, tasters, alpha, (double)i / (points - 1)))];
    }

    private static PowerPoint Point(Protocol protocol, int n, double alpha, double share) => new(
        n, share, Power.CriticalCount(protocol, n, alpha), Power.Of(protocol, n, alpha, 0), Power.Of(protocol, n, alpha, share));
}
