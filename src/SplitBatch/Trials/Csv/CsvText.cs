namespace SplitBatch.Trials;

/// <summary>Writes cells so that <see cref="CsvTable"/> and a spreadsheet read them back.</summary>
internal static class CsvText
{
    /// <summary>The text as one cell, in quotation marks where it needs them.</summary>
    internal static string Cell(string? text, char delimiter = ',')
    {
        string plain = (text ?? "").ReplaceLineEndings(" ").Trim();
        return plain.AsSpan().IndexOfAny(delimiter, '"') >= 0 || plain.StartsWith('#') ? $"\"{plain.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : plain;
    }
}
