namespace SplitBatch.Display.Drawing;

/// <summary>A place on a page, in pixels from the left and from the top.</summary>
internal readonly record struct Spot(double X, double Y);

/// <summary>Where a text stands relative to its spot.</summary>
internal enum Anchor
{
    Start,
    Middle,
    End,
}

/// <summary>One thing drawn: a renderer knows how to put each of them on its medium, and nothing else.</summary>
internal abstract record Shape;

/// <summary>A line through spots.</summary>
internal sealed record Stroke(IReadOnlyList<Spot> Through, string Colour, double Width = 1, bool Dashed = false) : Shape;

/// <summary>A filled area with straight sides.</summary>
internal sealed record Area(IReadOnlyList<Spot> Corners, string Fill, string? Outline = null) : Shape
{
    public static Area Box(double left, double top, double width, double height, string fill, string? outline = null) =>
        new([new(left, top), new(left + width, top), new(left + width, top + height), new(left, top + height)], fill, outline);
}

/// <summary>A filled circle.</summary>
internal sealed record Disc(Spot Centre, double Radius, string Fill, string? Outline = null) : Shape;

/// <summary>One line of text; the spot is on its baseline.</summary>
internal sealed record Writing(
    Spot At, string Text, double Size, string Colour, bool Bold = false, Anchor Anchor = Anchor.Start, bool Upwards = false,
    string? Halo = null) : Shape;

/// <summary>A finished drawing: its size in pixels, what it is called, what it says in words, and its shapes from back to front.</summary>
internal sealed record Scene(double Width, double Height, string Title, string Description, IReadOnlyList<Shape> Shapes);
