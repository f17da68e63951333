namespace SplitBatch;

/// <summary>What can hurt somebody at one step of a trial, and whose rules come first there.</summary>
public sealed record Caution
{
    internal Caution(string step, params IReadOnlyList<string> sentences)
    {
        Step = step;
        Sentences = sentences;
    }

    /// <summary>The step, as a heading: <c>At the kettle</c>.</summary>
    public string Step { get; }

    /// <summary>The cautions, in the order they are needed; the last one says whose rules come first.</summary>
    public IReadOnlyList<string> Sentences { get; }

    /// <summary>The step and its sentences as one paragraph of Markdown.</summary>
    public string ToMarkdown() => $"**{Step}.** {string.Join(" ", Sentences)}";

    /// <summary>The step and its sentences in running text.</summary>
    public override string ToString() => $"{Step}. {string.Join(" ", Sentences)}";
}
