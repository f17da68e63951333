using SplitBatch.Numbers;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Counting;

/// <summary>One person's sets and right answers in one task.</summary>
/// <param name="Protocol">A one-sided protocol with a known guessing chance.</param>
/// <param name="Sets">Sets tasted, at least 1.</param>
/// <param name="Correct">Right answers, from 0 to <paramref name="Sets"/>.</param>
public readonly record struct TaskCount(Protocol Protocol, int Sets, int Correct);

/// <summary>Several panels in which people come back: people are counted, not sets.</summary>
/// <remarks>
/// Panels that share tasters are not independent, so their counts may not be added as if they were; who is who has to be known. A
/// difference is still tested on the sum, because guesses are independent whoever makes them. Mean ability and d-prime are judged person
/// by person. Whether panels agree is not asked: the usual chi-square is not valid when people are shared.
/// <para>Ref. summary measures: J. N. S. Matthews, D. G. Altman, M. J. Campbell and P. Royston (1990), BMJ 300, 230; K.-Y. Liang and
/// S. L. Zeger (1986), Biometrika 73, 13 (both from memory). The interval of mean ability is derived in the project.</para>
/// </remarks>
public sealed class ReturningPeople
{
    private readonly TaskCount[][] people;
    private readonly PersonSets[] sets;

    private ReturningPeople(TaskCount[][] people)
    {
        this.people = people;
        sets = [.. people.Select(tasks => new PersonSets(tasks.Select(task => new SetsAtChance(task.Sets, task.Protocol.Chance))))];
    }

    /// <summary>How many people there are.</summary>
    public int People => people.Length;

    /// <summary>Sets in all.</summary>
    public int Sets => people.Sum(tasks => tasks.Sum(task => task.Sets));

    /// <summary>Right answers in all.</summary>
    public int Right => people.Sum(tasks => tasks.Sum(task => task.Correct));

    /// <summary>The exact chance of so many right answers in all, or more, if everybody guesses everywhere.</summary>
    public double PValue => AbilitySpread.AllAlike(sets).AtLeast(Right, 0);

    /// <summary>Puts people together from all panels.</summary>
    /// <param name="people">For each person what was tasted in every panel; at least one person, and at least one task for each.</param>
    /// <exception cref="ArgumentException">There is nobody, a person tasted nothing, or a protocol is two-sided.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The counts make no sense.</exception>
    /// <exception cref="NotApplicableException">A protocol has no known guessing chance.</exception>
    public static ReturningPeople Of(IEnumerable<IEnumerable<TaskCount>> people)
    {
        ArgumentNullException.ThrowIfNull(people);
        TaskCount[][] all = [.. people.Select(tasks => tasks.ToArray())];
        if (all.Length == 0) throw new ArgumentException("There are no people to count.", nameof(people));
        foreach (var task in all.SelectMany(tasks => tasks))
        {
            ArgumentNullException.ThrowIfNull(task.Protocol, nameof(people));
            Counts.Check(task.Correct, task.Sets);
            if (task.Protocol.Sides == 2)
                throw new ArgumentException($"The {task.Protocol.Name} protocol is two-sided; its answers cannot be added to others.",
                    nameof(people));
        }

        return new(all);
    }

    /// <summary>The interval of mean ability, the share of people times sets told above guessing.</summary>
    /// <param name="level">Level of the interval, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The level lies outside.</exception>
    public MeanAbility Ability(double level = 0.95) => MeanAbility.Of(sets, Right, level);

    /// <summary>The common d-prime with its interval over people.</summary>
    /// <param name="level">Level of the interval, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The level lies outside.</exception>
    /// <exception cref="InvalidOperationException">There is only one person, over whom nothing can vary.</exception>
    public PersonDPrime DPrime(double level = 0.95) => PersonDPrime.Of(people, level);
}
