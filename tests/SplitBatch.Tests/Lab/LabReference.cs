using System.Globalization;
using System.Runtime.CompilerServices;

namespace SplitBatch.Lab;

/// <summary>Rows of a CSV that an outside program printed; remark lines name its version.</summary>
internal static class LabReference
{
    public static IEnumerable<string[]> Rows(string file)
    {
        var path = Path.Combine(Path.GetDirectoryName(Here())!, "..", "..", "reference", "lab", file);
        return File.ReadLines(path).Where(line => line.Length > 0 && line[0] != '#').Skip(1).Select(line => line.Split(','));
    }

    private static string Here([CallerFilePath] string path = "") => path;

    public static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    public static int Whole(string text) => int.Parse(text, CultureInfo.InvariantCulture);
}
