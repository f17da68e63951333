namespace SplitBatch.Display.Drawing;

/// <summary>Contrast by WCAG 2.2 (success criteria 1.4.3 and 1.4.11), and difference without colour.</summary>
public class ThemeTests
{
    public static TheoryData<Ink> Inks => [.. Enum.GetValues<Ink>()];

    [Theory]
    [MemberData(nameof(Inks))]
    public void Words_stand_out_from_paper_and_shade(Ink ink)
    {
        Assert.True(Contrast(Theme.WordColour(ink), Theme.Paper) >= 4.5, $"{ink} on paper");
        foreach (var under in Enum.GetValues<Ink>())
            Assert.True(Contrast(Theme.WordColour(ink), Theme.Wash(under)) >= 4.5,
                $"{ink} on the wash of {under}: {Contrast(Theme.WordColour(ink), Theme.Wash(under)):0.00}");
    }

    [Theory]
    [MemberData(nameof(Inks))]
    public void Marks_stand_out_from_paper(Ink ink) => Assert.True(Contrast(Theme.Colour(ink), Theme.Paper) >= 3);

    [Fact]
    public void The_beers_differ_in_grey() =>
        Assert.True(Contrast(Theme.Colour(Ink.BeerA), Theme.Colour(Ink.BeerB)) >= 2,
            $"{Contrast(Theme.Colour(Ink.BeerA), Theme.Colour(Ink.BeerB)):0.00}");

    [Fact]
    public void Contrast_is_computed_as_the_guideline_does()
    {
        Assert.Equal(21, Contrast("#000000", "#ffffff"), 0.001);
        // the usual lightest grey for text, as published with the guideline's techniques
        Assert.Equal(4.54, Contrast("#767676", "#ffffff"), 0.005);
    }

    /// <summary>Two common kinds of colour blindness, by the matrices of Machado, Oliveira and Fernandes (2009), severity 1.</summary>
    [Theory]
    [InlineData(0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998)] // protanopia
    [InlineData(0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.011820, 0.042940, 0.968881)] // deuteranopia
    public void The_beers_differ_for_the_colour_blind(double a, double b, double c, double d, double e, double f, double g,
        double h, double i)
    {
        double[] Seen(string colour)
        {
            var (x, y, z) = (Linear(colour, 1), Linear(colour, 3), Linear(colour, 5));
            return [a * x + b * y + c * z, d * x + e * y + f * z, g * x + h * y + i * z];
        }

        var distance = Math.Sqrt(Seen(Theme.Colour(Ink.BeerA)).Zip(Seen(Theme.Colour(Ink.BeerB)), (p, q) => (p - q) * (p - q)).Sum());
        Assert.True(distance > 0.2, $"{distance:0.000}");
    }

    private static double Contrast(string one, string other)
    {
        var (high, low) = (Math.Max(Luminance(one), Luminance(other)), Math.Min(Luminance(one), Luminance(other)));
        return (high + 0.05) / (low + 0.05);
    }

    private static double Luminance(string colour) => 0.2126 * Linear(colour, 1) + 0.7152 * Linear(colour, 3) + 0.0722 * Linear(colour, 5);

    private static double Linear(string colour, int at)
    {
        var c = Convert.ToInt32(colour.Substring(at, 2), 16) / 255.0;
        return c <= 0.04045 ? c / 12.92 : Math.Pow((c + 0.055) / 1.055, 2.4);
    }
}
