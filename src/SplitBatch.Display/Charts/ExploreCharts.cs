using System.ComponentModel;
using SplitBatch.Display.Drawing;
using SplitBatch.Display.Figures;
using SplitBatch.Display.Tables;
using SplitBatch.Numbers;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;
using static System.FormattableString;

namespace SplitBatch.Display.Charts;

/// <summary>Charts with sliders, to try panels out before one is poured.</summary>
[EditorBrowsable(EditorBrowsableState.Never)]
public static class ExploreCharts
{
    private static readonly int[] PanelSizes = [8, 12, 16, 20, 24, 30, 36, 42, 50, 60, 80, 100];
    private static readonly double[] PanelShares = [0, 0.10, 0.20, 0.30, 0.40, 0.50, 0.70], PanelErrors = [0.01, 0.05, 0.10];

    /// <summary>
    /// The chance of showing a difference against the number of tasters, with sliders for tasters, share of discriminators and alpha.
    /// </summary>
    /// <param name="protocol">A one-sided protocol with a known chance.</param>
    /// <param name="tasters">Where the slider stands at first.</param>
    /// <param name="discriminators">Likewise, as a share.</param>
    /// <param name="alpha">Likewise.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    /// <exception cref="InvalidOperationException">The protocol has no known chance.</exception>
    public static Explorer ExplorePower(this Protocol protocol, int tasters = 24, double discriminators = 0.30, double alpha = 0.05)
    {
        var grid = Grid.Of(protocol, tasters, discriminators, alpha);
        var most = grid.Sizes[^1];
        var layers = new List<Layer> { new(new Rule(0.80, Along.Y) { Ink = Ink.Limit, Name = "80 %" }, null, null, null) };
        foreach (var (a, error) in grid.Errors.Index())
        {
            foreach (var (s, share) in grid.Shares.Index())
            {
                layers.Add(
                    new(new Curve([.. Enumerable.Range(4, most - 3)
                        .Select(n => new At(n, Math.Round(Power.Of(protocol, n, error, share), 4)))]), null, s, a));
                foreach (var (n, size) in grid.Sizes.Index())
                {
                    var power = Power.Of(protocol, size, error, share);
                    layers.Add(new(new Dots([new At(size, Math.Round(power, 4))]) { Ink = Ink.BeerA }, n, s, a));
                    layers.Add(new(new Note(new At(0, 1.05), grid.Says(size, share, error, power)), n, s, a));
                }
            }
        }

        return grid.Explorer(layers, "How many tasters, and what can they show?",
            "the curve: the chance that a panel shows a difference; its teeth come from counts being whole", new Figure
            {
                Title = Invariant($"{Words.Counted(tasters, "taster")} show a difference in {Printed.Percent(grid.Power)} of panels if ")
                    + Invariant($"{Printed.ChosenPercent(discriminators)} can tell"),
                Subtitle = Invariant($"{Words.Capital(protocol.Name)}, error {Printed.ChosenPercent(alpha)}; the teeth are there because ")
                    + Invariant($"counts are whole numbers"),
                Reading = grid.Says(tasters, discriminators, alpha, grid.Power),
                X = new Axis("tasters") { Whole = true, Min = 0, Max = most + 2 },
                Y = new Axis("chance of showing a difference") { Percent = true, Min = 0, Max = 1.05 },
                Marks = [],
                Numbers = grid.Table(),
            });
    }

    /// <summary>
    /// How often each count comes up when all guess and when some can tell, and the count that shows a difference, with sliders for
    /// tasters, share of discriminators and alpha.
    /// </summary>
    /// <inheritdoc cref="ExplorePower"/>
    public static Explorer ExploreCounts(this Protocol protocol, int tasters = 24, double discriminators = 0.30, double alpha = 0.05)
    {
        var grid = Grid.Of(protocol, tasters, discriminators, alpha);
        var tops = grid.Sizes
            .Select(size => 1.2 * Enumerable.Range(0, size + 1).Max(k => grid.Shares.Max(share => Chance(protocol, k, size, share))))
            .ToList();
        var layers = new List<Layer>();
        foreach (var (n, size) in grid.Sizes.Index())
        {
            layers.Add(new(Chances(protocol, size, 0, Ink.Faint, 0.8), n, null, null));
            foreach (var (s, share) in grid.Shares.Index()) layers.Add(new(Chances(protocol, size, share, Ink.BeerA, 0.35), n, s, null));
            foreach (var (a, error) in grid.Errors.Index())
            {
                if (Power.CriticalCount(protocol, size, error) is { } critical)
                    layers.Add(new(new Rule(critical - 0.5) { Ink = Ink.Limit, Name = Invariant($"{critical} or more") }, n, null, a));
                foreach (var (s, share) in grid.Shares.Index())
                    layers.Add(
                        new(new Note(new At(0, tops[n]), grid.Says(size, share, error, Power.Of(protocol, size, error, share))), n, s, a));
            }
        }

        var start = grid.Sizes.IndexOf(tasters);
        return grid.Explorer(layers, "Where the counts of a panel fall, and from where on they show a difference",
            "grey: the chance of each count when all guess; blue: when some can tell", new Figure
            {
                Title = Invariant($"Of {tasters} tasters, {Power.CriticalCount(protocol, tasters, alpha)} right show a difference; it ")
                    + Invariant($"happens in {Printed.Percent(grid.Power)} of panels if {Printed.ChosenPercent(discriminators)} can tell"),
                Subtitle = Invariant($"{Words.Capital(protocol.Name)}, error {Printed.ChosenPercent(alpha)}; grey: the chance of each ")
                    + Invariant($"count when all guess; blue: when {Printed.ChosenPercent(discriminators)} can tell"),
                Reading = grid.Says(tasters, discriminators, alpha, grid.Power),
                X = new Axis("right answers") { Whole = true, Min = -0.7, Max = tasters + 0.7 },
                Y = new Axis("chance") { Percent = true, Min = 0, Max = tops[start] },
                Marks = [],
                Numbers = grid.Table(),
            }, [.. grid.Sizes.Zip(tops, (size, top) => (size + 0.7, top))]);
    }

