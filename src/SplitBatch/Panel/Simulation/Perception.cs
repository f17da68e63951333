using SplitBatch.Numbers;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Simulation;

/// <summary>
/// One tasting in full: the intensity of every cup in its position, the decision, and the answer as it would be written.
/// </summary>
internal static class Perception
{
    /// <summary>The answer of one taster to one set.</summary>
    internal static Choice Decide(ref SeededRandom random, ServingOrder order, SetDesign design, Side stronger, double d,
        SimulatedTasters tasters)
    {
        int cups = order.Sides.Length;
        if (tasters.Guessing > 0 && random.NextShare() < tasters.Guessing) return Guess(ref random, cups, design, tasters);

        Span<double> felt = stackalloc double[cups];
        for (int i = 0; i < cups; i++) felt[i] = Ziggurat.Next(ref random) + (order.Sides[i] == stronger ? d : 0);
        felt[0] += tasters.FirstCupLift;
        switch (design.Answer)
        {
            case AnswerKind.OddCup:
                return Choice.Cup(Odd(felt));
            case AnswerKind.MatchingCup:
                double reference = Ziggurat.Next(ref random) + (order.Reference == stronger ? d : 0);
                return Choice.Cup(Math.Abs(felt[0] - reference) < Math.Abs(felt[1] - reference) ? 0 : 1);
            case AnswerKind.StrongerCup:
                return Choice.Cup(Highest(felt));
            case AnswerKind.Pair:
                var (one, other) = cups == 4 ? LowestPair(felt) : BestPair(felt);
                return new Choice(Math.Min(one, other), Math.Max(one, other), false);
            case AnswerKind.OwnOrNot:
                // A is the known beer: on the other side of the line it is taken for the other one.
                return Choice.Word((felt[0] < d / 2) == (stronger == Side.B));
            default:
                return Choice.Word(Math.Abs(felt[0] - felt[1]) <= TastingKernels.BestTau(d));
        }
    }

    private static Choice Guess(ref SeededRandom random, int cups, SetDesign design, SimulatedTasters tasters)
    {
        bool first = tasters.FavouredShare > 0 && random.NextShare() < tasters.FavouredShare;
        if (!design.AnswersByCode) return Choice.Word(first || random.NextBelow(2) == 0);
        int one = first ? 0 : random.NextBelow(cups);
        return design.CodesInAnswer == 1 ? Choice.Cup(one) : new Choice(one, (one + 1 + random.NextBelow(cups - 1)) % cups, false);
    }

    /// <summary>
    /// The two of five that stand apart: the grouping into two and three with the smallest sum of squares within the groups.
    /// </summary>
    internal static (int First, int Second) BestPair(ReadOnlySpan<double> cups)
    {
        int low = 0, low2 = -1, high = 0, high2 = -1;
        double sum = 0;
        for (int i = 0; i < cups.Length; i++)
        {
            sum += cups[i];
            if (cups[i] < cups[low]) low = i;
            if (cups[i] > cups[high]) high = i;
        }
        for (int i = 0; i < cups.Length; i++)
        {
            if (i != low && (low2 < 0 || cups[i] < cups[low2])) low2 = i;
            if (i != high && (high2 < 0 || cups[i] > cups[high2])) high2 = i;
        }
        // The sum of squares within groups is smallest where that between groups is largest; on one line the pair is at an end.
        double mean = sum / cups.Length;
        double below = mean - ((cups[low] + cups[low2]) / 2), above = ((cups[high] + cups[high2]) / 2) - mean;
        return below > above ? (low, low2) : (high, high2);
    }

    private static (int First, int Second) LowestPair(ReadOnlySpan<double> cups)
    {
        int low = 0, low2 = -1;
        for (int i = 1; i < cups.Length; i++)
        {
            if (cups[i] < cups[low]) low = i;
        }
        for (int i = 0; i < cups.Length; i++)
        {
            if (i != low && (low2 < 0 || cups[i] < cups[low2])) low2 = i;
        }
        return (low, low2);
    }

    /// <summary>The cup left over by the nearest two.</summary>
    private static int Odd(ReadOnlySpan<double> cups)
    {
        double ab = Math.Abs(cups[0] - cups[1]), ac = Math.Abs(cups[0] - cups[2]), bc = Math.Abs(cups[1] - cups[2]);
        return ab < ac && ab < bc ? 2 : ac < bc ? 1 : 0;
    }

    private static int Highest(ReadOnlySpan<double> cups)
    {
        int best = 0;
        for (int i = 1; i < cups.Length; i++)
        {
            if (cups[i] > cups[best]) best = i;
        }
        return best;
    }
}
