using SplitBatch.Numbers;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Planning;

/// <summary>Power of A/not-A and same/different by Fisher's exact test, one-sided, with as many sets of either kind.</summary>
public static class YesNoPower
{
    /// <summary>The chance of showing a difference.</summary>
    /// <param name="setsOfEither">Sets of each of the two kinds, from 1 to 2000.</param>
    /// <param name="alpha">The chance of showing a difference that is not there, above 0 and below 1.</param>
    /// <param name="hitRate">The share of sets with a difference that are noticed, in [0, 1].</param>
    /// <param name="falseAlarmRate">The share of sets without one that are called different, in [0, 1].</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static double Of(int setsOfEither, double alpha, double hitRate, double falseAlarmRate)
    {
        var n = Guard.InRange(setsOfEither, 1, 2000);
        Guard.OpenShare(alpha);
        Guard.Share(hitRate);
        Guard.Share(falseAlarmRate);
        // The hits needed never fall as false alarms rise, so one pointer walks up once.
        double power = 0;
        var needed = 0;
        for (var alarms = 0; alarms <= n; alarms++)
        {
            var weight = ExactBinomial.Exactly(alarms, n, falseAlarmRate);
            while (needed <= n && !ExactBinomial.Reaches(FisherExact.UpperTail(needed, n, alarms, n), alpha)) needed++;
            if (needed > n) break;
            if (weight > 1e-14) power += weight * ExactBinomial.AtLeast(needed, n, hitRate);
        }

        return power;
    }

    /// <summary>
    /// The first number of sets, both kinds together, that reaches the power at a d-prime, for tasters who draw the line where most
    /// answers are right.
    /// </summary>
    /// <param name="protocol"><see cref="Protocol.ANotA"/> or <see cref="Protocol.SameDifferent"/>.</param>
    /// <param name="alpha">The chance of showing a difference that is not there, above 0 and below 1.</param>
    /// <param name="power">The chance wanted, above 0 and below 1.</param>
    /// <param name="dPrime">The difference, from 0.2 up.</param>
    /// <exception cref="ArgumentException">The protocol has a known guessing chance.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range, or more than 4000 sets would be needed.</exception>
    public static int SetsNeeded(Protocol protocol, double alpha, double power, double dPrime)
    {
        ArgumentNullException.ThrowIfNull(protocol);
        if (protocol is not IYesNo yesNo)
            throw new ArgumentException($"{protocol.Name} has a known guessing chance; use Power.TastersNeededForDPrime.",
                nameof(protocol));
        Guard.OpenShare(power);
        var (hits, alarms) = yesNo.BestRates(Guard.InRange(dPrime, 0.2, 100));
        // Two normal shares compared, without correction, need fewer than the exact test: a safe place to start from.
        double z = Gauss.Quantile(1 - alpha) + Gauss.Quantile(power), spread = (hits * (1 - hits)) + (alarms * (1 - alarms));
        var start = Math.Max(1, (int)(0.8 * z * Math.Abs(z) * spread / ((hits - alarms) * (hits - alarms))));
        for (var n = start; n <= 2000; n++)
        {
            if (Of(n, alpha, hits, alarms) >= power) return 2 * n;
        }

        throw new ArgumentOutOfRangeException(nameof(dPrime),
            FormattableString.Invariant($"A d-prime of {dPrime} would take more than 4000 sets by {protocol.Name}."));
    }
}
