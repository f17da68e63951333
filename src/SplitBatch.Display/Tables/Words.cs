using static System.FormattableString;

namespace SplitBatch.Display.Tables;

/// <summary>Numbers and lists as running text has them.</summary>
internal static class Words
{
    /// <summary>Several names as in running text: A, B and C.</summary>
    internal static string Listed(IReadOnlyList<string> names) => names.Count switch
    {
        0 => "",
        1 => names[0],
        _ => $"{string.Join(", ", names.Take(names.Count - 1))} and {names[^1]}",
    };

    /// <summary>A count with its noun: 1 taster, 24 tasters.</summary>
    internal static string Counted(int count, string one, string? many = null) =>
        Invariant($"{count} {(count == 1 ? one : many ?? one + "s")}");

    /// <summary>A text with a capital first letter.</summary>
    internal static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];
}
