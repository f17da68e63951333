using SplitBatch.Panel.Protocols;
using SplitBatch.Panel;

namespace SplitBatch.Evidence.Phrases;

/// <summary>Small words that several phrases share.</summary>
internal static class Wording
{
    /// <summary>"was" or "were".</summary>
    public static string Were(int count) => count == 1 ? "was" : "were";

    /// <summary>So many answers that "was right" or "were right".</summary>
    public static Sentence AnswersRight(int count) => Sentence.Of($"{Printed.Count(count, "answer")} {Were(count)} right");

    /// <summary>What the sets of a protocol are called when they are counted: "24 triangles".</summary>
    public static Sentence Sets(Protocol protocol, int count) => protocol.Name switch
    {
        "triangle" => Sentence.Of($"{Printed.Count(count, "blind triangle")}"),
        "tetrad" => Sentence.Of($"{Printed.Count(count, "blind tetrad")}"),
        "duo-trio" or "duo-trio constant reference" => Sentence.Of($"{Printed.Count(count, "blind duo-trio")}"),
        "paired directional" or "paired two-sided" => Sentence.Of($"{Printed.Count(count, "blind pair")}"),
        _ => Sentence.Of($"{Printed.Count(count, "blind set")}"),
    };

    /// <summary>A list as people say it: "a, b and c".</summary>
    public static string Listed(IReadOnlyList<string> items) => items.Count switch
    {
        0 => "",
        1 => items[0],
        _ => $"{string.Join(", ", items.SkipLast(1))} and {items[^1]}",
    };
}
