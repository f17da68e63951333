using System.Xml.Linq;
using SplitBatch.Display.Drawing;

namespace SplitBatch.Display.Figures;

public class SvgTests
{
    public static TheoryData<int> Widths => [360, 720, 1000];

    [Theory]
    [MemberData(nameof(Widths))]
    public void A_picture_is_well_formed_and_says_what_it_shows(int width)
    {
        foreach (var figure in All())
        {
            var svg = XDocument.Parse(figure.ToSvg(width)).Root!;
            XNamespace ns = "http://www.w3.org/2000/svg";
            Assert.Equal("img", svg.Attribute("role")!.Value);
            Assert.Equal(figure.Title, svg.Element(ns + "title")!.Value);
            Assert.Equal(figure.AltText, svg.Element(ns + "desc")!.Value);
        }
    }

    [Fact]
    public void The_same_figure_gives_the_same_characters() => Assert.Equal(Samples.Bars().ToSvg(), Samples.Bars().ToSvg());

    [Theory]
    [MemberData(nameof(Widths))]
    public void Every_text_stays_inside_the_picture(int width)
    {
        foreach (var figure in All())
        {
            var scene = figure.Compose(width);
            Assert.All(scene.Shapes.OfType<Drawing.Writing>(), text =>
            {
                var length = Drawing.Face.For(text.Bold).Width(text.Text, text.Size);
                var left = text.Anchor switch { Drawing.Anchor.Start => text.At.X, Drawing.Anchor.Middle => text.At.X - length / 2,
                    _ => text.At.X - length };
                Assert.True(left >= 0 && left + length <= scene.Width + 0.5,
                    $"\"{text.Text}\" runs from {left:0} to {left + length:0} of {scene.Width:0}");
                Assert.InRange(text.At.Y, 0, scene.Height);
            });
        }
    }

    [Fact]
    public void A_title_that_is_a_script_stays_text()
    {
        var svg = Samples.Intervals("<script>alert(1)</script> & \"more\"").ToSvg();
        Assert.DoesNotContain("<script", svg, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("&lt;script&gt;", svg, StringComparison.Ordinal);
    }

    [Fact]
    public void The_beers_keep_their_colour_and_shape()
    {
        var shapes = Samples.Intervals().Compose(720).Shapes;
        Assert.Contains(shapes, s => s is Drawing.Disc d && d.Fill == Theme.Colour(Ink.BeerA));
        Assert.Contains(shapes, s => s is Drawing.Area { Corners.Count: 4 } a && a.Fill == Theme.Colour(Ink.BeerB));
    }

    [Fact]
    public void A_png_is_painted_where_the_native_library_loads()
    {
        var png = Drawing.PngWriter.TryWrite(Samples.Lines().Compose(720), 2, out var reason);
        if (png is null) Assert.Contains("SkiaSharp", reason, StringComparison.Ordinal);
        else Assert.Equal([0x89, (byte)'P', (byte)'N', (byte)'G'], png[..4]);
        Assert.Equal(png, Samples.Lines().ToPng());
    }

    private static Figure[] All() => [Samples.Intervals(), Samples.Bars(), Samples.Lines()];
}
