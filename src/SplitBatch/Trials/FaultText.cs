namespace SplitBatch.Trials;

/// <summary>Turns what a value said about its arguments into the sentence that a reader needs.</summary>
internal static class FaultText
{
    /// <summary>The message without the name of the parameter that the runtime adds.</summary>
    public static string Of(ArgumentException error)
    {
        var tail = error.Message.IndexOf(" (Parameter '", StringComparison.Ordinal);
        return tail < 0 ? error.Message : error.Message[..tail];
    }
}
