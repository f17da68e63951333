namespace SplitBatch.Evidence.Findings;

/// <summary>The lasting name of a finding: words joined by dots, as <c>panel.main.difference</c>.</summary>
/// <remarks>
/// A word that holds a dot or a bracket of its own, such as the name of a panel called "main.2", stands in brackets:
/// <c>panel.[main.2].difference</c>. So two findings never share a name, and nobody has to look for a prefix.
/// </remarks>
public sealed record FindingId
{
    private FindingId(string text) => Text = text;

    /// <summary>The name as it is written.</summary>
    public string Text { get; }

    /// <summary>The name made of these words.</summary>
    /// <param name="words">At least one, none blank.</param>
    /// <exception cref="ArgumentException">There is no word, or one is blank.</exception>
    public static FindingId Of(params IEnumerable<string> words)
    {
        ArgumentNullException.ThrowIfNull(words);
        var text = string.Join('.', words.Select(Written));
        return text.Length > 0 ? new(text) : throw new ArgumentException("A finding's name has at least one word.", nameof(words));
    }

    /// <summary>The same name with more words behind it.</summary>
    public FindingId Then(params IEnumerable<string> words) => new($"{Text}.{Of(words)}");

    /// <summary>The name as it is written.</summary>
    public override string ToString() => Text;

    private static string Written(string word) =>
        Guard.NotBlank(word).AsSpan().ContainsAny('.', '[', ']') ? $"[{word.Replace("]", "]]", StringComparison.Ordinal)}]" : word;
}
