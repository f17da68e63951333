using Plotly.NET;
using SplitBatch.Display.Drawing;
using Layout = Plotly.NET.Layout;

namespace SplitBatch.Display.Figures;

/// <summary>The interactive form of a figure.</summary>
/// <remarks>Apart from <see cref="Figure"/>, so that a figure can be shown as a picture where Plotly.NET cannot be loaded.</remarks>
public static class PlotlyCharts
{
    /// <summary>The figure as a Plotly.NET chart, to change or to combine with charts of one's own.</summary>
    /// <param name="figure">The figure.</param>
    public static GenericChart ToPlotly(this Figure figure)
    {
        ArgumentNullException.ThrowIfNull(figure);
        var traces = new PlotlyTraces(figure);
        var charts = traces.All().Select(trace => GenericChart.ofTraceObject(false, trace));
        return GenericChart.setConfig(Config(), GenericChart.setLayout(LayoutOf(figure, traces), Plotly.NET.CSharp.Chart.Combine(charts)));
    }

    /// <summary>The explorer as a Plotly.NET chart with Plotly's own sliders.</summary>
    /// <param name="explorer">The explorer.</param>
    public static GenericChart ToPlotly(this Explorer explorer)
    {
        ArgumentNullException.ThrowIfNull(explorer);
        var traces = new ExplorerTraces(explorer);
        var charts = traces.All.Select(trace => GenericChart.ofTraceObject(false, trace));
        var always = explorer.Layers.Where(layer => layer.Mark is Rule { Along: Along.Y } && layer.At.All(at => at is null))
            .Select(layer => layer.Mark);
        var still = explorer.Still with { Title = explorer.Title, Subtitle = explorer.Subtitle, Marks = [.. always] };
        var below = ExplorerTraces.RowHeight * explorer.Sliders.Count;
        var layout = LayoutOf(still, new PlotlyTraces(still));
        layout.SetProperty("height", 430 + below);
        layout.SetProperty("margin", Values(("t", 40 + 21 * HeadingLines(still).Count() + 16), ("r", 24), ("b", 60 + below), ("l", 56)));
        layout.SetProperty("sliders", traces.Sliders().ToArray());
        return GenericChart.setConfig(Config(), GenericChart.setLayout(layout, Plotly.NET.CSharp.Chart.Combine(charts)));
    }

    private static Layout LayoutOf(Figure figure, PlotlyTraces traces)
    {
        var layout = new Layout();
        layout.SetProperty("title", Values(
            ("text", Heading(figure)), ("x", 0), ("xref", "container"), ("xanchor", "left"), ("y", 1), ("yref", "container"),
            ("yanchor", "top"), ("pad", Values(("l", 8), ("t", 14))), ("font", Values(("size", 16)))));
        layout.SetProperty("font",
            Values(("family", Face.Family.Replace("'", "", StringComparison.Ordinal)), ("size", 12), ("color", Theme.Text)));
        layout.SetProperty("paper_bgcolor", Theme.Paper);
        layout.SetProperty("plot_bgcolor", Theme.Paper);
        layout.SetProperty("showlegend", false);
        layout.SetProperty("hovermode", "closest");
        layout.SetProperty("height", Math.Max(360, figure.Compose(720).Height));
        layout.SetProperty("margin",
            Values(("t", 40 + 21 * HeadingLines(figure).Count() + 16 * traces.RowsAbove), ("r", traces.RoomAtTheRight), ("b", 56),
                ("l", 56)));
        layout.SetProperty("xaxis", AxisOf(figure.X, figure, Along.X));
        layout.SetProperty("yaxis", AxisOf(figure.Y, figure, Along.Y));
        layout.SetProperty("shapes", traces.Shapes().ToArray());
        layout.SetProperty("annotations", traces.Annotations().ToArray());
        layout.SetProperty("bargap", 0.3);
        return layout;
    }

    private static string Heading(Figure figure) => string.Join("<br>", HeadingLines(figure));

    private static IEnumerable<string> HeadingLines(Figure figure) =>
        Face.Bold.Wrap(figure.Title, 16, 660).Select(line => $"<b>{Xml.Text(line)}</b>")
            .Concat(Face.Regular.Wrap(figure.Subtitle, 13, 660)
                .Select(line => $"<span style=\"font-size:13px;color:{Theme.Quiet}\">{Xml.Text(line)}</span>"));

    private static Dictionary<string, object> AxisOf(Axis axis, Figure figure, Along along)
    {
        var scale = new Scale(axis, figure.Marks.SelectMany(m => PlotlyTraces.Values(m, along)), 0, 600);
        var shown = Values(
            ("title", Values(("text", Xml.Text(axis.Percent ? axis.Name : axis.Title)), ("standoff", 10))), ("gridcolor", Theme.Grid),
            ("zeroline", false),
            ("automargin", true), ("linecolor", Theme.Quiet), ("showline", along == Along.X));
        if (axis.IsCategorical)
        {
            shown["tickvals"] = Enumerable.Range(0, axis.Categories.Count).ToArray();
            shown["ticktext"] = axis.Categories.Select(c => string.Join("<br>", Face.Regular.Wrap(c, 12, 200).Select(Xml.Text))).ToArray();
            shown["showgrid"] = false;
            shown["range"] = along == Along.Y ? new[] { scale.High, scale.Low } : [scale.Low, scale.High];
        }
        else
        {
            shown["range"] = new[] { scale.Low, scale.High };
            if (axis.Percent) shown["tickformat"] = ".0%";
        }

        return shown;
    }

    private static Config Config()
    {
        var config = new Config();
        config.SetProperty("displayModeBar", false);
        config.SetProperty("responsive", true);
        return config;
    }

    internal static Dictionary<string, object> Values(params (string Key, object Value)[] pairs) =>
        pairs.ToDictionary(p => p.Key, p => p.Value);
}
