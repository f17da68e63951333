namespace SplitBatch.Proof.Fuzz;

/// <summary>Something that takes input from outside, and must answer every input with a result or a message.</summary>
internal abstract class Target
{
    public abstract string Name { get; }

    /// <summary>Runs one case. An exception that comes out is a find.</summary>
    /// <returns>What was wrong with the answer, or null.</returns>
    protected abstract string? Try(int seed);

    /// <summary>What a case does, for a find.</summary>
    protected virtual string Describe(int seed) => "";

    /// <summary>Runs cases one after another; one that does not end in time is a find, and ends the run.</summary>
    /// <param name="seeds">The seeds of the cases.</param>
    /// <param name="patience">How long one case may take.</param>
    public IReadOnlyList<Find> Run(IEnumerable<int> seeds, TimeSpan patience)
    {
        List<Find> finds = [];
        foreach (int seed in seeds)
        {
            var one = Task.Run(() => Answer(seed));
            if (!one.Wait(patience))
            {
                finds.Add(new Find(Name, seed, $"no answer within {patience.TotalSeconds:0} s. {Describe(seed)}"));
                break;
            }

            if (one.Result is { } what) finds.Add(new Find(Name, seed, what));
        }

        return finds;
    }

    private string? Answer(int seed)
    {
        try
        {
            return Try(seed);
        }
        catch (Exception error)
        {
            return $"{error.GetType().Name}: {error.Message} "
                + $"{error.StackTrace?.Split('\n').FirstOrDefault(line => line.Contains("SplitBatch", StringComparison.Ordinal))?.Trim()}";
        }
    }
}
