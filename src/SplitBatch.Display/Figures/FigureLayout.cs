using SplitBatch.Display.Drawing;

namespace SplitBatch.Display.Figures;

/// <summary>Lays a figure out as a scene: heading, axes, marks and words, for a page or (below 480 pixels) for a phone.</summary>
internal sealed partial class FigureLayout
{
    private const double TickSize = 12;
    private const double Pad = 8;

    private readonly Figure _figure;
    private readonly double _width;
    private readonly bool _narrow;
    private readonly double? _plotHeight;
    private readonly List<Shape> _shapes = [];
    private readonly List<Writing> _rowNames = [];
    private readonly Labels _labels;

    private double _left;
    private double _right;
    private double _top;
    private double _bottom;
    private double _rowLabel;
    private Scale _x = null!;
    private Scale _y = null!;

    private FigureLayout(Figure figure, int width, double? plotHeight)
    {
        (_figure, _width, _narrow, _plotHeight) = (figure, width, width < 480, plotHeight);
        _labels = new Labels(2, width - 2);
    }

    /// <param name="figure">What to lay out.</param>
    /// <param name="width">Pixels across.</param>
    /// <param name="plotHeight">Pixels down for the plot of a numeric axis; null to take them from the width.</param>
    public static Scene Compose(Figure figure, int width, double? plotHeight = null) =>
        new FigureLayout(figure, width, plotHeight).Compose();

    private Scene Compose()
    {
        var y = Paragraph(_figure.Title, 16, Pad, Theme.Text, bold: true);
        y = Paragraph(_figure.Subtitle, 13, y + 2, Theme.Quiet);

        MeasureSides();
        var strip = PlanStrip();
        _top = y + Pad + strip.Height + (_figure.Y.IsCategorical ? 0 : 8);
        _bottom = _top + PlotHeight();
        _y = _figure.Y.IsCategorical
            ? new Scale(_figure.Y, [], _top, _bottom)
            : new Scale(_figure.Y, ValuesOf(Along.Y), _bottom, _top);

        _labels.Top = y + Pad;
        foreach (var zone in _figure.Marks.OfType<Zone>()) Draw(zone);
        DrawAxes();
        DrawStrip(strip, y + Pad);
        foreach (var mark in _figure.Marks) Draw(mark);
        _shapes.AddRange(_rowNames);
        foreach (var mark in _figure.Marks) Label(mark);
        return new Scene(_width, Math.Ceiling(BottomEdge()), _figure.Title, _figure.AltText, _shapes);
    }

    private double Paragraph(string text, double size, double y, string colour, bool bold = false)
    {
        foreach (var line in Face.For(bold).Wrap(text, size, _width - 2 * Pad))
        {
            y += size * 1.3;
            _shapes.Add(new Writing(new(Pad, y - size * 0.25), line, size, colour, bold));
        }

        return y;
    }

    private void MeasureSides()
    {
        var (x, y) = (_figure.X, _figure.Y);
        if (!y.IsCategorical)
        {
            var probe = new Scale(y, ValuesOf(Along.Y), 260, 0);
            _left = Pad + 8 + probe.Ticks(45).Max(t => Face.Regular.Width(t.Label, TickSize));
        }
        else
        {
            _left = _narrow ? Pad + 4 : Pad + 12 + y.Categories.Max(c => WrapCategory(c).Max(line => Face.Regular.Width(line, TickSize)));
        }

        _right = _width - 14 - RightRoom();
        _x = new Scale(x, ValuesOf(Along.X), _left, _right);
    }

    /// <summary>Room at the right for labels that belong there: the ends of curves, the values of intervals and bars.</summary>
    private double RightRoom()
    {
        var words = new List<string>();
        if (!_narrow)
        {
            words.AddRange(_figure.Marks.OfType<Curve>().Select(c => c.Name));
            words.AddRange(_figure.Marks.OfType<Ranges>().Where(r => r.Along == Along.X).SelectMany(r => r.Items.Select(i => i.Label)));
        }
        else
        {
            words.AddRange(_figure.Marks.OfType<Curve>().Select(c => c.ShortName));
        }

        words.AddRange(_figure.Marks.OfType<Bars>().Where(b => b.Along == Along.X).SelectMany(b => b.Items.Select(i => i.Label)));
        var widest = words.Where(w => w.Length > 0).Select(w => Face.Regular.Width(w, TickSize)).DefaultIfEmpty(0).Max();
        return widest == 0 ? 0 : Math.Min(widest + 10, _width * 0.4);
    }

    private IReadOnlyList<string> WrapCategory(string name)
    {
        var lines = Face.Regular.Wrap(name, TickSize, _narrow ? _width - 2 * Pad : _width * 0.3);
        return lines.Count > 0 ? lines : [" "];
    }

