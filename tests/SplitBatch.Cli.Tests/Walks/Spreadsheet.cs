using System.Text;

namespace SplitBatch.Cli.Walks;

/// <summary>Adds rows to a CSV file as a spreadsheet does: opens it, and saves all of it again in its own way.</summary>
/// <param name="folder">The trial folder.</param>
/// <param name="delimiter">What it puts between values.</param>
internal sealed class Spreadsheet(string folder, char delimiter)
{
    /// <summary>Saves with a byte-order mark, Windows line ends, and every row as wide as the widest.</summary>
    public void Add(string file, params string[][] rows)
    {
        var path = Path.Combine(folder, file);
        var grid = File.ReadAllText(path).Split('\n', StringSplitOptions.RemoveEmptyEntries)
            .Select(line => line.TrimEnd('\r').Split(delimiter)).Concat(rows).ToList();
        var width = grid.Max(row => row.Length);
        var text =
            string.Concat(grid.Select(row => string.Join(delimiter, row.Concat(Enumerable.Repeat("", width - row.Length))) + "\r\n"));
        File.WriteAllText(path, text, new UTF8Encoding(encoderShouldEmitUTF8Identifier: true));
    }

    /// <summary>Changes a value as one would by search and replace.</summary>
    public void Replace(string file, string old, string with)
    {
        var path = Path.Combine(folder, file);
        var text = File.ReadAllText(path);
        Assert.Contains(old, text, StringComparison.Ordinal);
        File.WriteAllText(path, text.Replace(old, with, StringComparison.Ordinal),
            new UTF8Encoding(file.EndsWith(".csv", StringComparison.Ordinal)));
    }
}
