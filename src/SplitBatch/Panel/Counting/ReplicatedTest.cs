using System.Globalization;
using MathNet.Numerics.Distributions;
using SplitBatch.Numbers;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Counting;

/// <summary>Several sets by each taster: what the pooled count may and may not say, and whether tasters differ.</summary>
/// <remarks>
/// If nobody can tell the beers apart, every set is an independent guess, so the pooled count is a sound test of a difference.
/// It is not sound for similarity or for the size of the difference, because repeats by one taster are not new tasters
/// (ISO 10399, 6.2); there the chance-corrected beta-binomial is used.
/// </remarks>
public sealed record ReplicatedTest
{
    private readonly TasterCount[] counts;
    private readonly Leanings? leanings;

    private ReplicatedTest(Protocol protocol, TasterCount[] counts, double alpha)
    {
        this.counts = counts;
        Protocol = protocol;
        Pooled = DifferenceTest.Of(protocol, counts.Sum(c => c.Sets), counts.Sum(c => c.Correct), alpha);
        Plain = BetaBinomialFit.Of(counts);
        Corrected = protocol.Sides == 1 ? BetaBinomialFit.Of(counts, protocol.Chance) : Plain;
        leanings = protocol.Sides == 1 ? null : new Leanings(counts);
        TaroneZ = BetaBinomialFit.TaroneZ(counts);
    }

    /// <summary>The protocol.</summary>
    public Protocol Protocol { get; }

    /// <summary>People.</summary>
    public int Tasters => counts.Length;

    /// <summary>Sets, all tasters together.</summary>
    public int Sets => Pooled.Tasters;

    /// <summary>The test of a difference on the pooled count; its intervals hold only if tasters do not differ.</summary>
    public DifferenceTest Pooled { get; }

    /// <summary>The beta-binomial of the share of right answers.</summary>
    public BetaBinomialFit Plain { get; }

    /// <summary>The chance-corrected beta-binomial; its mean is the share of ability above guessing. For a two-sided protocol, in which nobody is right, it is <see cref="Plain"/>.</summary>
    public BetaBinomialFit Corrected { get; }

    /// <summary>Tarone's score statistic; NaN where it is not defined.</summary>
    public double TaroneZ { get; }

    /// <summary>The test of a difference. One-sided: that of the pooled count, since nobody's repeats depend on one another if all guess. Two-sided: exact, by the sign of each taster's net leaning, so that one person's repeats count once.</summary>
    public double PValue => leanings?.PValue ?? Pooled.PValue;

    /// <summary>Whether a difference is shown at the level of <see cref="Pooled"/>.</summary>
    public bool DifferenceShown => leanings is null ? Pooled.DifferenceShown : ExactBinomial.Reaches(PValue, Pooled.Alpha);

    /// <summary>Whether tasters of a two-sided protocol are shown to lean apart: some find the one beer stronger, some the other. That is a difference perceived, though not one in which people agree.</summary>
    public bool LeanApart => leanings is not null && Plain.PValue < 0.05;

    /// <summary>Mean sets per taster.</summary>
    public double SetsPerTaster => (double)Sets / Tasters;

    /// <summary>How many single tasters the sets are worth for the size of the difference: sets over the design effect.</summary>
    /// <remarks>
    /// The high end takes the fitted overdispersion of <see cref="Plain"/>, the low end its one-sided 95 % upper limit by profile likelihood:
    /// a few people can look alike by chance, and then their repeats must not pass for new tasters. Never fewer than the people.
    /// </remarks>
    public Interval WorthTasters
    {
        get
        {
            var high = Math.Max(Tasters, Sets / Plain.Model.DesignEffect(SetsPerTaster));
            var limit = LargestTheta();
            var low = Math.Max(Tasters, Sets / (1 + ((SetsPerTaster - 1) * limit / (1 + limit))));
            return new(low, high);
        }
    }

    /// <summary>Standard error of the pooled share of right answers, tasters' differences included.</summary>
    public double StandardError => Math.Sqrt(
        Plain.Model.Mean * (1 - Plain.Model.Mean) * Plain.Model.DesignEffect(SetsPerTaster) / Sets);

