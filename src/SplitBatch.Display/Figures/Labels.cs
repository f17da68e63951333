using SplitBatch.Display.Drawing;

namespace SplitBatch.Display.Figures;

/// <summary>Places words so that they stay inside the picture and off each other.</summary>
internal sealed class Labels(double left, double right)
{
    /// <summary>Where words may begin, from the top.</summary>
    public double Top { get; set; }

    private readonly List<(double Left, double Top, double Right, double Bottom)> _taken = [];

    /// <summary>
    /// The words at the wanted spot, or as near above or below it as there is room; above is tried first unless told otherwise.
    /// </summary>
    public Writing Place(string text, Spot wanted, Ink ink, Anchor anchor = Anchor.Start, double size = 12, bool bold = false,
        bool downFirst = false)
    {
        var width = Face.For(bold).Width(text, size);
        var x = anchor switch { Anchor.Start => wanted.X, Anchor.Middle => wanted.X - width / 2, _ => wanted.X - width };
        x = Math.Max(left, Math.Min(x, right - width));
        var y = wanted.Y;
        for (var k = 1; k <= 16 && (y - size < Top || Hits(x, y, width, size)); k++)
            y = wanted.Y + (k % 2 == 1 == downFirst ? 1 : -1) * ((k + 1) / 2) * (size + 2);
        Take(x, y - size, x + width, y + 3);
        return new Writing(new(x, y), text, size, Theme.WordColour(ink), bold, Halo: Theme.Paper);
    }

    /// <summary>Keeps later words off a box.</summary>
    public void Take(double boxLeft, double top, double boxRight, double bottom) => _taken.Add((boxLeft, top, boxRight, bottom));

    private bool Hits(double x, double y, double width, double size) =>
        _taken.Any(t => x < t.Right + 4 && x + width > t.Left - 4 && y - size < t.Bottom && y + 3 > t.Top);
}
