namespace SplitBatch.Display.Drawing;

/// <summary>A finished drawing: its size in pixels, what it is called, what it says in words, and its shapes from back to front.</summary>
internal sealed record Scene(double Width, double Height, string Title, string Description, IReadOnlyList<Shape> Shapes);
