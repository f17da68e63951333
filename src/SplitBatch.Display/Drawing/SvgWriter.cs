using System.Globalization;
using System.Text;

namespace SplitBatch.Display.Drawing;

/// <summary>Writes a scene as a stand-alone SVG: the same scene gives the same characters, on any machine.</summary>
internal static class SvgWriter
{
    /// <summary>The drawing as one <c>svg</c> element with a title, a description and no outside references.</summary>
    public static string Write(Scene scene)
    {
        var svg = new StringBuilder();
        svg.Append(CultureInfo.InvariantCulture,
            $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {N(scene.Width)} {N(scene.Height)}\"");
        svg.Append(CultureInfo.InvariantCulture, $" width=\"{N(scene.Width)}\" height=\"{N(scene.Height)}\" role=\"img\"");
        svg.Append(CultureInfo.InvariantCulture, $" font-family=\"{Face.Family}\">\n");
        svg.Append(CultureInfo.InvariantCulture, $"<title>{Xml.Text(scene.Title)}</title>\n<desc>{Xml.Text(scene.Description)}</desc>\n");
        foreach (var shape in scene.Shapes) Append(svg, shape);
        return svg.Append("</svg>\n").ToString();
    }

    private static void Append(StringBuilder svg, Shape shape)
    {
        switch (shape)
        {
            case Stroke { Through: [var a, var b] } line:
                svg.Append(CultureInfo.InvariantCulture,
                    $"<line x1=\"{N(a.X)}\" y1=\"{N(a.Y)}\" x2=\"{N(b.X)}\" y2=\"{N(b.Y)}\"{Pen(line)}/>\n");
                break;
            case Stroke line:
                svg.Append(CultureInfo.InvariantCulture, $"<polyline points=\"{Points(line.Through)}\" fill=\"none\"{Pen(line)}/>\n");
                break;
            case Area area:
                svg.Append(CultureInfo.InvariantCulture,
                    $"<polygon points=\"{Points(area.Corners)}\" fill=\"{area.Fill}\"{Outline(area.Outline)}/>\n");
                break;
            case Disc disc:
                svg.Append(CultureInfo.InvariantCulture,
                    $"<circle cx=\"{N(disc.Centre.X)}\" cy=\"{N(disc.Centre.Y)}\" r=\"{N(disc.Radius)}\" "
                        + $"fill=\"{disc.Fill}\"{Outline(disc.Outline)}/>\n");
                break;
            case Writing text:
                svg.Append(CultureInfo.InvariantCulture,
                    $"<text x=\"{N(text.At.X)}\" y=\"{N(text.At.Y)}\" font-size=\"{N(text.Size)}\" fill=\"{text.Colour}\"");
                if (text.Bold) svg.Append(" font-weight=\"bold\"");
                if (text.Anchor != Anchor.Start)
                    svg.Append(CultureInfo.InvariantCulture, $" text-anchor=\"{(text.Anchor == Anchor.End ? "end" : "middle")}\"");
                if (text.Upwards) svg.Append(CultureInfo.InvariantCulture, $" transform=\"rotate(-90 {N(text.At.X)} {N(text.At.Y)})\"");
                if (text.Halo is { } halo)
                    svg.Append(CultureInfo.InvariantCulture,
                        $" stroke=\"{halo}\" stroke-width=\"3\" stroke-linejoin=\"round\" paint-order=\"stroke\"");
                svg.Append(CultureInfo.InvariantCulture, $">{Xml.Text(text.Text)}</text>\n");
                break;
            default:
                throw new NotSupportedException($"There is no way to write a {shape.GetType().Name} as SVG.");
        }
    }

    private static string Pen(Stroke line) =>
        $" stroke=\"{line.Colour}\" stroke-width=\"{N(line.Width)}\"{(line.Dashed ? " stroke-dasharray=\"6 4\"" : "")}";

    private static string Outline(string? colour) => colour is null ? "" : $" stroke=\"{colour}\" stroke-width=\"1.5\"";

    private static string Points(IEnumerable<Spot> spots) => string.Join(' ', spots.Select(s => $"{N(s.X)},{N(s.Y)}"));

    private static string N(double value) => Math.Round(value, 2).ToString("0.##", CultureInfo.InvariantCulture);
}
