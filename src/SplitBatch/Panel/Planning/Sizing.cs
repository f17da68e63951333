using SplitBatch.Numbers;

namespace SplitBatch.Panel.Planning;

/// <summary>The search for panel sizes behind <see cref="Power"/>: one walk over n along the path of critical counts.</summary>
internal static class Sizing
{
    /// <summary>What is to be rejected, what is true, and how often it must be found.</summary>
    /// <param name="Null">Share of successes to be rejected from above.</param>
    /// <param name="True">Share of successes in truth, above <paramref name="Null"/>.</param>
    /// <param name="Error">Largest chance of wrongly rejecting, per side.</param>
    /// <param name="Power">The chance of rejecting that is wanted.</param>
    /// <param name="Other">Where both sides count: what the second tail adds. Otherwise none.</param>
    public readonly record struct Problem(double Null, double True, double Error, double Power, Second Other = Second.None)
    {
        /// <summary>The share to be rejected by the second tail; that of the first unless set.</summary>
        public double OtherNull { get; init; } = Null;

        /// <summary>The true share that the second tail counts; what the first leaves unless set.</summary>
        public double OtherTrue { get; init; } = 1 - True;

        /// <summary>Largest chance of wrongly rejecting by the second tail; that of the first unless set.</summary>
        public double OtherError { get; init; } = Error;
    }

    /// <summary>How the second tail of a two-sided question counts.</summary>
    public enum Second
    {
        /// <summary>One side only.</summary>
        None,

        /// <summary>Either tail will do: the chances add.</summary>
        Either,

        /// <summary>Both must hold: the chances that one fails add.</summary>
        Both,

        /// <summary>Each must reach the power by itself: two questions of one panel.</summary>
        Each,
    }

    /// <summary>The first size that reaches the power, and the size from which every larger one does.</summary>
    /// <remarks>
    /// Power saws, so a search must know where it may stop. By Hoeffding's inequality the critical count is at most
    /// n p0 + sqrt(n ln(1/a) / 2) + 1 and a miss has a chance of at most exp(-2 n (p1 - (c - 1)/n)^2), hence beyond
    /// n = ((sqrt(ln(1/a)/2) + sqrt(ln(1/b)/2)) / (p1 - p0))^2 the power is always reached. The walk goes that far.
    /// <para>Ref. Hoeffding (1963), J. Am. Stat. Assoc. 58, 13.</para>
    /// </remarks>
    public static (int First, int Always) Search(Problem problem)
    {
        var last = Beyond(problem);
        var walk = new TailWalk(problem.Null);
        var truth = new TailWalk(problem.True);
        var otherWalk = new TailWalk(problem.OtherNull);
        var other = new TailWalk(problem.OtherTrue);
        int first = 0, miss = 0;
        for (var n = 1; n <= last; n++)
        {
            walk.Step();
            truth.Step();
            if (!walk.Reaches(problem.Error))
            {
                walk.Raise();
                truth.Raise();
            }

            if (problem.Other != Second.None)
            {
                otherWalk.Step();
                other.Step();
                if (!otherWalk.Reaches(problem.OtherError))
                {
                    otherWalk.Raise();
                    other.Raise();
                }
            }

            if (!Reached(problem, truth, other)) miss = n;
            else if (first == 0) first = n;
        }

        return (first, miss + 1);
    }

    /// <summary>A size beyond which the power is certainly reached.</summary>
    public static int Beyond(Problem problem)
    {
        var miss = problem.Other == Second.Both ? (1 - problem.Power) / 2 : 1 - problem.Power;
        var reach = Reach(problem.Error, miss, problem.True - problem.Null);
        if (problem.Other is Second.Both or Second.Each)
            reach = Math.Max(reach, Reach(problem.OtherError, miss, problem.OtherTrue - problem.OtherNull));
        var size = reach * reach;
        return size < Power.LargestPanel
            ? (int)size + 1
            : throw new ArgumentOutOfRangeException(
                null, $"This would take a panel of more than {Power.LargestPanel} tasters: ask for a larger share of discriminators, or "
                    + $"allow larger errors.");

        static double Reach(double error, double miss, double apart) =>
            (Math.Sqrt(-Math.Log(error) / 2) + Math.Sqrt(-Math.Log(miss) / 2)) / apart;
    }

    private static bool Reached(Problem problem, in TailWalk truth, in TailWalk other)
    {
        var chance = problem.Other switch
        {
            Second.Either => truth.Tail + other.Tail,
            Second.Both => truth.Tail + other.Tail - 1,
            Second.Each => Math.Min(truth.Tail, other.Tail),
            _ => truth.Tail,
        };
        if (Math.Abs(chance - problem.Power) > 1e-9) return chance > problem.Power;
        chance = problem.Other switch
        {
            Second.Either => truth.Exact + other.Exact,
            Second.Both => truth.Exact + other.Exact - 1,
            Second.Each => Math.Min(truth.Exact, other.Exact),
            _ => truth.Exact,
        };
        return chance >= problem.Power * (1 - 1e-12);
    }
}
