using System.Globalization;
using System.Runtime.CompilerServices;

namespace SplitBatch.Bitterness;

/// <summary>Rows of a CSV in tests/reference/bitterness; remark lines name the program and version that printed it.</summary>
internal static class BitternessReference
{
    public static IEnumerable<string[]> Rows(string file)
    {
        var path = Path.Combine(Path.GetDirectoryName(Here())!, "..", "..", "reference", "bitterness", file);
        var rows = File.ReadLines(path).Where(line => line.Length > 0 && line[0] != '#').Skip(1).Select(line => line.Split(',')).ToList();
        Assert.NotEmpty(rows);
        return rows;
    }

    public static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static string Here([CallerFilePath] string path = "") => path;
}