    /// <summary>What must be said when repeats stand beside single tastings; null where every taster had one set.</summary>
    public string? Warning
    {
        get
        {
            if (Sets == Tasters) return null;
            string low = WorthTasters.Low.ToString("0", CultureInfo.InvariantCulture), high = WorthTasters.High.ToString("0", CultureInfo.InvariantCulture);
            return $"{Sets} sets were tasted by {Tasters} {(Tasters == 1 ? "person" : "people")}. That is not {Sets} tasters: the test says whether these people can tell the beers apart; "
                + $"for how many others can, the sets are worth {(low == high ? "about " + low : $"between {low} and {high}")} tasters.";
        }
    }

    /// <summary>Reads several sets by each taster.</summary>
    /// <param name="protocol">A protocol with a known guessing chance.</param>
    /// <param name="tasters">Each taster's sets and right answers (for a two-sided protocol: answers for the one beer); at least one taster.</param>
    /// <param name="alpha">The chance of showing a difference that is not there, above 0 and below 1.</param>
    /// <exception cref="ArgumentException">No tasters.</exception>
    /// <exception cref="ArgumentOutOfRangeException">More right answers than sets.</exception>
    public static ReplicatedTest Of(Protocol protocol, IEnumerable<TasterCount> tasters, double alpha = 0.05)
    {
        ArgumentNullException.ThrowIfNull(protocol);
        return new(protocol, TasterCount.Checked(tasters), alpha);
    }

    /// <summary>The largest mean share of ability above guessing that the counts still allow, by the profile likelihood of the beta-binomial; for a two-sided protocol not less than the share of steady tasters that is still allowed.</summary>
    /// <remarks>
    /// The root of the likelihood ratio is taken as Student's t with one degree of freedom fewer than there are people, not as normal: with
    /// four people the normal one misses a true share in 8 of 100 panels instead of 5 (the project's truth table). With one set for each it is normal. One person allows everything.
    /// </remarks>
    /// <param name="tail">One-sided error, above 0 and below 0.5.</param>
    public double StillAllowed(double tail = 0.05)
    {
        Guard.InRange(Guard.OpenShare(tail), 0, 0.4999, nameof(tail));
        if (Tasters == 1 && Sets > 1) return 1;
        var (likelihood, fit, mean) = Favoured();
        var floor = Floor(fit, tail);
        const double end = 1 - 1e-9;
        var limit = mean >= end || likelihood.Profile(end) >= floor ? 1 : Root.Of(m => likelihood.Profile(m) - floor, mean, end);
        return leanings is null ? limit : Math.Max(Protocol.Discriminators(limit), leanings.SteadyAllowed(tail));
    }

    /// <summary>The interval of the share of discriminators by the profile likelihood, tasters' differences included.</summary>
    /// <param name="level">Level of the interval, above 0 and below 1.</param>
    public Interval DiscriminatorsInterval(double level = 0.95)
    {
        var tail = (1 - Guard.OpenShare(level)) / 2;
        if (Tasters == 1 && Sets > 1) return new(0, 1, level);
        var (likelihood, fit, mean) = Favoured();
        var floor = Floor(fit, tail);
        var start = leanings is null ? 0 : Protocol.Chance;
        const double none = 1e-9;
        var low = mean <= start + none || likelihood.Profile(start + none) >= floor ? start : Root.Of(m => likelihood.Profile(m) - floor, start + none, mean);
        return new(leanings is null ? low : Protocol.Discriminators(low), StillAllowed(tail), level);
    }

    /// <summary>The chance of counts so low if the mean share of ability were as large as the margin: the signed root of the profile likelihood ratio, taken as Student's t; for a two-sided protocol not less than that of so few steady tasters.</summary>
    internal double PValueAgainst(double margin)
    {
        if (Tasters == 1 && Sets > 1) return 1;
        var (likelihood, fit, mean) = Favoured();
        var share = leanings is null ? margin : Protocol.CorrectFromDiscriminators(margin);
        var root = Math.Sqrt(Math.Max(0, 2 * (fit.LogLikelihood - likelihood.Profile(share))));
        var signed = mean < share ? -root : root;
        var chance = Sets == Tasters ? Gauss.Below(signed) : StudentT.CDF(0, 1, Tasters - 1, signed);
        return leanings is null ? chance : Math.Max(chance, leanings.ChanceOfSoFewSteady(margin));
    }

