namespace SplitBatch.Numbers;

/// <summary>How a mean ability is spread over people, and the exact chances of their right answers in all.</summary>
/// <remarks>
/// Two spreads bound what is likely. <see cref="AllOrNothing"/>: each person is always right with a chance equal to the mean ability, and
/// else only guesses; this is the guessing model taken person by person, the widest spread that there is. <see cref="AllAlike"/>:
/// everybody has the mean ability in every set. With one set for each person and one guessing chance the two are the same binomial.
/// <para>Derived in the project from the guessing model of ISO 4120; no single source is known.</para>
/// </remarks>
public abstract class AbilitySpread
{
    private protected AbilitySpread(IEnumerable<PersonSets> people)
    {
        ArgumentNullException.ThrowIfNull(people);
        People = [.. people];
        if (People.Count == 0) throw new ArgumentException("There are no people to count.", nameof(people));
        Sets = People.Sum(person => person.Sets);
        ByGuessing = People.Sum(person => person.ByGuessing);
    }

    /// <summary>The people and their sets.</summary>
    public IReadOnlyList<PersonSets> People { get; }

    /// <summary>Sets in all.</summary>
    public int Sets { get; }

    /// <summary>The right answers that guessing gives on average; need not be whole.</summary>
    public double ByGuessing { get; }

    /// <summary>The smallest count that is not below what guessing gives on average.</summary>
    public int ChanceCount => (int)Math.Ceiling(ByGuessing - 1e-9);

    /// <summary>Each person is always right or only guesses.</summary>
    /// <param name="people">At least one person.</param>
    /// <exception cref="ArgumentException">There are none.</exception>
    public static AbilitySpread AllOrNothing(IEnumerable<PersonSets> people) => new Mixed(people);

    /// <summary>Everybody has the same ability in every set.</summary>
    /// <param name="people">At least one person.</param>
    /// <exception cref="ArgumentException">There are none.</exception>
    public static AbilitySpread AllAlike(IEnumerable<PersonSets> people) => new Even(people);

    /// <summary>The chance of so many right answers in all, or fewer.</summary>
    /// <param name="right">Any whole number.</param>
    /// <param name="ability">The mean ability, a share in [0, 1].</param>
    /// <exception cref="ArgumentOutOfRangeException">The ability is not a share.</exception>
    public double AtMost(int right, double ability) => CountChances.AtMost(Chances(Guard.Share(ability)), right);

    /// <summary>The chance of so many right answers in all, or more.</summary>
    /// <inheritdoc cref="AtMost"/>
    public double AtLeast(int right, double ability) => CountChances.AtLeast(Chances(Guard.Share(ability)), right);

    /// <summary>The largest count that has no more than the chance <paramref name="tail"/> from below; -1 where none has.</summary>
    /// <param name="ability">The mean ability to be ruled out, a share in [0, 1].</param>
    /// <param name="tail">Above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public int LargestCount(double ability, double tail)
    {
        Guard.OpenShare(tail);
        var chances = Chances(Guard.Share(ability));
        double sum = 0;
        for (var count = 0; count < chances.Length; count++)
        {
            sum += chances[count];
            if (!ExactBinomial.Reaches(sum, tail)) return count - 1;
        }

        return Sets;
    }

    /// <summary>
    /// The largest mean ability at which so few right answers still have the chance <paramref name="tail"/>; 0 where they have less even
    /// without any.
    /// </summary>
    /// <param name="right">Right answers in all, from 0 to <see cref="Sets"/>.</param>
    /// <param name="tail">One-sided error, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public double UpperLimit(int right, double tail)
    {
        Check(right, tail);
        if (right == Sets) return 1;
        if (AtMost(right, 0) <= tail) return 0;
        return Root.Of(ability => AtMost(right, ability) - tail, 0, 1);
    }

    /// <summary>
    /// The smallest mean ability at which so many right answers have the chance <paramref name="tail"/>; 0 where they have more even
    /// without any.
    /// </summary>
    /// <inheritdoc cref="UpperLimit"/>
    public double LowerLimit(int right, double tail)
    {
        Check(right, tail);
        return AtLeast(right, 0) >= tail ? 0 : Root.Of(ability => AtLeast(right, ability) - tail, 0, 1);
    }

    private protected abstract double[] Chances(double ability);

    private void Check(int right, double tail)
    {
        Guard.InRange(right, 0, Sets);
        Guard.OpenShare(tail);
    }

    /// <summary>Always right or only guessing.</summary>
    private sealed class Mixed : AbilitySpread
    {
        private readonly double[][] guesses;

        public Mixed(IEnumerable<PersonSets> people)
            : base(people) =>
            guesses =
            [
                .. People.Select(
                    person => person.Kinds.Select(kind => CountChances.Binomial(kind.Sets, kind.Chance)).Aggregate(CountChances.Sum)),
            ];

        private protected override double[] Chances(double ability)
        {
            double[] sum = [1];
            foreach (var guess in guesses)
            {
                var own = Array.ConvertAll(guess, chance => (1 - ability) * chance);
                own[^1] += ability;
                sum = CountChances.Sum(sum, own);
            }

            return sum;
        }
    }

    /// <summary>Everybody alike.</summary>
    private sealed class Even : AbilitySpread
    {
        private readonly SetsAtChance[] kinds;

        public Even(IEnumerable<PersonSets> people)
            : base(people) => kinds = [.. People.SelectMany(person => person.Kinds).GroupBy(kind => kind.Chance)
                .Select(group => new SetsAtChance(group.Sum(kind => kind.Sets), group.Key))];

        private protected override double[] Chances(double ability) => kinds
            .Select(kind => CountChances.Binomial(kind.Sets, ability + ((1 - ability) * kind.Chance))).Aggregate(CountChances.Sum);
    }
}
