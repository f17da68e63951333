using MathNet.Numerics.Distributions;

namespace SplitBatch.Proof.TruthTable;

/// <summary>Whether a count of bad outcomes still agrees with a promised rate.</summary>
public static class Promise
{
    /// <summary>The chance that a promise that is kept exactly is called broken, in one cell.</summary>
    private const double FalseAlarm = 1e-5;

    /// <summary>The largest count of bad outcomes that a rate kept exactly would still give, all but never more.</summary>
    public static int Largest(double rate, int trials)
    {
        int count = (int)(rate * trials);
        while (Binomial.CDF(rate, trials, count) < 1 - FalseAlarm) count++;
        return count;
    }

    /// <summary>Whether the promise stands.</summary>
    public static bool Kept(int bad, double rate, int trials) => bad <= Largest(rate, trials);
}
