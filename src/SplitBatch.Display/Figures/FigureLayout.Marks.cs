using SplitBatch.Display.Drawing;

namespace SplitBatch.Display.Figures;

/// <content>The marks themselves.</content>
internal sealed partial class FigureLayout
{
    private void Draw(Zone zone)
    {
        var fill = Theme.Wash(zone.Ink);
        if (zone.Along == Along.X)
        {
            var (from, to) = (_x.Pixel(zone.Low), _x.Pixel(zone.High));
            _shapes.Add(Area.Box(from, _top, to - from, _bottom - _top, fill));
        }
        else
        {
            var (from, to) = (_y.Pixel(zone.High), _y.Pixel(zone.Low));
            _shapes.Add(Area.Box(_left, from, _right - _left, to - from, fill));
        }
    }

    private void Draw(Mark mark)
    {
        var colour = Theme.Colour(mark.Ink);
        switch (mark)
        {
            case Rule { Along: Along.X } rule:
                _shapes.Add(new Stroke([new(_x.Pixel(rule.Value), _top), new(_x.Pixel(rule.Value), _bottom)], colour, 1.5,
                    Theme.IsDashed(rule.Ink)));
                break;
            case Rule rule:
                _shapes.Add(new Stroke([new(_left, _y.Pixel(rule.Value)), new(_right, _y.Pixel(rule.Value))], colour, 1.5,
                    Theme.IsDashed(rule.Ink)));
                break;
            case Ribbon ribbon:
                var upper = ribbon.Points.Select(p => new Spot(_x.Pixel(p.X), _y.Pixel(p.High)));
                var lower = ribbon.Points.Reverse().Select(p => new Spot(_x.Pixel(p.X), _y.Pixel(p.Low)));
                _shapes.Add(new Area([.. upper, .. lower], Theme.Wash(ribbon.Ink)));
                break;
            case Curve curve:
                _shapes.Add(new Stroke([.. curve.Points.Select(Pixel)], colour, 2, Theme.IsDashed(curve.Ink)));
                break;
            case Bars bars:
                foreach (var bar in bars.Items) Draw(bars, bar);
                break;
            case Ranges ranges:
                foreach (var range in ranges.Items) Draw(ranges, range);
                break;
            case Dots dots:
                foreach (var point in dots.Points) Point(Pixel(point), dots.Ink);
                break;
        }
    }

    private void Draw(Bars bars, BarItem bar)
    {
        var colour = bars.Ink is Ink.Faint ? "#b9b5ab" : Theme.Colour(bars.Ink);
        if (bars.Along == Along.X)
        {
            var half = Math.Min(11, Math.Abs(PixelY(bar.Place + bars.Width / 2) - PixelY(bar.Place)));
            var (from, to) = (_x.Pixel(0), _x.Pixel(bar.Value));
            _shapes.Add(Area.Box(Math.Min(from, to), PixelY(bar.Place) - half, Math.Abs(to - from), 2 * half, colour));
        }
        else
        {
            var half = Math.Min(26, _x.Pixel(bar.Place + bars.Width / 2) - _x.Pixel(bar.Place));
            var (from, to) = (_y.Pixel(0), _y.Pixel(bar.Value));
            _shapes.Add(Area.Box(_x.Pixel(bar.Place) - half, Math.Min(from, to), 2 * half, Math.Abs(to - from), colour));
        }
    }

    private void Draw(Ranges ranges, RangeItem item)
    {
        var colour = Theme.Colour(ranges.Ink);
        var across = ranges.Along == Along.X;
        Spot Spot(double value) => across ? new(_x.Pixel(value), PixelY(item.Place)) : new(_x.Pixel(item.Place), _y.Pixel(value));
        Spot Shift(Spot s, double along, double aside) => across ? new(s.X + along, s.Y + aside) : new(s.X + aside, s.Y - along);

        var scale = across ? _x : _y;
        var (low, high) = (Spot(item.Low), Spot(item.High));
        _shapes.Add(new Stroke([low, high], colour, 2.5));
        End(low, item.Low < scale.Low, +1);
        End(high, item.High > scale.High, -1);
        if (item.Best is { } best) Point(Spot(best), ranges.Ink);

        void End(Spot at, bool open, int inward) => _shapes.Add(open
            ? new Area([at, Shift(at, inward * 9, -5), Shift(at, inward * 9, 5)], colour)
            : new Stroke([Shift(at, 0, -5), Shift(at, 0, 5)], colour, 2.5));
    }

    /// <summary>A point: round for A, square for B, a diamond for what belongs to neither.</summary>
    private void Point(Spot at, Ink ink)
    {
        var colour = Theme.Colour(ink);
        _shapes.Add(ink switch
        {
            Ink.BeerA => new Disc(at, 5.5, colour, Theme.Paper),
            Ink.BeerB => Area.Box(at.X - 5, at.Y - 5, 10, 10, colour, Theme.Paper),
            Ink.Faint => new Disc(at, 3.5, colour, Theme.Paper),
            _ => new Area([new(at.X, at.Y - 6.5), new(at.X + 6.5, at.Y), new(at.X, at.Y + 6.5), new(at.X - 6.5, at.Y)], colour,
                Theme.Paper),
        });
    }
}
