namespace SplitBatch.Bitterness;

/// <summary>A bar of a histogram: the share of draws in [<paramref name="Low"/>, <paramref name="High"/>).</summary>
/// <param name="Low">Lower edge, in IBU.</param>
/// <param name="High">Upper edge, in IBU.</param>
/// <param name="Share">Share of all draws.</param>
public readonly record struct HistogramBin(double Low, double High, double Share);
