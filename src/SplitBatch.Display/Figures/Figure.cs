using SplitBatch.Display.Drawing;
using SplitBatch.Display.Tables;
using SplitBatch.Evidence;

namespace SplitBatch.Display.Figures;

/// <summary>
/// A chart as a value: what it shows, in words and in marks, before any renderer has touched it. Ends a notebook cell as
/// a chart; <see cref="ToSvg"/> and <see cref="ToPng"/> make pictures of it, <see cref="Numbers"/> is what it was drawn from.
/// </summary>
public sealed record Figure
{
    /// <summary>What the figure shows, as a heading that says it.</summary>
    public required string Title { get; init; }

    /// <summary>What was measured, of whom or of how many.</summary>
    public string Subtitle { get; init; } = "";

    /// <summary>What a reader should see in it, in one or two sentences: the text alternative.</summary>
    public required string Reading { get; init; }

    /// <summary>The sentences of the phrasebook that <see cref="Reading"/> is made of; empty where a chart reads itself.</summary>
    public IReadOnlyList<Claim> Claims { get; private init; } = [];

    /// <summary>
    /// The same figure, read in sentences of the phrasebook, so that a caption cannot say anything else than the text beside it.
    /// </summary>
    /// <param name="claims">At least one sentence.</param>
    public Figure ReadAs(params IEnumerable<Claim> claims)
    {
        Claim[] said = [.. claims];
        return said.Length == 0 ? this : this with { Claims = said, Reading = string.Join(" ", said.Select(claim => claim.Sentence)) };
    }

    /// <summary>The horizontal axis.</summary>
    public required Axis X { get; init; }

    /// <summary>The vertical axis.</summary>
    public required Axis Y { get; init; }

    /// <summary>The marks, from back to front.</summary>
    public required IReadOnlyList<Mark> Marks { get; init; }

    /// <summary>The numbers behind the figure.</summary>
    public required Table Numbers { get; init; }

    /// <summary>The text alternative in full: title and reading.</summary>
    public string AltText => $"{Title.TrimEnd('.')}. {Reading}";

    /// <summary>The figure as a stand-alone SVG picture; the same figure gives the same characters everywhere.</summary>
    /// <param name="width">Its width in pixels, in [280, 2000]; below 480 the layout is that for a phone.</param>
    /// <exception cref="ArgumentOutOfRangeException">The width lies outside.</exception>
    public string ToSvg(int width = 720) => SvgWriter.Write(Compose(width));

    /// <summary>The figure as a PNG picture, or null where this machine cannot paint one (<see cref="ToSvg"/> always works).</summary>
    /// <param name="width">Its width in layout pixels, in [280, 2000].</param>
    /// <param name="scale">Image pixels per layout pixel, in [0.5, 4].</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public byte[]? ToPng(int width = 720, double scale = 2)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(scale, 0.5);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(scale, 4);
        return PngWriter.TryWrite(Compose(width), scale, out _);
    }

    /// <summary>Title and reading, as one line.</summary>
    public override string ToString() => AltText;

    internal Scene Compose(int width, double? plotHeight = null)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(width, 280);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(width, 2000);
        return FigureLayout.Compose(this, width, plotHeight);
    }
}
