using static System.FormattableString;

namespace SplitBatch.Display;

/// <summary>Numbers and lists as running text has them.</summary>
internal static class Words
{
    /// <summary>A share as a percentage in words: 34 %, 0.3 %.</summary>
    internal static string Percent(double share) => (share * 100) switch
    {
        > 0 and < 0.001 => "less than 0.001 %",
        > 0 and < 0.1 and var small => Invariant($"{small:0.000} %"),
        > 0 and < 1 and var small => Invariant($"{small:0.0} %"),
        > 99.5 and < 100 and var large => Invariant($"{large:0.0} %"),
        var whole => Invariant($"{whole:0} %"),
    };

    /// <summary>Several names as in running text: A, B and C.</summary>
    internal static string Listed(IReadOnlyList<string> names) => names.Count switch
    {
        0 => "",
        1 => names[0],
        _ => $"{string.Join(", ", names.Take(names.Count - 1))} and {names[^1]}",
    };

    /// <summary>A count with its noun: 1 taster, 24 tasters.</summary>
    internal static string Counted(int count, string one, string? many = null) => Invariant($"{count} {(count == 1 ? one : many ?? one + "s")}");
}
