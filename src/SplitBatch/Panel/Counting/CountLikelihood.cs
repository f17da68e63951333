using SplitBatch.Numbers;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Counting;

/// <summary>How well something foretells a count, against guessing alone. Above 1 speaks for it, below 1 for guessing.</summary>
/// <remarks>
/// The ratio at the margin needs no prior, and is the one to print for "such a difference". A Bayes factor averages over a prior, which
/// has to be named with it. Neither is an error rate. For a two-sided pair either direction is taken to be equally likely beforehand.
/// <para>Ref. R. Royall (1997), Statistical Evidence; R. D. Morey and J. N. Rouder (2011), Psychol. Methods 16, 406 (both from memory;
/// the integral is derived).</para>
/// </remarks>
public static class CountLikelihood
{
    /// <summary>The chance of the count if the difference is just as large as the margin, over that by guessing.</summary>
    /// <param name="protocol">A protocol with a known guessing chance.</param>
    /// <param name="sets">Sets answered, at least 1.</param>
    /// <param name="right">Right answers, from 0 to <paramref name="sets"/>.</param>
    /// <param name="margin">The margin declared.</param>
    /// <exception cref="ArgumentOutOfRangeException">The counts make no sense.</exception>
    /// <exception cref="NotApplicableException">The protocol has no known guessing chance.</exception>
    public static double AtMargin(Protocol protocol, int sets, int right, DeclaredMargin margin)
    {
        ArgumentNullException.ThrowIfNull(margin);
        Counts.Check(right, sets);
        var atMargin = margin.CorrectIn(protocol);
        return Mean(protocol, sets, right, x => Math.Exp(
            ExactBinomial.LogExactly(x, sets, atMargin) - ExactBinomial.LogExactly(x, sets, protocol.Chance)));
    }

    /// <summary>
    /// The chance of the count averaged over shares of tasters who can tell, each share of a range as likely, over that by guessing.
    /// </summary>
    /// <param name="protocol">A protocol with a known guessing chance.</param>
    /// <param name="sets">Sets answered, at least 1.</param>
    /// <param name="right">Right answers, from 0 to <paramref name="sets"/>.</param>
    /// <param name="prior">The range; to be named wherever the factor is printed.</param>
    /// <exception cref="ArgumentOutOfRangeException">The counts make no sense.</exception>
    /// <exception cref="NotApplicableException">The protocol has no known guessing chance.</exception>
    public static double BayesFactor(Protocol protocol, int sets, int right, UniformPrior prior)
    {
        ArgumentNullException.ThrowIfNull(protocol);
        ArgumentNullException.ThrowIfNull(prior);
        Counts.Check(right, sets);
        double low = protocol.CorrectFromDiscriminators(prior.Low), high = protocol.CorrectFromDiscriminators(prior.High);
        return Mean(protocol, sets, right, x => UniformMixture.Factor(x, sets, low, high, protocol.Chance));
    }

    private static double Mean(Protocol protocol, int sets, int right, Func<int, double> factor) =>
        protocol.Sides == 1 ? factor(right) : (factor(right) + factor(sets - right)) / 2;
}

/// <summary>A named prior: every share of tasters who can tell between two ends is held equally likely beforehand.</summary>
public sealed record UniformPrior
{
    private UniformPrior(double low, double high) => (Low, High) = (low, high);

    /// <summary>Every share from 0 to 100 %.</summary>
    public static UniformPrior All { get; } = new(0, 1);

    /// <summary>The smaller end, a share.</summary>
    public double Low { get; }

    /// <summary>The larger end, a share.</summary>
    public double High { get; }

    /// <summary>Every share from the margin to 100 %: a difference that matters.</summary>
    /// <param name="margin">Above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The margin lies outside.</exception>
    public static UniformPrior Above(double margin) => new(Guard.OpenShare(margin), 1);

    /// <summary>Every share from 0 to the margin: a difference that does not matter.</summary>
    /// <inheritdoc cref="Above"/>
    public static UniformPrior Below(double margin) => new(0, Guard.OpenShare(margin));

    /// <summary>The prior in words, for example <c>every share from 30 % to 100 % equally likely</c>.</summary>
    public override string ToString() => $"every share from {Printed.Percent(Low)} to {Printed.Percent(High)} equally likely";
}
