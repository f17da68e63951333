using Plotly.NET;
using SplitBatch.Display.Drawing;
using static SplitBatch.Display.Figures.PlotlyCharts;

namespace SplitBatch.Display.Figures;

/// <summary>
/// An explorer's layers as Plotly traces, and its sliders as Plotly's own. Each slider has a property of its own that shows or hides
/// a trace, so that a trace is seen only where all sliders agree: the first sets <c>visible</c>, the second <c>opacity</c>, the third
/// the width of lines and the paint of marks and words. No script is needed besides Plotly's.
/// </summary>
internal sealed class ExplorerTraces
{
    private const string Clear = "rgba(0,0,0,0)";
    private readonly Explorer explorer;
    private readonly List<(Trace Trace, Layer Layer)> traces;

    public ExplorerTraces(Explorer explorer)
    {
        this.explorer = explorer;
        var from = new PlotlyTraces(explorer.Still);
        traces = [.. explorer.Layers.SelectMany(layer => Of(from, layer).Select(trace => (trace, layer)))];
        foreach (var (trace, layer) in traces) Start(trace, layer);
    }

    public IEnumerable<Trace> All => traces.Select(pair => pair.Trace);

    /// <summary>The sliders, one below the other.</summary>
    public IEnumerable<object> Sliders() => explorer.Sliders.Select((slider, number) => Values(
        ("active", slider.Start),
        ("currentvalue", Values(("prefix", $"{Xml.Text(slider.Name)}: "), ("font", Values(("size", 14), ("color", Theme.Text))))),
        ("bgcolor", Theme.Shade), ("bordercolor", Theme.Quiet), ("activebgcolor", Theme.Wash(Ink.BeerA)), ("tickcolor", Theme.Quiet),
        ("font", Values(("color", Theme.Text))), ("x", 0), ("len", 1.0), ("xanchor", "left"), ("y", 0), ("yanchor", "top"),
        ("pad", Values(("t", 52 + (number * RowHeight)), ("b", 0))),
        ("steps", slider.Steps.Select((step, i) => Step(slider, number, step, i)).ToArray())));

    /// <summary>Pixels that one slider takes below the plot.</summary>
    public const int RowHeight = 84;

    private Dictionary<string, object> Step(Slider slider, int number, string label, int step)
    {
        int[] own = [.. Enumerable.Range(0, traces.Count).Where(i => traces[i].Layer.At[number] is not null)];
        bool Shown(int i) => traces[i].Layer.At[number] == step;
        var change = number switch
        {
            0 => Values(("visible", own.Select(Shown).ToArray())),
            1 => Values(("opacity", own.Select(i => Shown(i) ? 1 : 0).ToArray())),
            _ => Values(
                ("line.width", own.Select(i => Shown(i) ? 2 : 0).ToArray()),
                ("marker.opacity", own.Select(i => Shown(i) ? 1 : 0).ToArray()),
                ("textfont.color", own.Select(i => Shown(i) ? Theme.WordColour(traces[i].Layer.Mark.Ink) : Clear).ToArray())),
        };
        var axes = slider.Ends is { } ends
            ? Values(("xaxis.range[1]", ends[step].MaxX), ("yaxis.range[1]", ends[step].MaxY))
            : Values();
        return Values(("label", Xml.Text(label)), ("method", "update"), ("args", new object[] { change, axes, own }));
    }

    /// <summary>Sets a trace as the sliders stand at first.</summary>
    private void Start(Trace trace, Layer layer)
    {
        trace.SetProperty("hoverinfo", "skip");
        for (var number = 0; number < explorer.Sliders.Count; number++)
        {
            if (layer.At[number] is not { } at) continue;
            var shown = at == explorer.Sliders[number].Start;
            if (number == 0) trace.SetProperty("visible", shown);
            else if (number == 1) trace.SetProperty("opacity", shown ? 1 : 0);
            else if (!shown) Hide(trace, layer.Mark);
        }
    }

    private static void Hide(Trace trace, Mark mark)
    {
        var colour = Theme.Colour(mark.Ink);
        if (mark is Curve or Rule)
            trace.SetProperty("line", Values(("color", colour), ("width", 0), ("dash", Theme.IsDashed(mark.Ink) ? "dash" : "solid")));
        if (mark is Dots or Bars) trace.SetProperty("marker", Values(("color", colour), ("opacity", 0), ("size", 11)));
        if (mark is Note or Rule) trace.SetProperty("textfont", Values(("color", Clear), ("size", 13)));
    }

    private IEnumerable<Trace> Of(PlotlyTraces from, Layer layer) => layer.Mark switch
    {
        Note note => [Words([note.Place], [note.Text], "text", "top right", note.Ink)],
        Rule { Along: Along.X } rule =>
            [Words([new At(rule.Value, 0), new At(rule.Value, TopOf(layer))], ["", rule.Name], "lines+text", "bottom right", rule.Ink)],
        _ => from.Of(layer.Mark),
    };

    /// <summary>The top of the plot where a layer is shown.</summary>
    private double TopOf(Layer layer) =>
        explorer.Sliders.Zip(layer.At, (slider, at) => slider.Ends is { } ends && at is { } step ? ends[step].MaxY : (double?)null)
            .FirstOrDefault(top => top is not null)
        ?? explorer.Still.Y.Max ?? 1;

    private static Trace Words(IReadOnlyList<At> at, string[] text, string mode, string position, Ink ink)
    {
        var trace = new Trace("scatter");
        trace.SetProperty("mode", mode);
        trace.SetProperty("x", at.Select(p => p.X).ToArray());
        trace.SetProperty("y", at.Select(p => p.Y).ToArray());
        trace.SetProperty("text", text.Select(Xml.Text).ToArray());
        trace.SetProperty("textposition", position);
        trace.SetProperty("textfont", Values(("color", Theme.WordColour(ink)), ("size", 13)));
        trace.SetProperty("line", Values(("color", Theme.Colour(ink)), ("width", 2), ("dash", Theme.IsDashed(ink) ? "dash" : "solid")));
        trace.SetProperty("cliponaxis", false);
        return trace;
    }
}
