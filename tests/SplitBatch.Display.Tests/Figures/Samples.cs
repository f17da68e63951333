using SplitBatch.Display.Drawing;
using SplitBatch.Display.Tables;

namespace SplitBatch.Display.Figures;

/// <summary>Figures with invented numbers, one per kind of mark.</summary>
internal static class Samples
{
    public static Figure Intervals(string title = "Two methods put both beers near 32 IBU") => new()
    {
        Title = title,
        Subtitle = "Invented numbers, 95 % intervals",
        Reading = "The intervals of the two beers overlap for either method.",
        X = new Axis("bitterness", "IBU"),
        Y = Axis.Of(["Formula one, of 1990", "Formula two, of 1994, with a rather long name"]),
        Marks =
        [
            new Zone(29, 35) { Name = "target and its tolerance" },
            new Ranges([new(-0.18, 26, 38, 32, "32 (26 to 38)"), new(0.82, 28, 42, 34, "34 (28 to 42)")])
            {
                Ink = Ink.BeerA,
                Name = "Beer A",
            },
            new Ranges([new(0.18, 25, 37, 31, "31 (25 to 37)"), new(1.18, 27, double.PositiveInfinity, 33, "33 (27 and up)")])
            {
                Ink = Ink.BeerB,
                Name = "Beer B",
            },
        ],
        Numbers =
            new Table("Estimates", [new("method"), new("A", "IBU", 1), new("B", "IBU", 1)], [["one", 32.0, 31.0], ["two", 34.0, null]]),
    };

    public static Figure Bars() => new()
    {
        Title = "Eleven right answers of 24 lie within what guessing gives",
        Subtitle = "Triangle test, 24 tasters; chance of each count when nobody notices a difference",
        Reading = "Thirteen or more would be needed; eleven were counted.",
        X = new Axis("right answers") { Whole = true },
        Y = new Axis("chance") { Percent = true, Min = 0 },
        Marks =
        [
            new Bars([.. Enumerable.Range(0, 13).Select(k => new BarItem(k, Binomial(24, k)))]) { Ink = Ink.Faint },
            new Bars([.. Enumerable.Range(13, 5).Select(k => new BarItem(k, Binomial(24, k)))]) { Ink = Ink.Limit },
            new Rule(12.5) { Ink = Ink.Limit, Name = "13 and more: difference shown" },
            new Rule(11) { Name = "counted: 11" },
        ],
        Numbers = new Table("Chance of each count", [new("count", "", 0), new("chance", "%", 1)], [[11, 10.0]]),
    };

    public static Figure Lines() => new()
    {
        Title = "24 tasters find a share of 30 % in about 7 of 10 trials",
        Subtitle = "Power of the triangle test at 5 %",
        Reading = "Power rises with the number of tasters.",
        X = new Axis("tasters") { Whole = true },
        Y = new Axis("power") { Percent = true, Min = 0, Max = 1 },
        Marks =
        [
            new Ribbon([.. Enumerable.Range(6, 50).Select(n => ((double)n, Power(n) * 0.9, Math.Min(1, Power(n) * 1.1)))])
            {
                Ink = Ink.Faint,
            },
            new Curve([.. Enumerable.Range(6, 50).Select(n => new At(n, Power(n)))]) { Ink = Ink.BeerA, Name = "30 % discriminators" },
            new Rule(0.8, Along.Y) { Ink = Ink.Limit, Name = "wanted: 80 %" },
            new Dots([new At(24, Power(24))]) { Name = "this panel" },
        ],
        Numbers = new Table("Power", [new("tasters", "", 0), new("power", "%", 0)], [[24, 68.0]]),
    };

    private static double Power(int n) => 1 - Math.Exp(-n / 21.0);

    private static double Binomial(int n, int k)
    {
        var p = Math.Pow(2.0 / 3, n);
        for (var i = 1; i <= k; i++) p *= (n - i + 1.0) / i / 2;
        return p;
    }
}
