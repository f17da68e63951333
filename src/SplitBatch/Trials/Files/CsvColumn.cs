namespace SplitBatch.Trials.Files;

/// <summary>A column of a CSV file.</summary>
/// <param name="Name">The header without its unit.</param>
/// <param name="Unit">The unit in brackets, or null.</param>
/// <param name="Index">The column's place, from zero.</param>
internal sealed record CsvColumn(string Name, string? Unit, int Index)
{
    /// <summary>The header as it stands in the file, as <c>amount [g]</c>.</summary>
    public string Header => AsWritten ?? (Unit is null ? Name : $"{Name} [{Unit}]");

    /// <summary>The header of a file that calls the column otherwise; null where it uses this name.</summary>
    internal string? AsWritten { get; init; }

    /// <summary>Splits a header such as <c>amount [g]</c> into name and unit.</summary>
    internal static CsvColumn Parse(string header, int index)
    {
        var text = header.Trim();
        var open = text.LastIndexOf('[');
        return open > 0 && text.EndsWith(']')
            ? new CsvColumn(text[..open].Trim(), text[(open + 1)..^1].Trim(), index)
            : new CsvColumn(text, null, index);
    }
}
