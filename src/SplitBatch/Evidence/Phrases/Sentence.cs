namespace SplitBatch.Evidence.Phrases;

/// <summary>One or more sentences with the numbers that they state, unrounded and in order.</summary>
/// <remarks>
/// Built only from an interpolated text whose fixed part holds no digit and whose holes are printed numbers, names, quotations or other
/// sentences: a number cannot get into a sentence without getting into <see cref="Numbers"/> as well.
/// </remarks>
public sealed record Sentence
{
    internal Sentence(string text, IReadOnlyList<double> numbers) => (Text, Numbers) = (text, numbers);

    /// <summary>Nothing said.</summary>
    public static Sentence Empty { get; } = new("", []);

    /// <summary>The words as a reader sees them.</summary>
    public string Text { get; }

    /// <summary>The numbers in them, unrounded, in the unit that is printed.</summary>
    public IReadOnlyList<double> Numbers { get; }

    /// <summary>The same with a capital letter in front.</summary>
    internal Sentence Capital => new(PlanPhrases.Capital(Text), Numbers);

    /// <summary>A sentence from an interpolated text.</summary>
    /// <param name="words">The text; every number in it is a hole.</param>
    /// <exception cref="ArgumentException">A digit stands in the fixed part.</exception>
    /// <example><code>Sentence.Of($"{Printed.Count(11)} of {Printed.Count(24)} answers were right.")</code></example>
    public static Sentence Of(SentenceText words) => words.ToSentence();

    /// <summary>Sentences one after another; empty ones leave no gap.</summary>
    public static Sentence Join(params IEnumerable<Sentence> sentences) => Join(" ", sentences);

    /// <summary>Two sentences, one after the other.</summary>
    public static Sentence operator +(Sentence first, Sentence second) => Join(first, second);

    /// <summary>The same as <c>+</c>.</summary>
    public Sentence Add(Sentence other) => this + other;

    /// <summary>The words.</summary>
    public override string ToString() => Text;

    internal static Sentence Join(string between, params IEnumerable<Sentence> parts)
    {
        Sentence[] said = [.. parts.Where(part => part.Text.Length > 0)];
        return said is [{ } only] ? only
            : new(string.Join(between, said.Select(part => part.Text)), [.. said.SelectMany(part => part.Numbers)]);
    }
}
