using SplitBatch.Numbers;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Counting;

/// <summary>
/// A/not-A and same/different: are the two kinds of set answered differently? Fisher's exact test of the two-by-two table, and d-prime.
/// </summary>
/// <remarks>
/// For A/not-A, d' = z(H) - z(F). For same/different, by the differencing strategy: the line tau from the false alarms, then d' from the
/// hits. The standard error is by the delta method. Ref. ISO 8588; Fisher (1934); Macmillan, Kaplan and Creelman (1977).
/// </remarks>
public sealed record YesNoTest
{
    private YesNoTest()
    {
    }

    /// <summary><see cref="Protocol.ANotA"/> or <see cref="Protocol.SameDifferent"/>.</summary>
    public required Protocol Protocol { get; init; }

    /// <summary>Sets with a difference: cups of not-A, or pairs of unlike beers.</summary>
    public required int Different { get; init; }

    /// <summary>Of those, how many were noticed: called not A, or different.</summary>
    public required int Hits { get; init; }

    /// <summary>Sets without a difference: cups of A, or pairs of one beer.</summary>
    public required int Alike { get; init; }

    /// <summary>Of those, how many were called not A, or different.</summary>
    public required int FalseAlarms { get; init; }

    /// <summary>The chance, fixed beforehand, of showing a difference that is not there.</summary>
    public required double Alpha { get; init; }

    /// <summary>Hits per set with a difference.</summary>
    public double HitRate => (double)Hits / Different;

    /// <summary>False alarms per set without one.</summary>
    public double FalseAlarmRate => (double)FalseAlarms / Alike;

    /// <summary>
    /// The chance of so many hits or more among the same number of such answers, if both kinds of set are answered alike: Fisher's exact
    /// test, one-sided.
    /// </summary>
    public double PValue => FisherExact.UpperTail(Hits, Different, FalseAlarms, Alike);

    /// <summary>Pearson's chi-square with one degree of freedom, without continuity correction.</summary>
    public double ChiSquare
    {
        get
        {
            double a = Hits, b = Different - Hits, c = FalseAlarms, d = Alike - FalseAlarms, n = a + b + c + d;
            var margins = (a + b) * (c + d) * (a + c) * (b + d);
            return margins == 0 ? 0 : n * Math.Pow((a * d) - (b * c), 2) / margins;
        }
    }

    /// <summary>Whether a difference is shown.</summary>
    public bool DifferenceShown => ExactBinomial.Reaches(PValue, Alpha);

    /// <summary>
    /// The estimated d-prime: 0 where the hits are no more frequent than the false alarms; infinite where it cannot be bounded.
    /// </summary>
    public double DPrime => DPrimeOf(Protocol, HitRate, FalseAlarmRate);

    /// <summary>Its standard error; null where d-prime is 0 or infinite.</summary>
    public double? StandardError
    {
        get
        {
            if (DPrime is 0 || double.IsInfinity(DPrime)) return null;
            const double step = 1e-5;
            var byHits = (Raw(HitRate + step, FalseAlarmRate) - Raw(HitRate - step, FalseAlarmRate)) / (2 * step);
            var byFalse = (Raw(HitRate, FalseAlarmRate + step) - Raw(HitRate, FalseAlarmRate - step)) / (2 * step);
            return Math.Sqrt((byHits * byHits * HitRate * (1 - HitRate) / Different)
                + (byFalse * byFalse * FalseAlarmRate * (1 - FalseAlarmRate) / Alike));

            double Raw(double hits, double alarms) => DPrimeOf(Protocol, hits, alarms);
        }
    }

    /// <summary>Tests whether sets with a difference are noticed more often than sets without.</summary>
    /// <param name="protocol"><see cref="Protocol.ANotA"/> or <see cref="Protocol.SameDifferent"/>.</param>
    /// <param name="hits">Sets with a difference that were noticed.</param>
    /// <param name="different">Sets with a difference, at least 1.</param>
    /// <param name="falseAlarms">Sets without a difference that were called different (or not A).</param>
    /// <param name="alike">Sets without a difference, at least 1.</param>
    /// <param name="alpha">The chance of showing a difference that is not there, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A count is larger than its sets, or a number lies outside its range.</exception>
    /// <exception cref="ArgumentException">The protocol has a known guessing chance.</exception>
    public static YesNoTest Of(Protocol protocol, int hits, int different, int falseAlarms, int alike, double alpha = 0.05)
    {
        ArgumentNullException.ThrowIfNull(protocol);
        if (protocol.HasKnownChance)
            throw new ArgumentException($"{protocol.Name} has a known guessing chance; use DifferenceTest.", nameof(protocol));
        Counts.Check(hits, different);
        Counts.Check(falseAlarms, alike);
        return new() { Protocol = protocol, Hits = hits, Different = different, FalseAlarms = falseAlarms, Alike = alike,
            Alpha = Guard.OpenShare(alpha) };
    }

    /// <summary>
    /// For example <c>40 of 50 noticed against 15 of 50 false alarms (A-not-A): a difference is shown at 5 % (p below 0.0001); d-prime
    /// 1.37.</c>
    /// </summary>
    public override string ToString()
    {
        var opening = $"{Hits} of {Different} noticed against {FalseAlarms} of {Alike} false alarms ({Protocol.Name}): ";
        var size = double.IsInfinity(DPrime) ? "d-prime beyond measure" : $"d-prime {Printed.DPrime(DPrime)}";
        return opening + (DifferenceShown
            ? $"a difference is shown at {Printed.ChosenPercent(Alpha)} ({Printed.PValue(PValue)}); {size}."
            : $"no difference shown at {Printed.ChosenPercent(Alpha)} ({Printed.PValue(PValue)}); {size}. That does not mean the same.");
    }

    private static double DPrimeOf(Protocol protocol, double hits, double alarms)
    {
        if (hits <= alarms) return 0;
        if (hits >= 1 || alarms <= 0) return double.PositiveInfinity;
        if (ReferenceEquals(protocol, Protocol.ANotA)) return Gauss.Quantile(hits) - Gauss.Quantile(alarms);
        var root2 = Math.Sqrt(2);
        var tau = root2 * Gauss.Quantile(1 - (alarms / 2));
        return Root.Of(d => Gauss.Below((d - tau) / root2) + Gauss.Below((-d - tau) / root2) - hits, 0, 40);
    }
}