    private double PlotHeight()
    {
        if (!_figure.Y.IsCategorical) return _plotHeight ?? Math.Clamp(_width * 0.46, 220, 340);
        var lanes = _figure.Marks.SelectMany(Places).Select(p => Math.Round(p - Math.Round(p), 3)).Distinct().Take(2).Count();
        var lane = _narrow && _figure.Marks.OfType<Ranges>().Any(r => r.Items.Any(i => i.Label.Length > 0)) ? 34 : 24;
        var lines = _figure.Y.Categories.Max(c => WrapCategory(c).Count);
        _rowLabel = _narrow ? lines * 15 + 2 : 0;
        return _figure.Y.Categories.Count * (_rowLabel + Math.Max(Math.Max(1, lanes) * lane + 12, _narrow ? 0 : lines * 15 + 8));
    }

    private static IEnumerable<double> Places(Mark mark) => mark switch
    {
        Ranges { Along: Along.X } ranges => ranges.Items.Select(i => i.Place),
        Bars { Along: Along.X } bars => bars.Items.Select(i => i.Place),
        Dots dots => dots.Points.Select(p => p.Y),
        _ => [],
    };

    private IEnumerable<double> ValuesOf(Along axis) => _figure.Marks.SelectMany(mark => mark.ValuesOn(axis));

    /// <summary>The pixel of a place on the vertical axis; on a phone a category's name stands above its marks.</summary>
    private double PixelY(double place)
    {
        if (!_figure.Y.IsCategorical || _rowLabel == 0) return _y.Pixel(place);
        var row = (_bottom - _top) / _figure.Y.Categories.Count;
        var category = Math.Clamp(Math.Round(place), 0, _figure.Y.Categories.Count - 1);
        return _top + category * row + _rowLabel + (place - category + 0.5) * (row - _rowLabel);
    }

    private Spot Pixel(At place) => new(_x.Pixel(place.X), PixelY(place.Y));

    private void DrawAxes()
    {
        if (_figure.Y.IsCategorical) DrawCategories();
        else DrawLevels();

        var size = TickSize;
        foreach (var (value, label) in _x.Ticks(Math.Max(64, 10 + (_figure.X.IsCategorical ? 0 : 30))))
        {
            var x = _x.Pixel(value);
            if (!_figure.X.IsCategorical) _shapes.Add(new Stroke([new(x, _top), new(x, _bottom)], Theme.Grid));
            var lines = _figure.X.IsCategorical
                ? Face.Regular.Wrap(label, size, (_right - _left) / _figure.X.Categories.Count - 4)
                : [label];
            for (var i = 0; i < lines.Count; i++)
                _shapes.Add(new Writing(new(x, _bottom + 16 + i * 14), lines[i], size, Theme.Quiet, Anchor: Anchor.Middle));
        }

        _shapes.Add(new Stroke([new(_left, _bottom), new(_right, _bottom)], Theme.Quiet));
        if (_figure.X.Title.Length > 0)
        {
            var y = _bottom + 16 + TickLines() * 14 + 6;
            foreach (var line in Face.Regular.Wrap(_figure.X.Title, size, _width - 2 * Pad))
            {
                _shapes.Add(_labels.Place(line, new((_left + _right) / 2, y), Ink.Faint, Anchor.Middle, size) with { Halo = null });
                y += 15;
            }
        }
    }

    private double BottomEdge()
    {
        var title = _figure.X.Title.Length > 0 ? Face.Regular.Wrap(_figure.X.Title, TickSize, _width - 2 * Pad).Count * 15 + 6 : 0;
        return _bottom + 16 + TickLines() * 14 + title - 6;
    }

    private int TickLines() => !_figure.X.IsCategorical
        ? 1
        : _figure.X.Categories.Max(c => Face.Regular.Wrap(c, TickSize, (_right - _left) / _figure.X.Categories.Count - 4).Count);

    private void DrawLevels()
    {
        foreach (var (value, label) in _y.Ticks(45))
        {
            var y = _y.Pixel(value);
            _shapes.Add(new Stroke([new(_left, y), new(_right, y)], Theme.Grid));
            _shapes.Add(new Writing(new(_left - 6, y + 4), label, TickSize, Theme.Quiet, Anchor: Anchor.End));
        }
    }

    private void DrawCategories()
    {
        var row = (_bottom - _top) / _figure.Y.Categories.Count;
        for (var i = 0; i < _figure.Y.Categories.Count; i++)
        {
            var lines = WrapCategory(_figure.Y.Categories[i]);
            var y = _narrow ? _top + i * row + 14 : _top + (i + 0.5) * row + 4 - (lines.Count - 1) * 7.5;
            if (i > 0) _shapes.Add(new Stroke([new(_narrow ? _left : Pad, _top + i * row), new(_right, _top + i * row)], Theme.Grid));
            for (var k = 0; k < lines.Count; k++)
            {
                var at = new Spot(_narrow ? Pad : _left - 10, y + k * 15);
                // over the lines that cross a phone's plot
                _rowNames.Add(new Writing(at, lines[k], TickSize, Theme.Text, Anchor: _narrow ? Anchor.Start : Anchor.End,
                    Halo: _narrow ? Theme.Paper : null));
                if (_narrow) _labels.Take(Pad, at.Y - TickSize, Pad + Face.Regular.Width(lines[k], TickSize), at.Y + 3);
            }
        }
    }
}
