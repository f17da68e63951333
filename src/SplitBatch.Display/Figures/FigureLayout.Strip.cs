using SplitBatch.Display.Drawing;

namespace SplitBatch.Display.Figures;

/// <content>The strip above the plot: what the upright axis measures, and the names of upright lines and shaded stretches.</content>
internal sealed partial class FigureLayout
{
    private const double StripLine = 16;

    private sealed record Tag(string Text, double X, double Left, int Row, Ink Ink, bool IsRule);

    private sealed record Strip(IReadOnlyList<Tag> Tags, double Height, int HeadingRow);

    /// <summary>Gives every name above the plot a row of its own width, as few rows as fit.</summary>
    private Strip PlanStrip()
    {
        var wanted = _figure.Marks.Select(mark => mark switch
        {
            Rule { Along: Along.X, Name.Length: > 0 } rule => (rule.Name, X: _x.Pixel(rule.Value), rule.Ink, IsRule: true),
            Zone { Along: Along.X, Name.Length: > 0 } zone =>
                (zone.Name, X: (_x.Pixel(zone.Low) + _x.Pixel(zone.High)) / 2, zone.Ink, IsRule: false),
            _ => (Name: "", X: 0.0, Ink: Ink.Main, IsRule: false),
        }).Where(t => t.Name.Length > 0).OrderBy(t => t.X);

        var heading = _figure.Y.IsCategorical ? "" : _figure.Y.Title;
        var headingEnd = heading.Length == 0 ? 0 : Pad + Face.Regular.Width(heading, TickSize);
        var own = heading.Length > 0 && _figure.Marks.Any(m => m is Rule { Along: Along.X } rule && _x.Pixel(rule.Value) < headingEnd + 6);
        var ends = heading.Length == 0 || own ? new List<double>() : [headingEnd];
        var tags = new List<Tag>();
        foreach (var (name, x, ink, isRule) in wanted)
        {
            var width = Face.Regular.Width(name, TickSize);
            var left = Math.Max(2, Math.Min(x - width / 2, _width - 2 - width));
            var row = ends.FindIndex(end => end + 10 <= left);
            if (row < 0)
            {
                row = ends.Count;
                ends.Add(0);
            }

            ends[row] = left + width;
            tags.Add(new Tag(name, x, left, row, ink, isRule));
        }

        return new Strip(tags, (ends.Count + (own ? 1 : 0)) * StripLine, own ? ends.Count : 0); // a line never runs through the heading
    }

    private void DrawStrip(Strip strip, double top)
    {
        var bottom = top + strip.Height;
        if (!_figure.Y.IsCategorical && _figure.Y.Title.Length > 0)
            _shapes.Add(new Writing(new(Pad, bottom - strip.HeadingRow * StripLine - 4), _figure.Y.Title, TickSize, Theme.Quiet));
        foreach (var tag in strip.Tags)
        {
            var baseline = bottom - tag.Row * StripLine - 4;
            if (tag.IsRule)
                _shapes.Add(new Stroke([new(tag.X, _top), new(tag.X, baseline + 3)], Theme.Colour(tag.Ink), 1.5, Theme.IsDashed(tag.Ink)));
        }

        foreach (var tag in strip.Tags)
        {
            var baseline = bottom - tag.Row * StripLine - 4;
            _labels.Take(tag.Left, baseline - TickSize, tag.Left + Face.Regular.Width(tag.Text, TickSize), baseline + 3);
            _shapes.Add(new Writing(new(tag.Left, baseline), tag.Text, TickSize, Theme.WordColour(tag.Ink), Halo: Theme.Paper));
        }
    }
}