    private static Bars Chances(Protocol protocol, int size, double share, Ink ink, double width) => new(
        [.. Enumerable.Range(0, size + 1).Select(k => new BarItem(k, Chance(protocol, k, size, share))).Where(bar => bar.Value >= 0.0002)
            .Select(bar => bar with { Value = Math.Round(bar.Value, 5) })])
    {
        Ink = ink,
        Width = width,
    };

    private static double Chance(Protocol protocol, int count, int size, double share) =>
        ExactBinomial.Exactly(count, size, protocol.CorrectFromDiscriminators(share));

    /// <summary>The steps of the three sliders, with the values that were asked for among them.</summary>
    private sealed record Grid(Protocol Protocol, List<int> Sizes, List<double> Shares, List<double> Errors, int Tasters, double Share,
        double Error)
    {
        public double Power => Panel.Planning.Power.Of(Protocol, Tasters, Error, Share);

        public static Grid Of(Protocol protocol, int tasters, double discriminators, double alpha)
        {
            ArgumentNullException.ThrowIfNull(protocol);
            if (protocol.Sides != 1)
                throw new ArgumentException($"The sliders are for protocols with one side; {protocol.Name} has two.", nameof(protocol));
            ArgumentOutOfRangeException.ThrowIfLessThan(tasters, 4);
            ArgumentOutOfRangeException.ThrowIfGreaterThan(tasters, 400);
            _ = Panel.Planning.Power.Of(protocol, tasters, alpha, discriminators);
            return new(protocol, With(PanelSizes, tasters), With(PanelShares, discriminators), With(PanelErrors, alpha), tasters,
                discriminators, alpha);
        }

        public Explorer Explorer(IReadOnlyList<Layer> layers, string title, string subtitle, Figure still,
            IReadOnlyList<(double, double)>? ends = null) => new(
                still,
                [
                    new Slider("tasters", [.. Sizes.Select(n => Invariant($"{n}"))], Sizes.IndexOf(Tasters)) { Ends = ends },
                    new Slider("people who can tell", [.. Shares.Select(share => (string)Printed.ChosenPercent(share))],
                        Shares.IndexOf(Share)),
                    new Slider("alpha, the error allowed", [.. Errors.Select(error => (string)Printed.ChosenPercent(error))],
                        Errors.IndexOf(Error)),
                ],
                layers)
            {
                Title = title,
                Subtitle = $"{Words.Capital(Protocol.Name)}; {subtitle}",
            };

        public string Says(int size, double share, double error, double power) =>
            (Panel.Planning.Power.CriticalCount(Protocol, size, error), share) switch
            {
                (null, _) => Invariant($"No count of {size} shows a difference at {Printed.ChosenPercent(error)}."),
                ({ } critical, 0) => Invariant($"{critical} of {size} needed; guessers get there in {Printed.Percent(power)} of panels."),
                ({ } critical, _) => Invariant($"{critical} of {size} needed; shown in {Printed.Percent(power)} of panels."),
            };

        public Table Table()
        {
            var table = TableOf.Each(Sizes, Invariant($"Chance of showing a difference at {Printed.ChosenPercent(Error)}"))
                .Number("tasters", n => n, decimals: 0)
                .Number("right answers needed", n => Panel.Planning.Power.CriticalCount(Protocol, n, Error), decimals: 0);
            foreach (var share in Shares)
                table = table.Percent($"{Printed.ChosenPercent(share)} can tell", n => Panel.Planning.Power.Of(Protocol, n, Error, share));
            return table.ToTable();
        }

        private static List<T> With<T>(IEnumerable<T> steps, T asked) => [.. steps.Append(asked).Distinct().Order()];
    }
}
