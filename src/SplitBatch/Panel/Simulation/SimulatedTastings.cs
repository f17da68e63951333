using static System.FormattableString;

namespace SplitBatch.Panel;

/// <summary>How many of many simulated tastings were right.</summary>
/// <param name="Protocol">The protocol.</param>
/// <param name="DPrime">The tasters' d-prime.</param>
/// <param name="Tastings">How many tastings.</param>
/// <param name="Correct">How many were right.</param>
/// <param name="Seed">The seed.</param>
public sealed record SimulatedTastings(Protocol Protocol, double DPrime, long Tastings, long Correct, int Seed)
{
    /// <summary>The share that was right.</summary>
    public double CorrectShare => (double)Correct / Tastings;

    /// <summary>The standard error of that share.</summary>
    public double StandardError => Math.Sqrt(CorrectShare * (1 - CorrectShare) / Tastings);

    /// <summary>For example <c>triangle at d-prime 1: 41.8 % of 1,000,000 tastings right (seed 1)</c>.</summary>
    public override string ToString() => Invariant($"{Protocol.Name} at d-prime {DPrime:0.##}: {CorrectShare * 100:0.##} % of {Tastings:N0} tastings right (seed {Seed})");
}
