namespace SplitBatch.Proof.Fuzz;

/// <summary>A case that was not answered as it should be.</summary>
/// <param name="Target">What was fuzzed.</param>
/// <param name="Seed">The case's seed; with it the case can be made again.</param>
/// <param name="What">What happened.</param>
public sealed record Find(string Target, int Seed, string What)
{
    /// <summary>Words that only the runtime says: nobody wrote them for a brewer.</summary>
    private static readonly string[] RuntimeWords =
    [
        "Object reference", "Index was out", "Index was outside", "cannot be null", "Specified argument", "Sequence contains",
        "Nullable object", "was not present in the dictionary", "(Parameter '", "Unable to cast",
        "Arithmetic operation", "Input string was not", "An item with the same key", "Unhandled", "   at SplitBatch.", "System.",
        "Exception of type",
    ];

    /// <summary>The runtime's words in a message, or null where there are none.</summary>
    public static string? RuntimeWordsIn(string message) =>
        RuntimeWords.FirstOrDefault(words => message.Contains(words, StringComparison.Ordinal));

    public override string ToString() => $"{Target}, seed {Seed}: {What}";
}
