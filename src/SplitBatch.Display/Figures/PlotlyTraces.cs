using Plotly.NET;
using SplitBatch.Display.Drawing;
using static SplitBatch.Display.Figures.PlotlyCharts;

namespace SplitBatch.Display.Figures;

/// <summary>The marks of a figure as Plotly traces, shapes and annotations.</summary>
internal sealed class PlotlyTraces(Figure figure)
{
    public IEnumerable<Trace> All() => figure.Marks.SelectMany(Of);

    /// <summary>Reference lines and shaded stretches.</summary>
    public IEnumerable<object> Shapes() => figure.Marks.Select(mark => mark switch
    {
        Zone zone => Span(zone.Along, zone.Low, zone.High, ("fillcolor", Theme.Wash(zone.Ink)),
            ("line", PlotlyCharts.Values(("width", 0))), ("layer", "below")),
        Rule rule => Span(rule.Along, rule.Value, rule.Value, ("line", Pen(rule.Ink, 1.5)), ("layer", "above")),
        _ => null,
    }).OfType<object>();

    /// <summary>The words beside the marks.</summary>
    public IEnumerable<object> Annotations()
    {
        var rows = RowsOfTags();
        var tag = 0;
        foreach (var mark in figure.Marks)
        {
            switch (mark)
            {
                case Rule { Along: Along.X, Name.Length: > 0 } rule:
                    yield return Above(rule.Name, rule.Value, rows[tag++], rule.Ink); break;
                case Zone { Along: Along.X, Name.Length: > 0 } zone:
                    yield return Above(zone.Name, (zone.Low + zone.High) / 2, rows[tag++], zone.Ink); break;
                case Rule { Name.Length: > 0 } rule:
                    yield return Words(rule.Name, ("x", 1), ("xref", "paper"), ("y", rule.Value), ("xanchor", "right"),
                        ("yanchor", "bottom"), rule.Ink); break;
                case Zone { Name.Length: > 0 } zone:
                    yield return Words(zone.Name, ("x", 0), ("xref", "paper"), ("y", zone.High), ("xanchor", "left"), ("yanchor", "top"),
                        zone.Ink); break;
                case Curve { Name.Length: > 0, Points.Count: > 0 } curve:
                    yield return Beside(curve.Name, curve.Points[^1], "left", curve.Ink); break;
                case Dots { Name.Length: > 0, Points.Count: > 0 } dots:
                    yield return Beside($"<b>{Xml.Text(dots.Name)}</b>", dots.Points[^1], "left", dots.Ink, safe: true); break;
                case Note note:
                    yield return Words(note.Text, ("x", note.Place.X), ("xref", "x"), ("y", note.Place.Y), ("xanchor", "center"),
                        ("yanchor", note.Below ? "top" : "bottom"), note.Ink); break;
                case Ranges ranges: foreach (var words in Annotate(ranges)) yield return words; break;
            }
        }
    }

    /// <summary>Pixels at the right of the plot that the longest name there needs.</summary>
    public double RoomAtTheRight =>
        figure.Marks.SelectMany(NamesAtTheRight).Select(name => Math.Ceiling(Face.Bold.Width(name, 12)) + 24).Append(110).Max();

    private static IEnumerable<string> NamesAtTheRight(Mark mark) => mark switch
    {
        Curve curve => [curve.Name],
        Ranges { Along: Along.X } ranges => [.. ranges.Items.Select(item => item.Label)],
        _ => [],
    };

    /// <summary>How many lines of names stand above the plot.</summary>
    public int RowsAbove => RowsOfTags().Select(r => r + 1).DefaultIfEmpty(0).Max();

