using SplitBatch.Numbers;
using SplitBatch.Panel.Ballots;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;
using SplitBatch.Panel.Serving;

namespace SplitBatch.Panel.Simulation;

/// <summary>
/// Simulated panels: what tasters of a stated kind would answer. The same seed gives the same answers on any number of cores.
/// </summary>
public static class Simulate
{
    private const int TastingsInABlock = 1 << 16, PanelsInABlock = 256;

    /// <summary>So many single tastings by tasters of one d-prime: how many are right.</summary>
    /// <param name="protocol">The protocol.</param>
    /// <param name="dPrime">Zero or more.</param>
    /// <param name="tastings">How many, in [1, 10^12].</param>
    /// <param name="seed">The seed.</param>
    /// <param name="threads">How many cores at most; null for all. The result does not depend on it.</param>
    public static SimulatedTastings Tastings(Protocol protocol, double dPrime, long tastings, int seed, int? threads = null)
    {
        ArgumentNullException.ThrowIfNull(protocol);
        Guard.NotNegative(dPrime);
        Guard.InRange(tastings, 1, 1_000_000_000_000);
        var kernel = TastingKernels.For(protocol);
        int blocks = (int)((tastings + TastingsInABlock - 1) / TastingsInABlock);
        long correct = 0;
        Blocks(blocks, threads, block =>
        {
            var random = new SeededRandom(seed, block);
            int count = (int)Math.Min(TastingsInABlock, tastings - ((long)block * TastingsInABlock));
            Interlocked.Add(ref correct, kernel(ref random, dPrime, count));
        });
        return new SimulatedTastings(protocol, dPrime, tastings, correct, seed);
    }

    /// <summary>Many panels of the same size: how often each count of correct answers comes up.</summary>
    /// <param name="protocol">The protocol.</param>
    /// <param name="tasters">People in each panel, in [1, 1000].</param>
    /// <param name="panels">How many panels, in [1, 10^8]. The first thousand of ten thousand are the thousand of the same seed.</param>
    /// <param name="seed">The seed.</param>
    /// <param name="model">What the tasters are like; null for people who cannot tell.</param>
    /// <param name="replicates">Sets for each taster, in [1, 20].</param>
    /// <param name="threads">How many cores at most; null for all. The result does not depend on it.</param>
    public static SimulatedPanels Panels(
        Protocol protocol, int tasters, int panels, int seed, SimulatedTasters? model = null, int replicates = 1, int? threads = null)
    {
        ArgumentNullException.ThrowIfNull(protocol);
        Guard.InRange(tasters, 1, Seating.MostTasters);
        Guard.InRange(panels, 1, 100_000_000);
        Guard.InRange(replicates, 1, Seating.MostReplicates);
        model ??= SimulatedTasters.Guessers;
        var taste = new PanelTaster(protocol, model, replicates);
        int blocks = (panels + PanelsInABlock - 1) / PanelsInABlock;
        Dictionary<(int Counted, int Correct), long> outcomes = [];
        object gate = new();
        Blocks(blocks, threads, block =>
        {
            var random = new SeededRandom(seed, block);
            int count = Math.Min(PanelsInABlock, panels - (block * PanelsInABlock));
            var found = new (int Counted, int Correct)[count];
            for (int i = 0; i < count; i++)
            {
                found[i] = taste.Panel(ref random, tasters);
            }
            lock (gate)
            {
                foreach (var outcome in found) outcomes[outcome] = outcomes.GetValueOrDefault(outcome) + 1;
            }
        });
        return new SimulatedPanels(protocol, tasters, replicates, panels, seed, model, outcomes);
    }

    /// <summary>Tries a plan before pouring: lets many panels taste, and judges each as the plan says.</summary>
    /// <param name="plan">A plan with one set for each taster and a known guessing chance.</param>
    /// <param name="model">What the tasters are like; null for people who cannot tell.</param>
    /// <param name="seed">The seed.</param>
    /// <param name="panels">How many panels, in [1, 10^8].</param>
    /// <exception cref="InvalidOperationException">The plan has repeats, which have to be judged taster by taster, or its protocol has no
    /// known guessing chance.</exception>
    public static Rehearsal Rehearse(this PanelPlan plan, SimulatedTasters? model, int seed, int panels = 10_000)
    {
        ArgumentNullException.ThrowIfNull(plan);
        if (plan.Replicates > 1)
            throw new InvalidOperationException("A plan with repeats is judged taster by taster, which many panels at once cannot be; try "
                + "it with one set for each taster.");
        _ = plan.Protocol.Chance;
        var simulated = Panels(plan.Protocol, plan.Tasters, panels, seed, model);
        var shares = Enum.GetValues<PanelAnswer>().ToDictionary(answer => answer, _ => 0.0);
        foreach (var ((counted, correct), times) in simulated.Outcomes)
        {
            if (counted == 0) continue;
            var difference = DifferenceTest.Of(plan.Protocol, counted, correct, plan.Alpha);
            var similarity = SimilarityTest.Of(plan.Protocol, counted, correct, plan.Margin, plan.Beta);
            shares[PanelReading.AnswerOf(difference, similarity)] += (double)times / panels;
        }
        return new Rehearsal(plan, simulated, shares);
    }

    /// <summary>
    /// The ballots that tasters of a stated kind would hand in for a serving plan, in serving sequence; who has left hands in none.
    /// </summary>
    /// <param name="plan">The serving plan.</param>
    /// <param name="model">What the tasters are like; null for people who cannot tell.</param>
    /// <param name="seed">The seed; it is independent of the plan's own.</param>
    public static IReadOnlyList<Ballot> Ballots(this ServingPlan plan, SimulatedTasters? model, int seed)
    {
        ArgumentNullException.ThrowIfNull(plan);
        model ??= SimulatedTasters.Guessers;
        List<Ballot> ballots = [];
        int stream = 0;
        foreach (var taster in plan.Sets.GroupBy(set => set.Taster))
        {
            var random = new SeededRandom(seed, stream++);
            double d = model.DPrime.Draw(ref random);
            if (model.NoShow > 0 && random.NextShare() < model.NoShow) continue;
            foreach (var set in taster.OrderBy(set => set.Number))
            {
                if (set.Replicate > 1 && model.DropOut > 0 && random.NextShare() < model.DropOut) break;
                string[] codes = [.. set.CodedCups.Select(cup => cup.Code)];
                var choice = Perception.Decide(ref random, set.Order, plan.Design, plan.Expected,
                    d * Math.Pow(1 - model.Fatigue, set.Replicate - 1), model);
                ballots.Add(new Ballot(set.Taster, choice.Write(codes, plan.Design)) { Set = set.Number, Session = set.Session });
            }
        }
        return [.. ballots.OrderBy(ballot => ballot.Set)];
    }

    private static void Blocks(int blocks, int? threads, Action<int> work)
    {
        if (threads is { } most) Guard.InRange(most, 1, 1024, nameof(threads));
        if (blocks == 1 || threads == 1)
        {
            for (int block = 0; block < blocks; block++) Looked(block);
        }
        else Parallel.For(0, blocks, new ParallelOptions { MaxDegreeOfParallelism = threads ?? Environment.ProcessorCount }, Looked);

        void Looked(int block)
        {
            LongCall.Look();
            work(block);
        }
    }
}
