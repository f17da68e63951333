using MathNet.Numerics.Distributions;

namespace SplitBatch.Proof.ErrorRates;

/// <summary>Draws that the tables share; plain chances, none of the library's own arithmetic.</summary>
internal static class Draw
{
    /// <summary>A random source of its own for each row.</summary>
    public static Random Source(int seed, int row) => new(unchecked((seed * 1_000_003) + (row * 20_011)));

    /// <summary>Right answers of somebody with so much ability in so many sets.</summary>
    public static int Right(this Random random, int sets, double chance, double ability) =>
        random.Successes(sets, chance + ((1 - chance) * ability));

    /// <summary>Successes in so many tries.</summary>
    public static int Successes(this Random random, int tries, double share)
    {
        var count = 0;
        for (var i = 0; i < tries; i++) if (random.NextDouble() < share) count++;
        return count;
    }

    /// <summary>How often something happens in so many runs.</summary>
    public static int Count(int runs, Func<bool> happens)
    {
        var count = 0;
        for (var run = 0; run < runs; run++) if (happens()) count++;
        return count;
    }

    /// <summary>An answer that hangs on a whole number only, worked out once for each.</summary>
    public static Func<int, T> Once<T>(Func<int, T> answer)
    {
        var known = new Dictionary<int, T>();
        return key => known.TryGetValue(key, out var found) ? found : known[key] = answer(key);
    }

    public static double Normal(this Random random, double mean, double deviation) =>
        MathNet.Numerics.Distributions.Normal.Sample(random, mean, deviation);
}

/// <summary>How a mean ability is spread over people.</summary>
internal sealed record Spread(string Name, Func<Random, double, double> Ability)
{
    public static Spread Alike { get; } = new("all alike", (_, mean) => mean);

    public static Spread AllOrNothing { get; } = new("all or nothing", (random, mean) => random.NextDouble() < mean ? 1 : 0);

    /// <summary>
    /// Half of the people can tell twice as often as the mean, the others never; from a mean of one half up they can always tell or as
    /// often as is left.
    /// </summary>
    public static Spread Halves { get; } =
        new("half of them twice as able", (random, mean) => random.Next(2) == 0 ? Math.Min(1, 2 * mean) : Math.Max(0, (2 * mean) - 1));

    public static Spread Wide { get; } = Beta(0.6);

    public static Spread Narrow { get; } = Beta(0.2);

    public static IReadOnlyList<Spread> All { get; } = [Alike, Narrow, Wide, Halves, AllOrNothing];

    private static Spread Beta(double overdispersion) => new(
        FormattableString.Invariant($"beta, overdispersion {overdispersion:0.0}"),
        (random, mean) => mean is 0 or 1
            ? mean
            : MathNet.Numerics.Distributions.Beta
                .Sample(random, mean * ((1 / overdispersion) - 1), (1 - mean) * ((1 / overdispersion) - 1)));
}