    /// <summary>For each name above the plot, in the order of the marks, a line in which it meets no other.</summary>
    private List<int> RowsOfTags()
    {
        var scale = new Scale(figure.X, figure.Marks.SelectMany(m => Values(m, Along.X)), 0, 480);
        var taken = new List<(int Row, double Left, double Right)>();
        foreach (var mark in figure.Marks)
        {
            var (name, x) = mark switch
            {
                Rule { Along: Along.X } rule => (rule.Name, scale.Pixel(rule.Value)),
                Zone { Along: Along.X } zone => (zone.Name, (scale.Pixel(zone.Low) + scale.Pixel(zone.High)) / 2),
                _ => ("", 0),
            };
            if (name.Length == 0) continue;
            var half = Face.Regular.Width(name, 12) / 2 + 6;
            var row = Enumerable.Range(0, 20).First(r => !taken.Any(t => t.Row == r && x - half < t.Right && x + half > t.Left));
            taken.Add((row, x - half, x + half));
        }

        return [.. taken.Select(t => t.Row)];
    }

    /// <summary>The values a mark has on an axis, as far as they are finite.</summary>
    public static IEnumerable<double> Values(Mark mark, Along axis) => mark.ValuesOn(axis).Where(double.IsFinite);

    /// <summary>One mark as traces; lines across the figure and words have none.</summary>
    public IEnumerable<Trace> Of(Mark mark)
    {
        switch (mark)
        {
            case Dots dots:
                yield return Scatter("markers", dots.Name, dots.Points, ("marker", Marker(dots.Ink)));
                break;
            case Curve curve:
                yield return Scatter("lines", curve.Name, curve.Points, ("line", Pen(curve.Ink, 2)));
                break;
            case Ribbon ribbon:
                var around = ribbon.Points.Select(p => new At(p.X, p.High))
                    .Concat(ribbon.Points.Reverse().Select(p => new At(p.X, p.Low)));
                yield return Scatter("lines", ribbon.Name, [.. around], ("fill", "toself"), ("fillcolor", Theme.Wash(ribbon.Ink)),
                    ("line", PlotlyCharts.Values(("width", 0))), ("hoverinfo", "skip"));
                break;
            case Bars bars:
                yield return Bar(bars);
                break;
            case Ranges ranges:
                yield return Intervals(ranges);
                break;
        }
    }

    private static Trace Scatter(string mode, string name, IReadOnlyList<At> points, params (string, object)[] more)
    {
        var trace = new Trace("scatter");
        trace.SetProperty("mode", mode);
        trace.SetProperty("name", Xml.Text(name));
        trace.SetProperty("x", points.Select(p => p.X).ToArray());
        trace.SetProperty("y", points.Select(p => p.Y).ToArray());
        foreach (var (key, value) in more) trace.SetProperty(key, value);
        return trace;
    }

    private static Trace Bar(Bars bars)
    {
        var trace = new Trace("bar");
        var (places, values) = (bars.Items.Select(i => i.Place).ToArray(), bars.Items.Select(i => i.Value).ToArray());
        trace.SetProperty("x", bars.Along == Along.X ? values : places);
        trace.SetProperty("y", bars.Along == Along.X ? places : values);
        trace.SetProperty("orientation", bars.Along == Along.X ? "h" : "v");
        trace.SetProperty("width", bars.Width);
        trace.SetProperty("name", Xml.Text(bars.Name));
        trace.SetProperty("offset", -bars.Width / 2);
        trace.SetProperty("text", bars.Items.Select(i => Xml.Text(i.Label)).ToArray());
        trace.SetProperty("textposition", "outside");
        trace.SetProperty("cliponaxis", false);
        trace.SetProperty("marker", PlotlyCharts.Values(("color", bars.Ink is Ink.Faint ? "#b9b5ab" : Theme.Colour(bars.Ink))));
        return trace;
    }

    private Trace Intervals(Ranges ranges)
    {
        var across = ranges.Along == Along.X;
        var scale = new Scale(across ? figure.X : figure.Y, figure.Marks.SelectMany(m => Values(m, ranges.Along)), 0, 600);
        var items = ranges.Items.Select(i => i with { Low = Math.Max(i.Low, scale.Low), High = Math.Min(i.High, scale.High) }).ToList();
        var middle = items.Select(i => i.Best ?? (i.Low + i.High) / 2).ToList();
        var points = items.Select((i, k) => across ? new At(middle[k], i.Place) : new At(i.Place, middle[k])).ToList();
        var bars = PlotlyCharts.Values(
            ("type", "data"), ("symmetric", false), ("array", items.Select((i, k) => i.High - middle[k]).ToArray()),
            ("arrayminus", items.Select((i, k) => middle[k] - i.Low).ToArray()), ("color", Theme.Colour(ranges.Ink)), ("thickness", 2.5),
            ("width", 5));
        var marker = Marker(ranges.Ink);
        marker["opacity"] = items.Select(i => i.Best is null ? 0.0 : 1.0).ToArray();
        return Scatter("markers", ranges.Name, points, ("marker", marker), (across ? "error_x" : "error_y", bars),
            ("hovertext", ranges.Items.Select(i => Xml.Text(i.Label)).ToArray()));
    }

