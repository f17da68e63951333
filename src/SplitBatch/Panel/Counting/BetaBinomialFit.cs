using SplitBatch.Numbers;

namespace SplitBatch.Panel.Counting;

/// <summary>
/// A beta-binomial fitted to tasters' counts by maximum likelihood, and how much better it fits than tasters who are all alike.
/// </summary>
/// <param name="Model">The fitted distribution. Its overdispersion is 0 where tasters who are all alike fit best.</param>
/// <param name="LogLikelihood">Of the fitted distribution, binomial coefficients included.</param>
/// <param name="AlikeLogLikelihood">Of the best binomial, the same for all tasters.</param>
/// <param name="OverdispersionIdentified">False where the mean is at its end (nobody above chance, say), so that the data say nothing
/// about how tasters differ.</param>
public sealed record BetaBinomialFit(BetaBinomial Model, double LogLikelihood, double AlikeLogLikelihood, bool OverdispersionIdentified)
{
    private static readonly double[] Starts = [0.05, 0.3, 1.5];

    /// <summary>Twice the gain in log likelihood over tasters who are all alike.</summary>
    public double LikelihoodRatio => Math.Max(0, 2 * (LogLikelihood - AlikeLogLikelihood));

    /// <summary>
    /// The chance of so large a gain if all tasters were alike: half a chi-square with one degree of freedom, because gamma cannot be
    /// negative.
    /// </summary>
    public double PValue => LikelihoodRatio <= 0 ? 1 : Gauss.Below(-Math.Sqrt(LikelihoodRatio));

    /// <summary>Fits the distribution.</summary>
    /// <param name="tasters">Each taster's sets and right answers; at least one.</param>
    /// <param name="chance">The guessing chance for the corrected form, in [0, 1); 0 for the plain form.</param>
    /// <exception cref="ArgumentException">No tasters.</exception>
    /// <exception cref="ArgumentOutOfRangeException">More right answers than sets, or a chance outside its range.</exception>
    public static BetaBinomialFit Of(IEnumerable<TasterCount> tasters, double chance = 0)
    {
        var counts = TasterCount.Checked(tasters);
        Guard.InRange(chance, 0, 0.999);
        var likelihood = new BetaBinomialLikelihood(counts, chance);
        double pooled = (double)counts.Sum(t => t.Correct) / counts.Sum(t => t.Sets);
        var alike = Math.Max(0, (pooled - chance) / (1 - chance));
        var alikeLog = likelihood.Log(alike, 0);
        var canDiffer = counts.Length > 1 && counts.Any(t => t.Sets > 1);
        if (alike is 0 or 1 || !canDiffer) return new(new(alike, 0, chance), alikeLog, alikeLog, OverdispersionIdentified: false);
        var best = Starts.Select(theta => likelihood.Climb(alike, theta)).MaxBy(p => p.Log);
        if (best.Log <= alikeLog + 1e-10) return new(new(alike, 0, chance), alikeLog, alikeLog, OverdispersionIdentified: true);
        return new(new(best.Mean, best.Theta / (1 + best.Theta), chance), best.Log, alikeLog, OverdispersionIdentified: true);
    }

    /// <summary>Tarone's score test for tasters who differ: large positive values speak for overdispersion.</summary>
    /// <remarks>Ref. Tarone (1979), Biometrika 66, 585. Approximately standard normal when all tasters are alike.</remarks>
    /// <param name="tasters">Each taster's sets and right answers; some with two sets or more.</param>
    /// <returns>The statistic, or NaN where all answers are right, all wrong, or nobody had two sets.</returns>
    public static double TaroneZ(IEnumerable<TasterCount> tasters)
    {
        var counts = TasterCount.Checked(tasters);
        double sets = counts.Sum(t => t.Sets), p = counts.Sum(t => t.Correct) / sets;
        var score = counts.Sum(t => Math.Pow(t.Correct - (t.Sets * p), 2)) / (p * (1 - p));
        return (score - sets) / Math.Sqrt(2 * counts.Sum(t => (double)t.Sets * (t.Sets - 1)));
    }

    /// <summary>For example <c>tasters differ: share right 0.50, gamma 0.27 (p = 0.0048)</c>.</summary>
    public override string ToString()
    {
        var mean = FormattableString.Invariant($"{(Model.Chance == 0 ? "share right" : "share of ability above guessing")} ")
            + FormattableString.Invariant($"{Printed.Ratio(Model.Mean)}");
        if (!OverdispersionIdentified) return $"{mean}; how tasters differ cannot be told from these counts";
        return FormattableString.Invariant($"{mean}, gamma {Printed.Ratio(Model.Overdispersion)} ({Printed.PValue(PValue)} against ")
            + FormattableString.Invariant($"tasters who are all alike)");
    }
}
