namespace SplitBatch.Proof.Sentences;

/// <summary>Draws of one random trial; the same seed gives the same trial.</summary>
/// <param name="seed">The trial's number.</param>
internal sealed class Dice(int seed)
{
    private readonly Random random = new(seed);

    public int Whole(int low, int high) => random.Next(low, high + 1);

    public double Share() => random.NextDouble();

    public bool Chance(double share) => random.NextDouble() < share;

    public T Of<T>(params IReadOnlyList<T> choices) => choices[random.Next(choices.Count)];

    /// <summary>A size whose order of magnitude is drawn evenly: as many panels of 2 to 20 as of 20 to 200.</summary>
    public int Size(int low, int high) => (int)Math.Round(low * Math.Pow((double)high / low, random.NextDouble()));

    /// <summary>A normal number by Box and Muller.</summary>
    public double Near(double centre, double deviation) =>
        centre + (deviation * Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble()));

    public IReadOnlyList<T> Some<T>(IEnumerable<T> from, double share) => [.. from.Where(_ => Chance(share))];
}
