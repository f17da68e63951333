using System.Text.RegularExpressions;
using SplitBatch.Numbers;
using SplitBatch.Panel.Counting;

namespace SplitBatch.Panel.Liking;

/// <summary>A taster's free words about one beer.</summary>
/// <param name="Taster">Who.</param>
/// <param name="Beer">Which beer the words are about.</param>
/// <param name="Text">The words as written.</param>
public sealed record Comment(string Taster, Side Beer, string Text);

/// <summary>How many tasters used a descriptor for each beer.</summary>
/// <param name="Descriptor">The descriptor.</param>
/// <param name="A">Tasters who used it of A.</param>
/// <param name="B">Tasters who used it of B.</param>
/// <param name="Denied">Times it was used with a "not" before it ("not bitter"), which are not counted in A and B.</param>
/// <param name="OnlyA">Tasters who used it of A and not of B.</param>
/// <param name="OnlyB">Tasters who used it of B and not of A.</param>
/// <param name="PValue">Exact two-sided binomial (McNemar) of those who used it of one beer only; 1 where nobody did.</param>
/// <param name="AdjustedPValue">After Holm's correction over all descriptors that were used.</param>
public sealed record DescriptorCount(Descriptor Descriptor, int A, int B, int Denied, int OnlyA, int OnlyB, double PValue,
    double AdjustedPValue)
{
    /// <summary>For example <c>grassy or vegetal: 3 tasters of A, 9 of B (p = 0.070, corrected 0.84)</c>.</summary>
    public override string ToString() => FormattableString.Invariant(
        $"{Descriptor.Name}: {A} {(A == 1 ? "taster" : "tasters")} of A, {B} of B ({Printed.PValue(PValue)}, corrected for many words ")
            + FormattableString.Invariant($"{Printed.PValue(AdjustedPValue)})");
}

/// <summary>
/// Free comments tallied by descriptor: tasters and not mentions are counted, and nothing is read into words that no descriptor catches.
/// </summary>
/// <param name="Counts">Descriptors that were used, the most used first.</param>
/// <param name="Comments">Comments read.</param>
/// <param name="Uncaught">Comments in which no descriptor was found, to be read by a person.</param>
public sealed partial record CommentTally(IReadOnlyList<DescriptorCount> Counts, int Comments, IReadOnlyList<Comment> Uncaught)
{
    private static readonly HashSet<string> Denials = ["not", "no", "never", "without", "isn't", "wasn't", "hardly", "lacks",
        "lacking", "less"];

    /// <summary>Tallies comments.</summary>
    /// <param name="comments">Any number.</param>
    /// <param name="descriptors">What to look for; null for <see cref="Descriptor.Common"/>.</param>
    public static CommentTally Of(IEnumerable<Comment> comments, IReadOnlyList<Descriptor>? descriptors = null)
    {
        ArgumentNullException.ThrowIfNull(comments);
        descriptors ??= Descriptor.Common;
        Comment[] rows = [.. comments];
        var found = rows.SelectMany(c => Found(c, descriptors)).ToArray();
        var plain = descriptors
            .Select(d => Count(d, [.. found.Where(f => ReferenceEquals(f.Descriptor, d))]))
            .Where(c => c.A + c.B + c.Denied > 0)
            .ToArray();
        var adjusted = Holm.Adjust([.. plain.Select(c => c.PValue)]);
        return new(
            [.. plain.Select((c, i) => c with { AdjustedPValue = adjusted[i] }).OrderByDescending(c => c.A + c.B)],
            rows.Length,
            [.. rows.Where(c => !found.Any(f => ReferenceEquals(f.Comment, c)))]);
    }

    /// <summary>The most used descriptors in a line.</summary>
    public override string ToString() =>
        $"{Comments} comments: "
            + $"{string.Join("; ", Counts.Take(5).Select(c => $"{c.Descriptor.Name} {c.A} of A, {c.B} of B"))}"
            + $"{(Counts.Count > 5 ? " ..." : "")}. {Uncaught.Count} hold no known word.";

