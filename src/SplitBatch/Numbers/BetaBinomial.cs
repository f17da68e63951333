using MathNet.Numerics;

namespace SplitBatch.Numbers;

/// <summary>
/// Right answers of tasters who differ in ability: the binomial share varies from taster to taster as a beta distribution.
/// </summary>
/// <remarks>
/// With <see cref="Chance"/> 0 this is the plain beta-binomial of the share of right answers. With a guessing chance g it is the
/// chance-corrected one: ability s is beta distributed on [0, 1] and the share right is g + (1 - g) s, so nobody is taken to be worse
/// than a guesser.
/// <para>Ref. J. Bi (2006), Sensory Discrimination Tests and Measurements, as quoted in Gacula et al. (2009); Brockhoff (2003) for the
/// corrected form.</para>
/// </remarks>
/// <param name="Mean">Mean of the varying share, in [0, 1]: of right answers, or of ability in the corrected form.</param>
/// <param name="Overdispersion">gamma in [0, 1): 0 when all tasters are alike, near 1 when each is always right or never. gamma = 1/(a +
/// b + 1).</param>
/// <param name="Chance">The guessing chance, in [0, 1); 0 for the plain form.</param>
public sealed record BetaBinomial(double Mean, double Overdispersion, double Chance = 0)
{
    /// <summary>First parameter of the beta distribution; infinite when gamma is 0.</summary>
    public double A => Mean * ((1 / Overdispersion) - 1);

    /// <summary>Second parameter of the beta distribution; infinite when gamma is 0.</summary>
    public double B => (1 - Mean) * ((1 / Overdispersion) - 1);

    /// <summary>The mean share of right answers.</summary>
    public double CorrectShare => Chance + ((1 - Chance) * Mean);

    /// <summary>The chance that a taster is right in <paramref name="correct"/> of <paramref name="sets"/>.</summary>
    /// <param name="correct">Any whole number.</param>
    /// <param name="sets">Zero or more.</param>
    public double Probability(int correct, int sets) => Math.Exp(LogProbability(correct, sets));

    /// <summary>How many times larger the variance of the pooled share is than for as many single tasters: 1 + (r - 1) gamma.</summary>
    /// <param name="setsPerTaster">Mean sets per taster, at least 1.</param>
    public double DesignEffect(double setsPerTaster) => 1 + ((Guard.InRange(setsPerTaster, 1, double.MaxValue) - 1) * Overdispersion);

    /// <summary>Natural logarithm of <see cref="Probability"/>, binomial coefficients included.</summary>
    /// <inheritdoc cref="Probability"/>
    public double LogProbability(int correct, int sets)
    {
        Guard.NotNegative(sets);
        if (correct < 0 || correct > sets) return double.NegativeInfinity;
        return BetaBinomialTerm.Of(correct, sets, Guard.Share(Mean), Guard.InRange(Overdispersion, 0, 0.999999999) / (1 - Overdispersion),
            Chance).Log;
    }
}

/// <summary>One taster's log-probability and its derivatives by the mean and by theta = gamma / (1 - gamma).</summary>
/// <param name="Log">The logarithm.</param>
/// <param name="ByMean">Derivative by the mean.</param>
/// <param name="ByTheta">Derivative by theta.</param>
internal readonly record struct BetaBinomialTerm(double Log, double ByMean, double ByTheta)
{
    /// <summary>In products of rising steps, which stay finite when theta is 0 and the beta distribution shrinks to a point.</summary>
    public static BetaBinomialTerm Of(int x, int n, double mean, double theta, double chance)
    {
        var failures = n - x;
        if (chance == 0)
        {
            var only = Component(x, failures, mean, theta);
            return only with { Log = only.Log + SpecialFunctions.BinomialLn(n, x) };
        }

        // Of x right answers i were known and x - i guessed.
        var parts = new BetaBinomialTerm[x + 1];
        var largest = double.NegativeInfinity;
        for (var i = 0; i <= x; i++)
        {
            var part = Component(i, failures, mean, theta);
            parts[i] = part with
            {
                Log = part.Log + SpecialFunctions.BinomialLn(x, i) + ((x - i) * Math.Log(chance))
                    + ((failures + i) * Math.Log(1 - chance)),
            };
            largest = Math.Max(largest, parts[i].Log);
        }

        double sum = 0, byMean = 0, byTheta = 0;
        foreach (var part in parts)
        {
            var weight = Math.Exp(part.Log - largest);
            if (weight == 0) continue;
            sum += weight;
            byMean += weight * part.ByMean;
            byTheta += weight * part.ByTheta;
        }

        return new(largest + Math.Log(sum) + SpecialFunctions.BinomialLn(n, x), byMean / sum, byTheta / sum);
    }

    private static BetaBinomialTerm Component(int known, int missed, double mean, double theta)
    {
        double log = 0, byMean = 0, byTheta = 0;
        for (var j = 0; j < known; j++)
        {
            var step = mean + (j * theta);
            log += Math.Log(step);
            byMean += 1 / step;
            byTheta += j / step;
        }

        for (var j = 0; j < missed; j++)
        {
            var step = 1 - mean + (j * theta);
            log += Math.Log(step);
            byMean -= 1 / step;
            byTheta += j / step;
        }

        for (var j = 0; j < known + missed; j++)
        {
            var step = 1 + (j * theta);
            log -= Math.Log(step);
            byTheta -= j / step;
        }

        return new(log, byMean, byTheta);
    }
}
