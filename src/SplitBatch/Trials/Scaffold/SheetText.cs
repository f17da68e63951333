using System.Globalization;
using SplitBatch.Trials.Files;

namespace SplitBatch.Trials.Scaffold;

/// <summary>Writes the CSV files of a new trial: remarks that explain, and a header; no row, because nothing has happened yet.</summary>
/// <param name="trial">What is known of the trial.</param>
internal sealed class SheetText(NewTrial trial)
{
    /// <summary>What stands between values: a semicolon where decimals are written with a comma.</summary>
    public char Delimiter => trial.Decimals == DecimalMark.Comma ? ';' : ',';

    /// <summary>How numbers are written, as a remark.</summary>
    private string Dialect => trial.Decimals == DecimalMark.Comma
        ? "Values are separated by semicolons and decimals are written with a comma."
        : "Values are separated by commas and decimals are written with a point.";

    /// <summary>A file. It starts with a byte-order mark, without which some spreadsheets spoil the degree sign.</summary>
    /// <param name="remarks">Sentences about the file, one a line.</param>
    /// <param name="columns">The headers.</param>
    /// <param name="examples">Rows to show in a remark: with # in front they are not read.</param>
    public string File(IEnumerable<string> remarks, IReadOnlyList<string> columns, params IReadOnlyList<object>[] examples)
    {
        string[] lines =
        [
            .. remarks.Append($"{Dialect} Dates are year-month-day, as 2026-03-14. A line that starts with # is not read.")
                .Select(remark => "# " + remark),
            .. examples.Select(row => "# as in: " + Row(row)),
            string.Join(Delimiter, columns),
        ];
        return "\uFEFF" + string.Join('\n', lines) + "\n";
    }

    /// <summary>Numbers in the trial's decimals, texts as they are.</summary>
    private string Row(IEnumerable<object> cells) => string.Join(Delimiter, cells.Select(cell => cell is double number
        ? NumberText.Write(number, trial.Decimals)
        : Convert.ToString(cell, CultureInfo.InvariantCulture)));
}
