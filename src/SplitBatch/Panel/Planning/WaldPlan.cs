using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Planning;

/// <summary>A sequential panel: after each answer, stop for a difference, stop for similarity, or pour on.</summary>
/// <remarks>
/// The two lines are Wald's; the rates they promise are approximate, because counts are whole and a real panel must end some day.
/// <see cref="At"/> gives the true ones. Everything is fixed before the first pour.
/// <para>Ref. A. Wald (1947), Sequential Analysis; ISO 16820.</para>
/// </remarks>
public sealed record WaldPlan
{
    private WaldPlan()
    {
    }

    /// <summary>The protocol; one-sided, with a known guessing chance.</summary>
    public required Protocol Protocol { get; init; }

    /// <summary>The share of discriminators that may be called similar, usually 0.</summary>
    public required double None { get; init; }

    /// <summary>The share of discriminators that matters.</summary>
    public required double Margin { get; init; }

    /// <summary>The nominal chance of stopping for a difference when the share is <see cref="None"/>.</summary>
    public required double Alpha { get; init; }

    /// <summary>The nominal chance of stopping for similarity when the share is <see cref="Margin"/>.</summary>
    public required double Beta { get; init; }

    /// <summary>The last taster: a panel still between the lines then is undecided.</summary>
    public required int LastTaster { get; init; }

    /// <summary>The share of right answers at <see cref="None"/>.</summary>
    public double CorrectAtNone => Protocol.CorrectFromDiscriminators(None);

    /// <summary>The share of right answers at <see cref="Margin"/>.</summary>
    public double CorrectAtMargin => Protocol.CorrectFromDiscriminators(Margin);

    /// <summary>Right answers per taster along both lines.</summary>
    public double Slope => Math.Log((1 - CorrectAtNone) / (1 - CorrectAtMargin)) / Scale;

    /// <summary>Where the line of similarity starts, below zero.</summary>
    public double SimilarIntercept => Math.Log(Beta / (1 - Alpha)) / Scale;

    /// <summary>Where the line of difference starts, above zero.</summary>
    public double DifferentIntercept => Math.Log((1 - Beta) / Alpha) / Scale;

    private double Scale => Math.Log(CorrectAtMargin * (1 - CorrectAtNone) / (CorrectAtNone * (1 - CorrectAtMargin)));

    /// <summary>Fixes a sequential plan.</summary>
    /// <param name="protocol">A one-sided protocol with a known guessing chance.</param>
    /// <param name="margin">The share of discriminators that matters, above <paramref name="none"/> and below 1.</param>
    /// <param name="alpha">Nominal chance of a false difference, above 0 and below 0.5.</param>
    /// <param name="beta">Nominal chance of a false similarity, above 0 and below 0.5.</param>
    /// <param name="lastTaster">Where the panel ends in any case, at least 1.</param>
    /// <param name="none">The share of discriminators that may be called similar.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    /// <exception cref="ArgumentException">The protocol is two-sided.</exception>
    public static WaldPlan Of(Protocol protocol, double margin, double alpha = 0.05, double beta = 0.05, int lastTaster = 500,
        double none = 0)
    {
        ArgumentNullException.ThrowIfNull(protocol);
        if (protocol.Sides != 1)
            throw new ArgumentException($"A sequential plan is one-sided; {protocol.Name} is not. Use {Protocol.PairedDirectional.Name} "
                + $"with a direction fixed beforehand.", nameof(protocol));
        _ = protocol.Chance;
        Guard.Share(none);
        Guard.InRange(margin, none + 0.01, 0.999);
        Guard.InRange(Guard.OpenShare(alpha), 0, 0.499, nameof(alpha));
        Guard.InRange(Guard.OpenShare(beta), 0, 0.499, nameof(beta));
        Guard.InRange(lastTaster, 1, 100_000);
        return new() { Protocol = protocol, None = none, Margin = margin, Alpha = alpha, Beta = beta, LastTaster = lastTaster };
    }

    /// <summary>The largest count that stops for similarity after so many tasters; -1 where none does.</summary>
    /// <param name="tasters">Answers so far, zero or more.</param>
    public int SimilarAt(int tasters)
    {
        Guard.NotNegative(tasters);
        var line = (Slope * tasters) + SimilarIntercept;
        return line < -1e-9 ? -1 : (int)Math.Floor(line + 1e-9);
    }

