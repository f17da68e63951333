namespace SplitBatch.Panel.Serving;

/// <summary>
/// What in the beers may harm somebody: named for both beers together, so that naming it does not say which beer is which. That there is
/// nothing but barley has to be said too; silence is not an answer.
/// </summary>
public sealed record Allergens
{
    /// <summary>What says that the beers hold barley and nothing else on the list.</summary>
    public const string NoneButBarley = "none but barley";

    private const string Other = "other:";

    private static readonly Dictionary<string, string> Known = new(StringComparer.OrdinalIgnoreCase)
    {
        ["barley"] = "barley (gluten)", ["wheat"] = "wheat (gluten)", ["rye"] = "rye (gluten)", ["oats"] = "oats (gluten)",
        ["spelt"] = "spelt (gluten)",
        ["lactose"] = "lactose (milk sugar)", ["nuts"] = "nuts", ["sulphite"] = "sulphite", ["fish finings"] = "fish finings",
        ["fruit"] = "fruit",
    };

    private Allergens(IReadOnlyList<string> words, IReadOnlyList<string> named) => (Words, Named) = (words, named);

    /// <summary>The words that are accepted, besides <c>other: ...</c> for anything else.</summary>
    public static IReadOnlyList<string> Accepted { get; } = [.. Known.Keys, NoneButBarley, $"{Other} and the name"];

    /// <summary>What is in the beers, in words for a taster: <c>barley (gluten)</c>, <c>lactose (milk sugar)</c>.</summary>
    public IReadOnlyList<string> Named { get; }

    /// <summary>The words as they were given, for a trial's description.</summary>
    public IReadOnlyList<string> Words { get; }

    /// <summary>Whether it was said that there is nothing besides barley.</summary>
    public bool NothingElse => Same(Words[0], NoneButBarley);

    /// <summary>From the words of a trial or of a person, such as <c>barley</c> and <c>other: honey</c>.</summary>
    /// <exception cref="ArgumentException">There is no word, a word is not known, or one contradicts another; the message says what is
    /// accepted.</exception>
    public static Allergens Of(params IReadOnlyList<string> words)
    {
        ArgumentNullException.ThrowIfNull(words);
        string[] given = [.. words.Select(word => word?.Trim() ?? "")];
        if (given.Length == 0 || given.Any(word => word.Length == 0)) throw Refused("Nothing is named; if there is only barley, say so.");
        if (given.Contains(NoneButBarley, StringComparer.OrdinalIgnoreCase))
        {
            return given.Length == 1 ? new(given, [Known["barley"]])
                : throw Refused($"\"{NoneButBarley}\" stands beside {string.Join(", ", given.Where(word => !Same(word, NoneButBarley)))}; "
                    + $"only one of them can be true.");
        }

        return new(given, [.. given.Select(InWords).Distinct()]);
    }

    /// <summary>From one answer with commas between the words, as <see cref="Of"/> takes them.</summary>
    /// <exception cref="ArgumentException">As for <see cref="Of"/>.</exception>
    public static Allergens Parse(string answer) =>
        Of((answer ?? "").Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries));

    /// <summary>For a briefing or a ballot: <c>barley (gluten), lactose (milk sugar)</c>.</summary>
    public override string ToString() => string.Join(", ", Named) + (NothingElse ? "; nothing else that commonly causes allergies" : "");

    private static string InWords(string word)
    {
        if (word.StartsWith(Other, StringComparison.OrdinalIgnoreCase))
        {
            var own = word[Other.Length..].Trim();
            return own.Length > 0 ? own : throw Refused("After \"other:\" the allergen itself is missing.");
        }

        return Known.TryGetValue(word, out var said)
            ? said
            : throw Refused($"\"{word}\" is not among the allergens known here.",
                Nearest.Suggestion(word, [.. Known.Keys, NoneButBarley]));
    }

    private static bool Same(string one, string other) => string.Equals(one, other, StringComparison.OrdinalIgnoreCase);

    private static ArgumentException Refused(string problem, string? suggestion = null) =>
        new($"{problem} Accepted: {string.Join(", ", Accepted)}.{(suggestion is null ? "" : " " + suggestion)}");
}
