using MathNet.Numerics;
using SplitBatch.Numbers;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Counting;

/// <summary>What a count says about the share of discriminators to someone who starts from a stated prior.</summary>
/// <remarks>
/// The prior of the share of discriminators is a beta distribution. With guessing chance g the likelihood (g + (1 - g) s)^x ((1 - g)(1 -
/// s))^(n - x) is a sum of powers of s with positive weights, so the posterior is exactly a mixture of beta distributions; no sampling is
/// done. For a two-sided protocol either direction is taken to be equally likely beforehand.
/// </remarks>
public sealed record BayesReading
{
    private readonly double[] weights;
    private readonly double[] first;
    private readonly double[] second;

    private BayesReading(Protocol protocol, int tasters, int correct, double margin, double priorA, double priorB)
    {
        (Protocol, Tasters, Correct, Margin, PriorA, PriorB) = (protocol, tasters, correct, margin, priorA, priorB);
        double g = protocol.Chance;
        var log = new List<double>();
        var a = new List<double>();
        var b = new List<double>();
        foreach (var x in protocol.Sides == 1 ? new[] { correct } : [correct, tasters - correct])
        {
            for (var i = 0; i <= x; i++)
            {
                a.Add(priorA + i);
                b.Add(priorB + tasters - x);
                log.Add(SpecialFunctions.BinomialLn(x, i) + ((x - i) * Math.Log(g)) + ((tasters - x + i) * Math.Log(1 - g))
                    + SpecialFunctions.BetaLn(a[^1], b[^1]) - SpecialFunctions.BetaLn(priorA, priorB)
                    - (protocol.Sides == 2 ? Math.Log(2) : 0));
            }
        }

        var largest = log.Max();
        var raw = log.Select(l => Math.Exp(l - largest)).ToArray();
        var sum = raw.Sum();
        weights = [.. raw.Select(w => w / sum)];
        first = [.. a];
        second = [.. b];
        BayesFactor = Math.Exp(largest + Math.Log(sum) - (correct * Math.Log(g)) - ((tasters - correct) * Math.Log(1 - g)));
    }

    /// <summary>The protocol.</summary>
    public Protocol Protocol { get; }

    /// <summary>Sets tasted.</summary>
    public int Tasters { get; }

    /// <summary>Right answers.</summary>
    public int Correct { get; }

    /// <summary>The share of discriminators that would matter.</summary>
    public double Margin { get; }

    /// <summary>First parameter of the beta prior of the share of discriminators; 1 and 1 is flat.</summary>
    public double PriorA { get; }

    /// <summary>Second parameter of the beta prior.</summary>
    public double PriorB { get; }

    /// <summary>
    /// How much better the count is foretold by some share of discriminators from the prior than by guessing alone: above 1 speaks for a
    /// difference, below 1 against.
    /// </summary>
    public double BayesFactor { get; }

    /// <summary>The posterior mean of the share of discriminators.</summary>
    public double Mean => weights.Select((w, i) => w * first[i] / (first[i] + second[i])).Sum();

    /// <summary>The chance, given prior and count, that the share of discriminators exceeds the margin.</summary>
    public double ChanceAboveMargin => ChanceAbove(Margin);

    /// <summary>Reads a count from a prior.</summary>
    /// <param name="protocol">A protocol with a known guessing chance.</param>
    /// <param name="tasters">Sets tasted, at least 1.</param>
    /// <param name="correct">Right answers, from 0 to <paramref name="tasters"/>.</param>
    /// <param name="margin">The share of discriminators that would matter, above 0 and below 1.</param>
    /// <param name="priorA">First parameter of the beta prior, above 0; 1 and 1 holds every share equally likely.</param>
    /// <param name="priorB">Second parameter, above 0; (1, 9) expects about 10 % discriminators.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static BayesReading Of(Protocol protocol, int tasters, int correct, double margin, double priorA = 1, double priorB = 1)
    {
        ArgumentNullException.ThrowIfNull(protocol);
        Counts.Check(correct, tasters);
        return new(protocol, tasters, correct, Guard.OpenShare(margin), Guard.Positive(priorA), Guard.Positive(priorB));
    }

    /// <summary>The chance, given prior and count, that the share of discriminators exceeds a value.</summary>
    /// <param name="discriminators">A share in [0, 1].</param>
    public double ChanceAbove(double discriminators)
    {
        Guard.Share(discriminators);
        if (discriminators is 0 or 1) return 1 - discriminators;
        // I(1 - s; b, a) is the upper tail itself, so that small chances keep their digits.
        return weights.Select((w, i) => w < 1e-18 ? 0 : w * SpecialFunctions.BetaRegularized(second[i], first[i], 1 - discriminators))
            .Sum();
    }

    /// <summary>The equal-tailed credible interval of the share of discriminators.</summary>
    /// <param name="level">Level of credibility, above 0 and below 1.</param>
    public Interval Credible(double level = 0.95)
    {
        var tail = (1 - Guard.OpenShare(level)) / 2;
        return new(Quantile(tail), Quantile(1 - tail), level);
    }

    /// <summary>The density of the posterior over the share of discriminators, for a chart.</summary>
    /// <param name="points">How many shares, evenly spaced strictly between 0 and 1, at least 2.</param>
    public IReadOnlyList<(double Discriminators, double Density)> Density(int points = 101)
    {
        Guard.InRange(points, 2, 10_000);
        return [.. Enumerable.Range(0, points).Select(i => (i + 0.5) / points).Select(s => (s, weights
            .Select((w,
                i) => w * Math.Exp(((first[i] - 1) * Math.Log(s)) + ((second[i] - 1) * Math.Log(1 - s))
                    - SpecialFunctions.BetaLn(first[i], second[i])))
            .Sum()))];
    }

    /// <summary>
    /// For example <c>From a flat prior, 8 of 18 (triangle): the share of discriminators is about 22 % (1.4 to 51 %, 95 %); the chance
    /// that it exceeds 30 % is 26 %.</c>
    /// </summary>
    public override string ToString()
    {
        var prior = PriorA == 1 && PriorB == 1 ? "a flat prior" : FormattableString.Invariant($"a Beta({PriorA}, {PriorB}) prior");
        var interval = Credible();
        return FormattableString.Invariant(
            $"From {prior}, {Correct} of {Tasters} ({Protocol.Name}): the share of discriminators is about {Printed.Percent(Mean)} ")
                + FormattableString.Invariant($"({Printed.Percent(interval.Low)} to {Printed.Percent(interval.High)}, 95 %); the chance ")
                + FormattableString.Invariant($"that it exceeds {Printed.ChosenPercent(Margin)} is {Printed.Percent(ChanceAboveMargin)}; ")
                + FormattableString.Invariant($"Bayes factor for a difference {Printed.Times(BayesFactor)}.");
    }

    private double Quantile(double chance) => Root.Of(s => 1 - ChanceAbove(s) - chance, 0, 1);
}
