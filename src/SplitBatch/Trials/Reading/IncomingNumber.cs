using System.Text.RegularExpressions;
using SplitBatch.Trials.Files;

namespace SplitBatch.Trials.Reading;

/// <summary>
/// Numbers in files that others wrote. The decimal mark is told from cells that can be read in one way only; what could be read in two
/// ways is refused.
/// </summary>
internal static partial class IncomingNumber
{
    /// <summary>The decimal mark that a column's cells prove, or null where none of them proves one.</summary>
    /// <param name="cells">The column's texts.</param>
    /// <param name="contradiction">Two cells that prove different marks; null where all agree.</param>
    public static DecimalMark? MarkOf(IEnumerable<string> cells, out (string Point, string Comma)? contradiction)
    {
        string? point = null, comma = null;
        foreach (var cell in cells)
        {
            if (ProvesPoint().IsMatch(cell.Trim())) point ??= cell;
            if (ProvesComma().IsMatch(cell.Trim())) comma ??= cell;
        }

        contradiction = point is not null && comma is not null ? (point, comma) : null;
        return (point, comma) switch
        {
            ({ }, null) => DecimalMark.Point,
            (null, { }) => DecimalMark.Comma,
            _ => null,
        };
    }

    /// <summary>Reads one number whose file's decimal mark is known.</summary>
    /// <param name="text">The cell.</param>
    /// <param name="mark">The decimal mark.</param>
    /// <param name="number">The number, or zero.</param>
    /// <param name="problem">Why it was refused; empty when it was read.</param>
    public static bool TryRead(string text, DecimalMark mark, out double number, out string problem)
    {
        number = 0;
        var trimmed = text.Trim();
        if (trimmed.Length > 0 && trimmed[0] is '<' or '>')
        {
            problem = $"\"{trimmed}\" is a bound and not a value; what lies beyond what the method can tell is not logged as a number.";
            return false;
        }

        // Thousands in groups of three, with a decimal mark that follows, with more than one group, or parted by what is never a decimal
        // mark.
        var grouped = mark == DecimalMark.Point ? GroupedPoint() : GroupedComma();
        var plain = grouped.IsMatch(trimmed)
            ? Separators().Replace(trimmed, match => match.Value == (mark == DecimalMark.Point ? "." : ",") ? match.Value : "")
            : trimmed;
        return NumberText.TryRead(plain, mark, out number, out problem);
    }

    // One point, and not three digits after it; or commas in groups before a point.
    [GeneratedRegex(@"^[-+]?(\d*\.(\d{1,2}|\d{4,})|0\.\d{3}|\d{1,3}(,\d{3})+\.\d+|\d{1,3}(,\d{3}){2,})$", RegexOptions.CultureInvariant)]
    private static partial Regex ProvesPoint();

    [GeneratedRegex(@"^[-+]?(\d*,(\d{1,2}|\d{4,})|0,\d{3}|\d{1,3}(\.\d{3})+,\d+|\d{1,3}(\.\d{3}){2,})$", RegexOptions.CultureInvariant)]
    private static partial Regex ProvesComma();

    [GeneratedRegex(@"^[-+]?\d{1,3}(([,'’\u00A0\u202F ])\d{3}(\2\d{3})*\.\d+|(['’\u00A0\u202F ])\d{3}(\4\d{3})*|,\d{3}(,\d{3})+)$",
        RegexOptions.CultureInvariant)]
    private static partial Regex GroupedPoint();

    [GeneratedRegex(@"^[-+]?\d{1,3}(([.'’\u00A0\u202F ])\d{3}(\2\d{3})*,\d+|(['’\u00A0\u202F ])\d{3}(\4\d{3})*|\.\d{3}(\.\d{3})+)$",
        RegexOptions.CultureInvariant)]
    private static partial Regex GroupedComma();

    [GeneratedRegex(@"[.,'’\u00A0\u202F ]", RegexOptions.CultureInvariant)]
    private static partial Regex Separators();
}
