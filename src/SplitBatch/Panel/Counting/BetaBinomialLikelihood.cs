using MathNet.Numerics;
using SplitBatch.Numbers;

namespace SplitBatch.Panel.Counting;

/// <summary>The likelihood of tasters' counts over mean and theta, and the way up it.</summary>
internal sealed class BetaBinomialLikelihood
{
    private readonly (TasterCount Count, int Times)[] groups;
    private readonly double chance;

    public BetaBinomialLikelihood(IEnumerable<TasterCount> counts, double chance)
    {
        groups = [.. counts.GroupBy(c => c).Select(g => (g.Key, g.Count()))];
        this.chance = chance;
    }

    /// <summary>The log likelihood, binomial coefficients included.</summary>
    public double Log(double mean, double theta) => Sum(mean, theta).Log;

    /// <summary>
    /// Climbs from a start to the top near it, by Newton's steps in logit(mean) and log(theta), damped until each step rises.
    /// </summary>
    public (double Mean, double Theta, double Log) Climb(double mean, double theta)
    {
        double u = Math.Log(mean / (1 - mean)), v = Math.Log(theta), damping = 1e-3;
        var here = At(u, v);
        for (var i = 0; i < 300 && damping < 1e12; i++)
        {
            const double step = 1e-5;
            Slope right = At(u + step, v), left = At(u - step, v), up = At(u, v + step), down = At(u, v - step);
            double huu = (right.U - left.U) / (2 * step), hvv = (up.V - down.V) / (2 * step), huv = (up.U - down.U) / (2 * step);
            double a = -huu + damping, b = -hvv + damping, determinant = (a * b) - (huv * huv);
            if (a <= 0 || determinant <= 0)
            {
                damping *= 10;
                continue;
            }

            double du = ((b * here.U) + (huv * here.V)) / determinant, dv = ((huv * here.U) + (a * here.V)) / determinant;
            double nextU = Math.Clamp(u + Math.Clamp(du, -2, 2), -30, 30), nextV = Math.Clamp(v + Math.Clamp(dv, -2, 2), -25, 16);
            var next = At(nextU, nextV);
            if (!(next.Log >= here.Log))
            {
                damping *= 10;
                continue;
            }

            var moved = Math.Abs(nextU - u) + Math.Abs(nextV - v);
            (u, v, here, damping) = (nextU, nextV, next, Math.Max(1e-12, damping / 10));
            if (moved < 1e-11) break;
        }

        return (SpecialFunctions.Logistic(u), Math.Exp(v), here.Log);
    }

    /// <summary>The best log likelihood at a given theta, over all means.</summary>
    public double ProfileOfTheta(double theta)
    {
        var top = Top(u => Log(SpecialFunctions.Logistic(u), theta), -15, 15);
        return Log(SpecialFunctions.Logistic(top), theta);
    }

    // A coarse look for the region of the top, then golden section.
    private static double Top(Func<double, double> f, int low, int high)
    {
        double best = Enumerable.Range(low, high - low + 1).MaxBy(v => f(v));
        var (left, right) = (best - 1, best + 1);
        var ratio = (Math.Sqrt(5) - 1) / 2;
        double c = right - (ratio * (right - left)), d = left + (ratio * (right - left)), fc = f(c), fd = f(d);
        while (right - left > 1e-5) // the top is flat: this is about 1e-10 in f
        {
            if (fc > fd)
            {
                (right, d, fd) = (d, c, fc);
                c = right - (ratio * (right - left));
                fc = f(c);
            }
            else
            {
                (left, c, fc) = (c, d, fd);
                d = left + (ratio * (right - left));
                fd = f(d);
            }
        }

        return (left + right) / 2;
    }

    private Slope At(double u, double v)
    {
        double mean = SpecialFunctions.Logistic(u), theta = Math.Exp(v);
        var sum = Sum(mean, theta);
        return new(sum.Log, sum.ByMean * mean * (1 - mean), sum.ByTheta * theta);
    }

    private BetaBinomialTerm Sum(double mean, double theta)
    {
        double log = 0, byMean = 0, byTheta = 0;
        foreach (var (count, times) in groups)
        {
            var term = BetaBinomialTerm.Of(count.Correct, count.Sets, mean, theta, chance);
            log += times * term.Log;
            byMean += times * term.ByMean;
            byTheta += times * term.ByTheta;
        }

        return new(log, byMean, byTheta);
    }

    private readonly record struct Slope(double Log, double U, double V);
}