    /// <summary>The log likelihood down to which a share is still allowed.</summary>
    private double Floor(BetaBinomialFit fit, double tail)
    {
        var root = Sets == Tasters ? Gauss.Quantile(1 - tail) : StudentT.InvCDF(0, 1, Tasters - 1, 1 - tail);
        return fit.LogLikelihood - (root * root / 2);
    }

    /// <summary>The likelihood, its fit and the fitted mean; for a two-sided protocol of the answers for the more frequent beer.</summary>
    private (BetaBinomialLikelihood Likelihood, BetaBinomialFit Fit, double Mean) Favoured()
    {
        if (leanings is null) return (new(counts, Protocol.Chance), Corrected, Corrected.Model.Mean);
        var turned = 2 * Pooled.Correct < Sets;
        return (new(turned ? counts.Select(c => new TasterCount(c.Sets, c.Sets - c.Correct)) : counts, 0), Plain, turned ? 1 - Plain.Model.Mean : Plain.Model.Mean);
    }

    private double LargestTheta()
    {
        const double end = 1e6;
        if (!Plain.OverdispersionIdentified) return end;
        var likelihood = new BetaBinomialLikelihood(counts, 0);
        var z = Gauss.Quantile(0.95);
        var floor = Plain.LogLikelihood - (z * z / 2);
        if (likelihood.ProfileOfTheta(end) >= floor) return end;
        var fitted = Math.Max(1e-9, Plain.Model.Overdispersion / (1 - Plain.Model.Overdispersion));
        return Math.Exp(Root.Of(v => likelihood.ProfileOfTheta(Math.Exp(v)) - floor, Math.Log(fitted), Math.Log(end)));
    }

    /// <summary>How many tasters were right so many times, beside what guessing and the fitted spread of abilities would give. For panels in which all had the same number of sets.</summary>
    /// <returns>One row for each count of right answers; empty where tasters had different numbers of sets.</returns>
    public IReadOnlyList<SpreadRow> Spread
    {
        get
        {
            var sets = counts[0].Sets;
            if (counts.Any(c => c.Sets != sets)) return [];
            return [.. Enumerable.Range(0, sets + 1).Select(x => new SpreadRow(
                x,
                counts.Count(c => c.Correct == x),
                Tasters * ExactBinomial.Exactly(x, sets, Protocol.Chance),
                Tasters * Corrected.Model.Probability(x, sets)))];
        }
    }

    /// <summary>The test, whether tasters differ, and the warning about repeats.</summary>
    public override string ToString()
    {
        var shown = DifferenceShown ? "a difference is shown" : "no difference shown, which does not mean the same";
        var counted = leanings is null ? $"{Pooled.Correct} right" : $"{Pooled.Count} alike";
        var text = $"{counted} of {Sets} sets by {Tasters} tasters ({Protocol.Name}): {shown} ({Counts.P(PValue)}).";
        if (Sets == Tasters) return text;
        text += $" {(Corrected.PValue < 0.05 ? "Tasters differ" : "No sign that tasters differ")} ({Counts.P(Corrected.PValue)}). {Warning}";
        if (LeanApart) text += " They lean to different beers: each may perceive a difference, but not the same one.";
        return text;
    }
}

/// <summary>How many tasters were right so many times.</summary>
/// <param name="Correct">Right answers.</param>
/// <param name="Observed">Tasters with that many.</param>
/// <param name="ByGuessing">Tasters expected if all guessed.</param>
/// <param name="Fitted">Tasters expected from the fitted spread of abilities.</param>
public sealed record SpreadRow(int Correct, int Observed, double ByGuessing, double Fitted);
