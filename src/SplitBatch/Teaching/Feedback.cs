namespace SplitBatch.Teaching;

/// <summary>The reply to a learner's answer.</summary>
/// <param name="Slip">What is the matter with the answer; <see cref="Slip.None"/> where it is right.</param>
/// <param name="Words">The explanation of a right answer, or a hint that does not give it away.</param>
public sealed record Feedback(Slip Slip, string Words)
{
    /// <summary>Whether the answer is right.</summary>
    public bool IsRight => Slip == Slip.None;

    /// <summary>The reply as the learner reads it.</summary>
    public override string ToString() => Slip switch
    {
        Slip.None => $"Right. {Words}",
        Slip.Unanswered => $"Not answered yet. {Words}",
        _ => $"Not quite. {Words}",
    };
}
