using BenchmarkDotNet.Attributes;

namespace SplitBatch.Benchmarks.Inside;

/// <summary>
/// How the tasters table grows with the panels it has to look at: half the share of discriminators takes four times as many tasters.
/// </summary>
[MemoryDiagnoser]
public class TastersTableGrowth
{
    [Params(0.4, 0.2, 0.1, 0.05, 0.025)]
    public double Discriminators { get; set; }

    [Benchmark]
    public int Table() => Work.MostTasters(Discriminators);
}

/// <summary>How simulated triangles grow with their number, and with the cores.</summary>
[MemoryDiagnoser]
public class TriangleGrowth
{
    [Params(100_000, 1_000_000, 10_000_000)]
    public long Tastings { get; set; }

    [Params(1, 2)]
    public int Threads { get; set; }

    [Benchmark]
    public long Taste() => Work.Triangles(Tastings, Threads);
}

/// <summary>How uncertainty draws grow with their number, and with the cores.</summary>
[MemoryDiagnoser]
public class DoubtGrowth
{
    [Params(10_000, 100_000, 1_000_000)]
    public int Draws { get; set; }

    [Params(1, 2)]
    public int Threads { get; set; }

    [Benchmark]
    public double Draw() => Work.Doubt(Draws, Threads);
}

/// <summary>How a beta-binomial fit grows with the people.</summary>
[MemoryDiagnoser]
public class FitGrowth
{
    [Params(10, 30, 100, 300)]
    public int People { get; set; }

    [Benchmark]
    public double Fit() => Work.Fits(1, People);
}