    private static DescriptorCount Count(Descriptor descriptor, Mention[] mentions)
    {
        var said = mentions.Where(m => !m.Denied).ToArray();
        var a = said.Where(m => m.Comment.Beer == Side.A).Select(m => m.Comment.Taster).ToHashSet();
        var b = said.Where(m => m.Comment.Beer == Side.B).Select(m => m.Comment.Taster).ToHashSet();
        int onlyA = a.Except(b).Count(), onlyB = b.Except(a).Count();
        var p = PreferenceTest.Of(onlyA, onlyB).PValue;
        return new(descriptor, a.Count, b.Count, mentions.Count(m => m.Denied), onlyA, onlyB, p, p);
    }

    // The words of a comment in order; each descriptor at most once said and once denied.
    private static IEnumerable<Mention> Found(Comment comment, IReadOnlyList<Descriptor> descriptors)
    {
        string[] words = [.. Words().Matches(comment.Text.ToLowerInvariant().Replace('’', '\'')).Select(m => m.Value)];
        foreach (var descriptor in descriptors)
        {
            bool said = false, denied = false;
            for (var i = 0; i < words.Length; i++)
            {
                if (!descriptor.Stems.Any(stem => Begins(words, i, stem))
                    || descriptor.Except?.Any(stem => Begins(words, i, stem)) == true) continue;
                if (words.Take(i).TakeLast(2).Any(Denials.Contains)) denied = true;
                else said = true;
            }

            if (said) yield return new(comment, descriptor, false);
            if (denied) yield return new(comment, descriptor, true);
        }
    }

    private static bool Begins(string[] words, int at, string stem)
    {
        var parts = stem.Split(' ');
        return at + parts.Length <= words.Length
            && parts.Select((part, i) => words[at + i].StartsWith(part, StringComparison.Ordinal)).All(hit => hit);
    }

    [GeneratedRegex(@"[\p{L}']+")]
    private static partial Regex Words();

    private sealed record Mention(Comment Comment, Descriptor Descriptor, bool Denied);
}

/// <summary>A word for what is tasted, with the beginnings of the words that count as it.</summary>
/// <param name="Name">The descriptor as it is shown.</param>
/// <param name="Stems">Beginnings of words, in lower case: "grass" catches grass, grassy and grassier. A stem with a space is a
/// phrase.</param>
/// <param name="Except">Beginnings that do not count although a stem catches them: "pineapple" is no pine.</param>
public sealed record Descriptor(string Name, IReadOnlyList<string> Stems, IReadOnlyList<string>? Except = null)
{
    /// <summary>Descriptors that tasters of hopped beer use; common practice, no source. Add your own.</summary>
    public static IReadOnlyList<Descriptor> Common { get; } =
    [
        new("bitter", ["bitter"]),
        new("harsh or astringent", ["harsh", "astring", "rough", "drying", "puckering", "tannic", "tannin"]),
        new("smooth", ["smooth", "soft", "round", "mellow"]),
        new("lingering", ["linger", "long finish", "aftertaste"]),
        new("grassy or vegetal", ["grass", "veget", "leafy", "hay", "chlorophyll"]),
        new("citrus", ["citr", "lemon", "lime", "orange", "grapefruit", "tangerine"]),
        new("fruity", ["fruit", "tropic", "peach", "berry", "mango", "melon", "apricot", "pineapple"]),
        new("floral", ["flor", "flower", "rose", "perfum"], ["rosemary"]),
        new("herbal or spicy", ["herb", "spic", "pepper", "mint"]),
        new("resinous or pine", ["resin", "pine", "dank", "woody"], ["pineapple"]),
        new("earthy", ["earth", "musty", "mould", "mold"]),
        new("malty", ["malt", "bread", "biscuit", "caramel", "toast", "grain"]),
        new("sweet", ["sweet", "sugar", "honey"]),
        new("dry", ["dry", "crisp"], ["drying"]),
        new("sour", ["sour", "acid", "tart"]),
        new("full", ["full", "thick", "creamy", "heavy"], ["fully"]),
        new("thin", ["thin", "watery"], ["thing", "think"]),
        new("papery or stale", ["paper", "cardboard", "stale", "oxid"]),
        new("cheesy", ["chees", "sweaty"]),
        new("sulphury", ["sulph", "sulf", "egg"]),
        new("buttery", ["butter", "diacetyl"]),
    ];
}
