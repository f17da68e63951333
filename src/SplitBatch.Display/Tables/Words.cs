using System.Globalization;
using static System.FormattableString;

namespace SplitBatch.Display.Tables;

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

    /// <summary>A text with a capital first letter.</summary>
    internal static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    /// <summary>A number with so many decimals; infinite ends and gaps in words.</summary>
    internal static string Number(double value, int decimals) => value switch
    {
        double.PositiveInfinity => "no upper limit",
        double.NegativeInfinity => "no lower limit",
        _ when double.IsNaN(value) => "\u2013",
        _ => Rounded(value, decimals),
    };

    private static string Rounded(double value, int decimals)
    {
        var text = value.ToString("0." + new string('0', decimals), CultureInfo.InvariantCulture);
        return text.AsSpan().ContainsAnyInRange('1', '9') ? text.Replace('-', '\u2212') : text.TrimStart('-');
    }
}
