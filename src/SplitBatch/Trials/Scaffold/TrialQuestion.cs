namespace SplitBatch.Trials.Scaffold;

/// <summary>One question about a new trial: how it is asked, what is suggested, and what an answer changes.</summary>
/// <param name="Name">Its name on a command line.</param>
/// <param name="Ask">The question as a sentence.</param>
/// <param name="Suggest">The answer that stands unless another is given, in the trial's own units and decimals.</param>
/// <param name="Take">The trial with an answer; throws <see cref="ArgumentException"/> with a sentence about what is accepted.</param>
public sealed record TrialQuestion(string Name, string Ask, Func<NewTrial, string> Suggest, Func<NewTrial, string, NewTrial> Take)
{
    /// <summary>Whether the suggestion says nothing about the trial, so that a person has to answer.</summary>
    public bool NeedsAnswer { get; init; }
}
