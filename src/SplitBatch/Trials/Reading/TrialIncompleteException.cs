namespace SplitBatch.Trials.Reading;

/// <summary>Something that a trial does not hold yet, with the step that makes it.</summary>
public sealed class TrialIncompleteException : InvalidOperationException
{
    /// <summary>Names what is missing.</summary>
    /// <param name="missing">What is missing, such as "kettle".</param>
    /// <param name="remedy">What to do about it, as the rest of a sentence.</param>
    /// <param name="notebook">The notebook that makes or uses it first.</param>
    public TrialIncompleteException(string missing, string remedy, string notebook)
        : base($"This trial holds no {missing} yet: {remedy} (see notebook {notebook}).") => Missing = missing;

    /// <summary>What is missing.</summary>
    public string Missing { get; }
}
