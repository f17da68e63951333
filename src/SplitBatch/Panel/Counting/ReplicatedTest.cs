using System.Globalization;
using SplitBatch.Numbers;
using SplitBatch.Panel.Liking;
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

    /// <summary>
    /// The chance-corrected beta-binomial; its mean is the share of ability above guessing. For a two-sided protocol, in which nobody is
    /// right, it is <see cref="Plain"/>.
    /// </summary>
    public BetaBinomialFit Corrected { get; }

    /// <summary>Tarone's score statistic; NaN where it is not defined.</summary>
    public double TaroneZ { get; }

    /// <summary>
    /// The test of a difference. One-sided: that of the pooled count, since nobody's repeats depend on one another if all guess.
    /// Two-sided: exact, by the sign of each taster's net leaning, so that one person's repeats count once.
    /// </summary>
    public double PValue => leanings?.PValue ?? Pooled.PValue;

    /// <summary>Whether a difference is shown at the level of <see cref="Pooled"/>.</summary>
    public bool DifferenceShown => leanings is null ? Pooled.DifferenceShown : ExactBinomial.Reaches(PValue, Pooled.Alpha);

    /// <summary>
    /// Whether tasters of a two-sided protocol are shown to lean apart: some find the one beer stronger, some the other. That is a
    /// difference perceived, though not one in which people agree.
    /// </summary>
    public bool LeanApart => leanings is not null && Plain.PValue < 0.05;

    /// <summary>Mean sets per taster.</summary>
    public double SetsPerTaster => (double)Sets / Tasters;

    /// <summary>How many single tasters the sets are worth for the size of the difference: sets over the design effect.</summary>
    /// <remarks>
    /// The high end takes the fitted overdispersion of <see cref="Plain"/>, the low end its one-sided 95 % upper limit by profile
    /// likelihood: a few people can look alike by chance, and then their repeats must not pass for new tasters. Never fewer than the
    /// people.
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
            string low = Printed.Fixed(WorthTasters.Low, 0), high = Printed.Fixed(WorthTasters.High, 0);
            return $"{Sets} sets were tasted by {Tasters} {(Tasters == 1 ? "person" : "people")}. That is not {Sets} tasters: the test "
                + $"says whether these people can tell the beers apart; "
                + $"for how many others can, the sets are worth {(low == high ? "about " + low : $"between {low} and {high}")} tasters.";
        }
    }

    /// <summary>Reads several sets by each taster.</summary>
    /// <param name="protocol">A protocol with a known guessing chance.</param>
    /// <param name="tasters">Each taster's sets and right answers (for a two-sided protocol: answers for the one beer); at least one
    /// taster.</param>
    /// <param name="alpha">The chance of showing a difference that is not there, above 0 and below 1.</param>
    /// <exception cref="ArgumentException">No tasters.</exception>
    /// <exception cref="ArgumentOutOfRangeException">More right answers than sets.</exception>
    public static ReplicatedTest Of(Protocol protocol, IEnumerable<TasterCount> tasters, double alpha = 0.05)
    {
        ArgumentNullException.ThrowIfNull(protocol);
        return new(protocol, TasterCount.Checked(tasters), alpha);
    }

    /// <summary>
    /// The largest mean ability above guessing that the counts still allow; for a two-sided protocol not less than the steadiness of
    /// tasters still allows. 1 for fewer than six people with repeats, from whom no limit follows.
    /// </summary>
    /// <remarks>
    /// Exact for people of whom each can always tell or only guesses, and for people who are all alike: <see cref="PeopleMargin"/>.
    /// </remarks>
    /// <param name="tail">One-sided error, above 0 and below 0.5.</param>
    public double StillAllowed(double tail = 0.05)
    {
        Guard.InRange(Guard.OpenShare(tail), 0, 0.4999, nameof(tail));
        return Math.Max(PeopleMargin.Limit(People, Pooled.Count, tail) ?? 1, leanings?.SteadyAllowed(tail) ?? 0);
    }

    /// <summary>The interval of mean ability, people counted and not sets.</summary>
    /// <param name="level">Level of the interval, above 0 and below 1.</param>
    public Interval DiscriminatorsInterval(double level = 0.95)
    {
        var tail = (1 - Guard.OpenShare(level)) / 2;
        var low = Tasters == 1 && Sets > 1 ? 0 : MeanAbility.Of(People, Pooled.Count, level).Interval.Low;
        return new(low, Math.Max(low, StillAllowed(tail)), level);
    }

    /// <summary>Each taster's sets and right answers.</summary>
    internal IReadOnlyList<TasterCount> PerTaster => counts;

    private IEnumerable<PersonSets> People => counts.Select(taster => new PersonSets(new SetsAtChance(taster.Sets, Protocol.Chance)));

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

    /// <summary>
    /// How many tasters were right so many times, beside what guessing and the fitted spread of abilities would give. For panels in which
    /// all had the same number of sets.
    /// </summary>
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
        var text = $"{counted} of {Sets} sets by {Tasters} tasters ({Protocol.Name}): {shown} ({Printed.PValue(PValue)}).";
        if (Sets == Tasters) return text;
        text += $" {(Corrected.PValue < 0.05 ? "Tasters differ" : "No sign that tasters differ")} ({Printed.PValue(Corrected.PValue)}). "
            + $"{Warning}";
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
