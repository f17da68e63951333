using SplitBatch.Display.Drawing;

namespace SplitBatch.Display.WriteUp;

/// <summary>
/// Lays the summary picture out: question on top, steps side by side (wide) or one below the other (square), verdict at the foot.
/// </summary>
internal static class SummaryLayout
{
    private const double Margin = 56;

    public static Scene Compose(SummaryPicture picture, PictureShape shape)
    {
        var (width, height) = shape == PictureShape.Wide ? (1600.0, 900.0) : (1200.0, 1200.0);
        var shapes = new List<Shape> { Area.Box(0, 0, width, height, Theme.Paper), Area.Box(0, 0, width, 14, Theme.LinkColour) };
        var y = Text(shapes, picture.Question, Margin, 46, width - 2 * Margin, 42, 0.16 * height, Theme.Text, bold: true);

        var small = picture.SmallPrint.Length > 0 ? 40 : 0;
        var verdictHeight = VerdictHeight(picture.Verdict, width);
        var foot = height - small - verdictHeight - 24;
        shapes.Add(Area.Box(Margin - 24, foot, width - 2 * Margin + 48, verdictHeight, Theme.LinkColour));
        Text(shapes, picture.Verdict, Margin, foot + 16, width - 2 * Margin, VerdictSize, verdictHeight, Theme.Paper, bold: true);
        if (small > 0) Text(shapes, picture.SmallPrint, Margin, height - 50, width - 2 * Margin, 18, 40, Theme.Quiet);

        y += 28;
        var count = Math.Max(1, picture.Steps.Count);
        var gap = 40.0;
        for (var i = 0; i < picture.Steps.Count; i++)
        {
            if (shape == PictureShape.Wide)
            {
                var each = (width - 2 * Margin - gap * (count - 1)) / count;
                Step(shapes, picture.Steps[i], Margin + i * (each + gap), y, each, foot - 24 - y, below: true);
            }
            else
            {
                var each = (foot - 16 - y) / count;
                Step(shapes, picture.Steps[i], Margin, y + i * each, width - 2 * Margin, each - 16, below: false);
            }
        }

        return new Scene(width, height, picture.Question, picture.AltText, shapes);
    }

    private const double VerdictSize = 30;

    private static readonly int[] Widths = [360, 400, 440, 500, 560, 640, 720];

    private static readonly double?[] Heights = [null, 110, 140, 170, 200, 230, 260, 300];

    private static double VerdictHeight(string verdict, double width) =>
        Math.Min(6, Face.Bold.Wrap(verdict, VerdictSize, width - 2 * Margin).Count) * VerdictSize * 1.3 + 36;

    private static void Step(List<Shape> shapes, SummaryStep step, double left, double top, double width, double height, bool below)
    {
        shapes.Add(new Stroke([new(left, top), new(left + width, top)], Theme.Quiet, 2));
        var textWidth = below || step.Figure is null ? width : width * 0.42;
        var y = Text(shapes, step.Heading, left, top + 12, textWidth, 26, 72, Theme.LinkColour, bold: true);
        y = Text(shapes, step.Text, left, y + 6, textWidth, 22,
            top + height - y - 6 - (below && step.Figure is not null ? height * 0.45 : 0), Theme.Text);
        if (step.Figure is null) return;
        var (x, from, room) = below ? (left, y + 14, width) : (left + width * 0.46, top + 10, width * 0.54);
        Picture(shapes, step.Figure, x, from, room, top + height - from);
    }

    /// <summary>A figure without its heading, as large as the room allows.</summary>
    private static void Picture(List<Shape> shapes, Figures.Figure figure, double left, double top, double width, double height)
    {
        if (height < 60) return;
        var plain = figure with { Title = "", Subtitle = "" };
        var trials =
            from across in Widths
            from down in figure.Y.IsCategorical ? Heights.Take(1) : Heights
            select plain.Compose(across, down);
        var (best, factor, filled) = ((Scene?)null, 0.0, 0.0);
        foreach (var scene in trials)
        {
            var fits = Math.Min(width / scene.Width, height / scene.Height);
            var covers = Math.Min(fits, 1.35) * Math.Sqrt(scene.Width * scene.Height * fits * fits / (width * height));
            if (covers > filled) (best, factor, filled) = (scene, fits, covers);
        }

        shapes.AddRange(best!.Shapes.Select(shape => Move(shape, left, top, factor)));
    }

    private static Shape Move(Shape shape, double left, double top, double by)
    {
        Spot Place(Spot s) => new(left + s.X * by, top + s.Y * by);
        return shape switch
        {
            Stroke line => line with { Through = [.. line.Through.Select(Place)], Width = line.Width * by },
            Area area => area with { Corners = [.. area.Corners.Select(Place)] },
            Disc disc => disc with { Centre = Place(disc.Centre), Radius = disc.Radius * by },
            Writing text => text with { At = Place(text.At), Size = text.Size * by },
            _ => shape,
        };
    }

    /// <summary>Wrapped text from the top down, made smaller until it fits; returns where it ends.</summary>
    private static double Text(List<Shape> shapes, string text, double left, double top, double width, double size, double height,
        string colour, bool bold = false)
    {
        var lines = Face.For(bold).Wrap(text, size, width);
        while (lines.Count * size * 1.3 > height && size > 12) lines = Face.For(bold).Wrap(text, --size, width);
        foreach (var line in lines)
        {
            top += size * 1.3;
            shapes.Add(new Writing(new(left, top - size * 0.3), line, size, colour, bold));
        }

        return top;
    }
}
