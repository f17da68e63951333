using SplitBatch.Numbers;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Proof.ErrorRates;

/// <summary>People who sit in several panels: intervals that miss, and differences that are not there.</summary>
internal static class SharedPeopleRates
{
    private const int Panels = 4;

    public static RateTable Table { get; } = new(
        "The same people in several panels",
        "The same people in four triangle panels, one set in each. Promised at 95 %: the interval of mean ability misses in at most 5 of "
            + "100, and a difference is shown in at most 5 of 100 where all guess. The interval of d-prime over people is held to 5 of "
            + "100 where people are alike; with few people of extreme ability it is known to miss more, and the row says how much. \"As "
            + "independent\" is the habit of taking every panel for new people.",
        Run);

    private static IEnumerable<ErrorRate> Run(int runs, int seed)
    {
        var row = 0;
        foreach (var people in new[] { 8, 12, 20 })
        {
            foreach (var ability in new[] { 0.1, 0.3, 0.6 })
            foreach (var spread in new[] { Spread.Alike, Spread.Wide, Spread.AllOrNothing })
            {
                var random = Draw.Source(seed, row++);
                var sets = PersonSets.Alike(people, Panels, Protocol.Triangle.Chance);
                var interval = Draw.Once(right => MeanAbility.Of(sets, right));
                var alike = spread == Spread.Alike;
                // D-prime costs more than it is worth to draw as often: every tenth panel.
                int misses = 0, independent = 0, distance = 0, distances = 0;
                var truth = Protocol.Triangle.DPrime(Protocol.Triangle.CorrectFromDiscriminators(ability));
                for (var run = 0; run < runs; run++)
                {
                    int[] right = [.. Enumerable.Range(0, people)
                        .Select(_ => random.Right(Panels, Protocol.Triangle.Chance, spread.Ability(random, ability)))];
                    var found = interval(right.Sum());
                    if (!Holds(found.Interval, ability)) misses++;
                    if (!Holds(found.Alike, ability)) independent++;
                    if (run % 10 != 0) continue;
                    distances++;
                    var d = ReturningPeople.Of(right.Select(x => new[] { new TaskCount(Protocol.Triangle, Panels, x) })).DPrime();
                    if (!Holds(d.Interval, truth)) distance++;
                }

                var setting = $"{people} people in {Panels} panels, mean ability {ability:P0}, {spread.Name}";
                yield return new(setting, "the interval of mean ability misses", 0.05, misses, runs);
                yield return new(setting, "it misses as independent", null, independent, runs);
                yield return new(setting, "the interval of d-prime over people misses", alike ? 0.05 : null, distance, distances);
            }

            var guessing = Draw.Source(seed, row++);
            var shown =
                Draw.Once(
                    right => ReturningPeople.Of(Enumerable.Range(0, people)
                        .Select(i =>
                            new[] { new TaskCount(Protocol.Triangle, Panels,
                                Math.Clamp(right - (Panels * i), 0, Panels)) })).PValue <= 0.05);
            yield return new($"{people} people in {Panels} panels, all guess", "somebody can tell", 0.05,
                Draw.Count(runs, () => shown(guessing.Successes(people * Panels, Protocol.Triangle.Chance))), runs);
        }
    }

    private static bool Holds(Interval interval, double truth) => interval.Low <= truth + 1e-12 && truth - 1e-12 <= interval.High;
}
