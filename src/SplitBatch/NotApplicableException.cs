namespace SplitBatch;

/// <summary>
/// A question that has no answer for what it is asked of, such as a guessing chance for a protocol that has none. Nothing is wrong with
/// the data.
/// </summary>
public sealed class NotApplicableException : InvalidOperationException
{
    /// <summary>Says why there is no answer.</summary>
    /// <param name="message">A sentence.</param>
    public NotApplicableException(string message)
        : base(message)
    {
    }
}
