using SplitBatch.Display.Drawing;

namespace SplitBatch.Display.Figures;

/// <content>The words that go with the marks.</content>
internal sealed partial class FigureLayout
{
    private void Label(Mark mark)
    {
        switch (mark)
        {
            case Rule { Along: Along.Y, Name.Length: > 0 } rule:
                Word(rule.Name, new(_left + 4, _y.Pixel(rule.Value) - 5), rule.Ink);
                break;
            case Zone { Along: Along.Y, Name.Length: > 0 } zone:
                Word(zone.Name, new(_left + 4, _y.Pixel(zone.High) + 15), Ink.Faint);
                break;
            case Curve { Name.Length: > 0, Points.Count: > 0 } curve:
                var end = Pixel(curve.Points[^1]);
                if (_narrow && curve.ShortName.Length > 0) Word(curve.ShortName, new(end.X + 6, end.Y + 4), curve.Ink);
                else if (_narrow) Word(curve.Name, new(end.X - 4, end.Y - 8), curve.Ink, Anchor.End);
                else Word(curve.Name, new(end.X + 6, end.Y + 4), curve.Ink);
                break;
            case Bars bars:
                foreach (var bar in bars.Items.Where(b => b.Label.Length > 0)) Label(bars, bar);
                break;
            case Ranges ranges:
                Label(ranges);
                break;
            case Dots { Name.Length: > 0, Points.Count: > 0 } dots:
                var last = Pixel(dots.Points[^1]);
                var room = last.X + 10 + Face.Bold.Width(dots.Name, TickSize) < _right;
                _shapes.Add(_labels.Place(dots.Name, new(room ? last.X + 9 : last.X - 9, last.Y + 4), dots.Ink,
                    room ? Anchor.Start : Anchor.End, bold: true));
                break;
            case Note note:
                var at = Pixel(note.Place);
                _shapes.Add(_labels.Place(note.Text, new(at.X, note.Below ? at.Y + 20 : at.Y - 10), note.Ink, Anchor.Middle,
                    downFirst: note.Below));
                break;
        }
    }

    private void Label(Bars bars, BarItem bar)
    {
        if (bars.Along == Along.X) Word(bar.Label, new(Math.Max(_x.Pixel(0), _x.Pixel(bar.Value)) + 6, PixelY(bar.Place) + 4), Ink.Main);
        else Word(bar.Label, new(_x.Pixel(bar.Place), _y.Pixel(Math.Max(0, bar.Value)) - 5), Ink.Main, Anchor.Middle);
    }

    /// <summary>
    /// The values of the intervals; the series is named once, beside its first interval, on a phone before its first value.
    /// </summary>
    private void Label(Ranges ranges)
    {
        var joined = _narrow && ranges is { Along: Along.X, Name.Length: > 0, Items: [{ Label.Length: > 0 }, ..] };
        for (var i = 0; i < ranges.Items.Count; i++)
        {
            var item = ranges.Items[i];
            if (item.Label.Length > 0) Label(ranges, i == 0 && joined ? item with { Label = $"{ranges.Name}: {item.Label}" } : item);
        }

        if (!joined && ranges is { Name.Length: > 0, Items.Count: > 0 }) NameOf(ranges);
    }

    private void Label(Ranges ranges, RangeItem item)
    {
        if (ranges.Along == Along.Y) Word(item.Label, new(_x.Pixel(item.Place), _y.Pixel(item.High) - 8), ranges.Ink, Anchor.Middle);
        else if (_narrow) Word(item.Label, new(_right, PixelY(item.Place) - 9), ranges.Ink, Anchor.End);
        else Word(item.Label, new(_right + 8, PixelY(item.Place) + 4), ranges.Ink);
    }

    private void NameOf(Ranges ranges)
    {
        var first = ranges.Items[0];
        if (ranges.Along == Along.Y)
        {
            _shapes.Add(
                _labels.Place(ranges.Name, new(_x.Pixel(first.Place), _y.Pixel(first.High) - 8), ranges.Ink, Anchor.Middle, bold: true));
            return;
        }

        var width = Face.Bold.Width(ranges.Name, TickSize);
        var (low, high) = (_x.Pixel(first.Low), _x.Pixel(first.High));
        var y = PixelY(first.Place) + 4;
        var spot = high + 10 + width < _right
            ? new Spot(high + 9, y)
            : low - 10 - width > _left ? new Spot(low - 9 - width, y) : new Spot(_left + 2, y - 12);
        _shapes.Add(_labels.Place(ranges.Name, spot, ranges.Ink, bold: true));
    }

    private void Word(string text, Spot at, Ink ink, Anchor anchor = Anchor.Start) => _shapes.Add(_labels.Place(text, at, ink, anchor));
}