    private static IEnumerable<object> Annotate(Ranges ranges)
    {
        var across = ranges.Along == Along.X;
        foreach (var item in ranges.Items.Where(i => i.Label.Length > 0))
        {
            yield return across
                ? Words(item.Label, ("x", 1.01), ("xref", "paper"), ("y", item.Place), ("xanchor", "left"), ("yanchor", "middle"),
                    ranges.Ink)
                : Words(item.Label, ("x", item.Place), ("xref", "x"), ("y", item.High), ("xanchor", "center"), ("yanchor", "bottom"),
                    ranges.Ink);
        }

        if (ranges is { Name.Length: > 0, Items: [var first, ..] })
        {
            yield return across && double.IsFinite(first.High)
                ? Beside($"<b>{Xml.Text(ranges.Name)}</b>", new At(first.High, first.Place), "left", ranges.Ink, safe: true)
                : Words($"<b>{Xml.Text(ranges.Name)}</b>", ("x", first.Place), ("xref", "x"), ("y", first.High), ("xanchor", "center"),
                    ("yanchor", "bottom"), ranges.Ink, safe: true);
        }
    }

    private static Dictionary<string, object> Above(string text, double x, int row, Ink ink)
    {
        var words = Words(text, ("x", x), ("xref", "x"), ("y", 1), ("xanchor", "center"), ("yanchor", "bottom"), ink);
        words["yref"] = "paper";
        words["yshift"] = row * 16;
        return words;
    }

    private static Dictionary<string, object> Beside(string text, At at, string anchor, Ink ink, bool safe = false)
    {
        var words = Words(text, ("x", at.X), ("xref", "x"), ("y", at.Y), ("xanchor", anchor), ("yanchor", "middle"), ink, safe);
        words["xshift"] = 9;
        return words;
    }

    private static Dictionary<string, object> Words(
        string text, (string, object) x, (string, object) xref, (string, object) y, (string, object) xanchor, (string, object) yanchor,
        Ink ink, bool safe = false) =>
        PlotlyCharts.Values(
            ("text", safe ? text : Xml.Text(text)), x, xref, y, ("yref", "y"), xanchor, yanchor, ("showarrow", false),
            ("bgcolor", "rgba(255,255,255,0.75)"), ("font", PlotlyCharts.Values(("color", Theme.WordColour(ink)), ("size", 12))));

    private static Dictionary<string, object> Span(Along along, double from, double to, params (string, object)[] more) =>
        PlotlyCharts.Values([
            ("type", from.Equals(to) ? "line" : "rect"), ("xref", along == Along.X ? "x" : "paper"),
            ("yref", along == Along.X ? "paper" : "y"),
            ("x0", along == Along.X ? from : 0.0), ("x1", along == Along.X ? to : 1.0), ("y0", along == Along.X ? 0.0 : from),
            ("y1", along == Along.X ? 1.0 : to), .. more]);

    private static Dictionary<string, object> Pen(Ink ink, double width) =>
        PlotlyCharts.Values(("color", Theme.Colour(ink)), ("width", width), ("dash", Theme.IsDashed(ink) ? "dash" : "solid"));

    private static Dictionary<string, object> Marker(Ink ink) => PlotlyCharts.Values(
        ("color", Theme.Colour(ink)), ("size", ink is Ink.Faint ? 7 : 11),
        ("line", PlotlyCharts.Values(("color", Theme.Paper), ("width", 1.5))),
        ("symbol", ink switch { Ink.BeerA or Ink.Faint => "circle", Ink.BeerB => "square", _ => "diamond" }));
}
