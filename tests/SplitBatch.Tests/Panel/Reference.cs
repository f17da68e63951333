using System.Globalization;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel;

/// <summary>Reads what R and Python printed into tests/reference/panel.</summary>
internal static class Reference
{
    /// <summary>Where a file of tests/reference/panel lies.</summary>
    public static string PathOf(string name)
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !Directory.Exists(Path.Combine(folder.FullName, "tests", "reference"))) folder = folder.Parent;
        Assert.NotNull(folder);
        return Path.Combine(folder.FullName, "tests", "reference", "panel", name);
    }

    public static IReadOnlyList<Row> Read(string name)
    {
        var lines = File.ReadLines(PathOf(name)).Where(l => !l.StartsWith('#')).ToList();
        var header = lines[0].Split(',');
        var rows = lines.Skip(1).Select(l => new Row(header, l.Split(','))).ToList();
        Assert.NotEmpty(rows);
        return rows;
    }

    /// <summary>The difference relative to the expected value, 0 where both are the same.</summary>
    public static double RelativeError(double expected, double actual) =>
        expected.Equals(actual) ? 0 : Math.Abs(actual - expected) / Math.Abs(expected);

    /// <summary>The one-sided or two-sided protocol with a guessing chance near the one given.</summary>
    public static Protocol ProtocolWith(double chance, int sides) =>
        Protocol.All.First(p => p.HasKnownChance && Math.Abs(p.Chance - chance) < 1e-9 && p.Sides == sides);

    internal sealed record Row(string[] Header, string[] Cells)
    {
        public string Text(string column) => Cells[Array.IndexOf(Header, column)];

        public double Number(string column) => double.Parse(
            Text(column).Replace("Inf", "Infinity", StringComparison.Ordinal), CultureInfo.InvariantCulture);

        public int Whole(string column) => int.Parse(Text(column), CultureInfo.InvariantCulture);
    }
}
