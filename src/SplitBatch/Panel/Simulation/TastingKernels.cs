using System.Runtime.CompilerServices;
using SplitBatch.Numbers;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Simulation;

/// <summary>
/// Counts correct answers over many tastings of one d-prime, one small loop per protocol. The intensity of each cup is a normal
/// draw with standard deviation 1, mean 0 for the one beer and d-prime for the other; the answer follows the protocol's own rule.
/// Positions do not matter here; <see cref="Perception"/> is the same in full, cup by cup.
/// </summary>
/// <remarks>Decision rules as in D. M. Ennis, The power of sensory discrimination methods, J. Sens. Stud. 8 (1993), 353-370.</remarks>
internal static class TastingKernels
{
    internal delegate int Kernel(ref SeededRandom random, double d, int tastings);

    internal static Kernel For(Protocol protocol) => protocol.Name switch
    {
        "triangle" => Triangle,
        "duo-trio" or "duo-trio constant reference" => DuoTrio,
        "tetrad" => Tetrad,
        "paired directional" or "paired two-sided" => Paired,
        "3-AFC" => ThreeAfc,
        "two-out-of-five" => TwoOutOfFive,
        "A-not-A" => OwnOrNot,
        "same-different" => SameOrDifferent,
        _ => throw new ArgumentException($"No simulation is known for {protocol.Name}.", nameof(protocol)),
    };

    /// <summary>
    /// The distance from which two cups are called different, at which most answers are right: cosh(d tau / 2) = exp(d^2 / 4).
    /// </summary>
    internal static double BestTau(double d)
    {
        if (d < 1e-6) return Math.Sqrt(2);
        double a = d * d / 4;
        return 2 / d * (a + Math.Log(1 + Math.Sqrt(1 - Math.Exp(-2 * a))));
    }

    /// <summary>Right when the two like cups are nearer to each other than either is to the odd one.</summary>
    private static int Triangle(ref SeededRandom random, double d, int tastings)
    {
        var own = random;
        int correct = 0;
        for (int i = 0; i < tastings; i++)
        {
            double x = Ziggurat.Next(ref own), y = Ziggurat.Next(ref own), odd = Ziggurat.Next(ref own) + d;
            double like = Math.Abs(x - y);
            correct += Flag(like < Math.Abs(x - odd)) & Flag(like < Math.Abs(y - odd));
        }
        random = own;
        return correct;
    }

    /// <summary>Right when the matching cup is nearer to the reference.</summary>
    private static int DuoTrio(ref SeededRandom random, double d, int tastings)
    {
        var own = random;
        int correct = 0;
        for (int i = 0; i < tastings; i++)
        {
            double reference = Ziggurat.Next(ref own), match = Ziggurat.Next(ref own), other = Ziggurat.Next(ref own) + d;
            correct += Flag(Math.Abs(match - reference) < Math.Abs(other - reference));
        }
        random = own;
        return correct;
    }

    /// <summary>Right when the two weakest cups are of one beer.</summary>
    private static int Tetrad(ref SeededRandom random, double d, int tastings)
    {
        var own = random;
        int correct = 0;
        for (int i = 0; i < tastings; i++)
        {
            double a = Ziggurat.Next(ref own), b = Ziggurat.Next(ref own), x = Ziggurat.Next(ref own) + d, y = Ziggurat.Next(ref own) + d;
            correct += Flag(Math.Max(a, b) < Math.Min(x, y)) | Flag(Math.Max(x, y) < Math.Min(a, b));
        }
        random = own;
        return correct;
    }

    /// <summary>Right when the stronger beer seems stronger.</summary>
    private static int Paired(ref SeededRandom random, double d, int tastings)
    {
        var own = random;
        int correct = 0;
        for (int i = 0; i < tastings; i++) correct += Flag(Ziggurat.Next(ref own) < Ziggurat.Next(ref own) + d);
        random = own;
        return correct;
    }

    /// <summary>Right when the stronger beer seems strongest.</summary>
    private static int ThreeAfc(ref SeededRandom random, double d, int tastings)
    {
        var own = random;
        int correct = 0;
        for (int i = 0; i < tastings; i++)
        {
            double x = Ziggurat.Next(ref own), y = Ziggurat.Next(ref own);
            correct += Flag(Math.Max(x, y) < Ziggurat.Next(ref own) + d);
        }
        random = own;
        return correct;
    }

    /// <summary>Right when the grouping into two and three with the smallest sum of squares within the groups is the true one.</summary>
    private static int TwoOutOfFive(ref SeededRandom random, double d, int tastings)
    {
        Span<double> cups = stackalloc double[5];
        int correct = 0;
        for (int i = 0; i < tastings; i++)
        {
            for (int k = 0; k < 5; k++) cups[k] = Ziggurat.Next(ref random) + (k < 2 ? d : 0);
            var (first, second) = Perception.BestPair(cups);
            correct += Flag(first < 2) & Flag(second < 2);
        }
        return correct;
    }

    /// <summary>
    /// Right when the cup falls on its own side of the line halfway between the beers; either beer is served half of the time.
    /// </summary>
    private static int OwnOrNot(ref SeededRandom random, double d, int tastings)
    {
        int correct = 0;
        for (int i = 0; i < tastings; i++) correct += Flag(Ziggurat.Next(ref random) < d / 2);
        return correct;
    }

    /// <summary>
    /// Right when two cups of one beer lie closer than tau and two of both beers further apart; half of the sets are of each kind.
    /// </summary>
    private static int SameOrDifferent(ref SeededRandom random, double d, int tastings)
    {
        double tau = BestTau(d);
        int correct = 0;
        for (int i = 0; i < tastings; i++)
        {
            bool different = (random.NextBits() >> 63) != 0;
            double apart = Math.Abs(Ziggurat.Next(ref random) - Ziggurat.Next(ref random) - (different ? d : 0));
            correct += Flag(apart > tau == different);
        }
        return correct;
    }

    /// <summary>1 or 0 without a jump.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static int Flag(bool yes) => Unsafe.BitCast<bool, byte>(yes);
}