    /// <summary>
    /// The smallest count that stops for a difference after so many tasters; above <paramref name="tasters"/> where none does.
    /// </summary>
    /// <param name="tasters">Answers so far, zero or more.</param>
    public int DifferentAt(int tasters) => (int)Math.Ceiling((Slope * Guard.NotNegative(tasters)) + DifferentIntercept - 1e-9);

    /// <summary>Follows answers in the order in which they were given until a line is crossed.</summary>
    /// <param name="answers">True for a right answer.</param>
    public WaldPath Follow(IEnumerable<bool> answers)
    {
        ArgumentNullException.ThrowIfNull(answers);
        var steps = new List<WaldStep>();
        int tasters = 0, correct = 0, unused = 0;
        var decision = SequentialDecision.PourOn;
        foreach (var right in answers)
        {
            if (decision != SequentialDecision.PourOn)
            {
                unused++;
                continue;
            }

            tasters++;
            if (right) correct++;
            decision = correct <= SimilarAt(tasters) ? SequentialDecision.Similar
                : correct >= DifferentAt(tasters) ? SequentialDecision.Different
                : tasters == LastTaster ? SequentialDecision.Undecided
                : SequentialDecision.PourOn;
            steps.Add(new(tasters, correct, SimilarAt(tasters), DifferentAt(tasters)));
        }

        return new(this, decision, tasters, correct, steps, unused);
    }

    /// <summary>
    /// Both lines as counts for each number of tasters up to the last, for a chart; <see cref="WaldStep.Correct"/> is 0 throughout.
    /// </summary>
    public IReadOnlyList<WaldStep> Lines =>
        [.. Enumerable.Range(1, LastTaster).Select(n => new WaldStep(n, 0, SimilarAt(n), DifferentAt(n)))];

    /// <summary>
    /// What the plan truly does at a share of discriminators: chances of each end and expected panel size, by exact dynamic programming
    /// over counts.
    /// </summary>
    /// <param name="discriminators">The true share, in [0, 1].</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is not a share.</exception>
    public WaldCharacteristic At(double discriminators)
    {
        var p = Protocol.CorrectFromDiscriminators(discriminators);
        // alive[x]: the chance of x right so far without having stopped.
        var alive = new double[LastTaster + 2];
        alive[0] = 1;
        double similar = 0, different = 0, size = 0, remaining = 1;
        for (var n = 1; n <= LastTaster && remaining > 0; n++)
        {
            size += remaining;
            remaining = 0;
            int low = SimilarAt(n), high = DifferentAt(n);
            for (var x = n; x >= 0; x--)
            {
                var chance = (alive[x] * (1 - p)) + (x > 0 ? alive[x - 1] * p : 0);
                alive[x] = 0;
                if (chance == 0) continue;
                if (x <= low) similar += chance;
                else if (x >= high) different += chance;
                else
                {
                    alive[x] = chance;
                    remaining += chance;
                }
            }
        }

        return new(discriminators, different, similar, remaining, size);
    }

    /// <summary>What the plan does over a range of true shares, for a chart.</summary>
    /// <param name="points">How many shares, at least 2, evenly spaced from 0 to twice the margin (at most 1).</param>
    public IReadOnlyList<WaldCharacteristic> Curve(int points = 25)
    {
        Guard.InRange(points, 2, 1000);
        var end = Math.Min(1, 2 * Margin);
        return [.. Enumerable.Range(0, points).Select(i => At(end * i / (points - 1)))];
    }

    /// <summary>
    /// For example <c>triangle, sequential: ... true rates 4.1 % and 4.5 %; on average 19 tasters when there is nothing, 21 at the
    /// margin.</c>
    /// </summary>
    public override string ToString()
    {
        WaldCharacteristic none = At(None), margin = At(Margin);
        return FormattableString.Invariant(
            $"{Protocol.Name}, sequential to at most {LastTaster}: a false difference {Printed.Percent(none.Different)}, a missed margin ")
                + FormattableString.Invariant($"of {Printed.ChosenPercent(Margin)} called similar {Printed.Percent(margin.Similar)}; on ")
                + FormattableString.Invariant($"average {Printed.Expected(none.Tasters)} tasters when there is nothing, ")
                + FormattableString.Invariant($"{Printed.Expected(margin.Tasters)} at the margin.");
    }
}
