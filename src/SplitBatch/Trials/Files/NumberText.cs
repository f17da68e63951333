using System.Globalization;

namespace SplitBatch.Trials.Files;

/// <summary>Reads numbers as people type them, and refuses what could be read in two ways.</summary>
internal static class NumberText
{
    /// <summary>Reads one number.</summary>
    /// <param name="text">The text, with or without white space around it.</param>
    /// <param name="mark">How the file writes decimals.</param>
    /// <param name="number">The number read, or zero.</param>
    /// <param name="problem">Why the text was refused, as a sentence; empty when it was read.</param>
    /// <returns>Whether a number was read. Thousands separators, percent signs and units are refused, never guessed.</returns>
    public static bool TryRead(string? text, DecimalMark mark, out double number, out string problem)
    {
        number = 0;
        var trimmed = text?.Trim() ?? "";
        var (own, other) = mark == DecimalMark.Point ? ('.', ',') : (',', '.');
        problem = trimmed switch
        {
            "" => "A number is missing.",
            _ when trimmed.Contains('%', StringComparison.Ordinal) =>
                "The unit stands in the header; write the number without a percent sign.",
            _ when trimmed.Contains(own, StringComparison.Ordinal) && trimmed.Contains(other, StringComparison.Ordinal)
                || trimmed.Count(letter => letter == own) > 1 =>
                "Thousands separators are not accepted, because they can be mistaken for decimals.",
            _ when trimmed.Contains(other, StringComparison.Ordinal) =>
                $"This file writes decimals with a {Name(mark)}, so \"{trimmed}\" could be read in two ways; write "
                    + $"{trimmed.Replace(other, own)}, or without a separator if thousands are meant.",
            _ => "",
        };
        if (problem.Length > 0)
        {
            return false;
        }

        const NumberStyles Plain = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent;
        var isNumber = double.TryParse(trimmed.Replace(',', '.'), Plain, CultureInfo.InvariantCulture, out number)
            && double.IsFinite(number);
        if (!isNumber)
        {
            number = 0;
            problem = $"\"{trimmed}\" is not a number.";
        }

        return isNumber;
    }

    /// <summary>Writes a number so that <see cref="TryRead"/> returns the same value.</summary>
    public static string Write(double number, DecimalMark mark)
    {
        var text = number.ToString("R", CultureInfo.InvariantCulture);
        return mark == DecimalMark.Comma ? text.Replace('.', ',') : text;
    }

    private static string Name(DecimalMark mark) => mark == DecimalMark.Point ? "point" : "comma";
}

/// <summary>How decimals are written in a file.</summary>
public enum DecimalMark
{
    /// <summary>As 4.7.</summary>
    Point,

    /// <summary>As 4,7.</summary>
    Comma,
}
