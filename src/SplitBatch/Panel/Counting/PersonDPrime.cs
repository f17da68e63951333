using SplitBatch.Numbers;

namespace SplitBatch.Panel.Counting;

/// <summary>One d-prime for people who tasted in several tasks, judged by how people differ.</summary>
/// <param name="Estimate">The d-prime at which all right answers together are as many as expected; infinite where every answer is
/// right.</param>
/// <param name="OverPeople">Every d-prime at which the people's surplus of right answers has a mean near zero, by Student's t over
/// people.</param>
/// <param name="Independent">The exact interval if all sets were independent.</param>
/// <param name="People">How many people.</param>
/// <remarks>
/// The surplus of person i at d is e_i(d) = sum of x - n f(d) over the tasks, with f the task's psychometric function. The interval holds
/// every d with |t| of the e_i below the quantile for one less than the people. It takes about eight people; with few of extreme ability
/// it can miss 6 to 8 times in 100 at 95 %. Ref. as for <see cref="ReturningPeople"/>.
/// </remarks>
public sealed record PersonDPrime(double Estimate, Interval OverPeople, Interval Independent, int People)
{
    /// <summary>The fewest people for whom the interval over people may be stated.</summary>
    public const int FewestPeople = 8;

    private const double Far = 12;

    /// <summary>The interval to be stated: the wider ends of the two.</summary>
    public Interval Interval =>
        new(Math.Min(OverPeople.Low, Independent.Low), Math.Max(OverPeople.High, Independent.High), Independent.Level);

    /// <summary>Whether there are enough people for it.</summary>
    public bool HasEnoughPeople => People >= FewestPeople;

    internal static PersonDPrime Of(TaskCount[][] people, double level)
    {
        if (people.Length < 2)
            throw new InvalidOperationException("One person's sets say nothing about how people differ; there must be two or more.");
        var panels = people.SelectMany(tasks => tasks).GroupBy(task => task.Protocol)
            .Select(tasks => new PanelCount(tasks.Key.Name, tasks.Key, tasks.Sum(task => task.Sets), tasks.Sum(task => task.Correct)))
            .ToArray();
        var independent = StratifiedCombination.Of(panels, Guard.OpenShare(level)).Interval;
        var bound = Student.Quantile((1 + level) / 2, people.Length - 1);

        var estimate = Surplus(0).Sum() <= 0 ? 0 : Surplus(Far).Sum() >= 0 ? Far : Root.Of(d => Surplus(d).Sum(), 0, Far);
        // People who do not differ at all leave t without a scale: then the end is the estimate, and the other interval decides.
        var low = T(0) <= bound ? 0 : T(estimate) >= bound ? estimate : Root.Of(d => T(d) - bound, 0, estimate);
        var high = T(Far) >= -bound ? double.PositiveInfinity
            : T(estimate) <= -bound ? estimate : Root.Of(d => T(d) + bound, estimate, Far);
        return new(estimate >= Far ? double.PositiveInfinity : estimate, new(low, high, level), independent, people.Length);

        double[] Surplus(double d)
        {
            var share = panels.ToDictionary(panel => panel.Protocol, panel => panel.Protocol.CorrectShare(d));
            return [.. people.Select(tasks => tasks.Sum(task => task.Correct - (task.Sets * share[task.Protocol])))];
        }

        double T(double d)
        {
            var surplus = Surplus(d);
            double mean = surplus.Average(), n = surplus.Length;
            var error = Math.Sqrt(surplus.Sum(e => (e - mean) * (e - mean)) / (n * (n - 1)));
            return error == 0 ? mean == 0 ? 0 : mean > 0 ? double.MaxValue : double.MinValue : mean / error;
        }
    }

    /// <summary>For example <c>d-prime 1.47 (0.25 to 2.29, 95 %), counting 20 people</c>.</summary>
    public override string ToString()
    {
        var high = double.IsInfinity(Interval.High) ? "no upper limit" : Printed.DPrime(Interval.High).ToString();
        return FormattableString.Invariant($"d-prime {Printed.DPrime(Estimate)} ({Printed.DPrime(Interval.Low)} to {high}, ")
            + FormattableString.Invariant($"{Printed.ChosenPercent(Interval.Level)}), counting {People} people");
    }
}
