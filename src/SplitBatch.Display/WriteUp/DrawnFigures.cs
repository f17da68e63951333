using SplitBatch.Display.Drawing;
using SplitBatch.Display.Figures;

namespace SplitBatch.Display.WriteUp;

/// <summary>The figures of a document as pictures, each drawn once however many formats show it.</summary>
internal sealed class DrawnFigures(IReadOnlyList<Figure> figures)
{
    private readonly Drawn[] all = [.. figures.Select(figure => new Drawn(figure))];

    /// <summary>The pictures of a figure.</summary>
    /// <param name="index">Its place in the document, from 0.</param>
    public Drawn this[int index] => all[index];

    /// <summary>Paints every figure, on all processors.</summary>
    public void PaintAll() => Parallel.ForEach(all, drawn => _ = drawn.Png);

    /// <summary>The pictures of one figure.</summary>
    internal sealed class Drawn(Figure figure)
    {
        private const int PageWidth = 720;
        private readonly Lazy<Scene> page = new(() => figure.Compose(PageWidth));
        private readonly Lazy<byte[]?> png = new(() => figure.ToPng(PageWidth));
        private readonly Lazy<string> pageSvg = new(() => figure.ToSvg(PageWidth));

        /// <summary>Its width and height for a page, in pixels.</summary>
        public (double Width, double Height) Size => (page.Value.Width, page.Value.Height);

        /// <summary>For a page.</summary>
        public string PageSvg => pageSvg.Value;

        /// <summary>For a phone.</summary>
        public string PhoneSvg => figure.ToSvg(360);

        /// <summary>As pixels; null where this machine cannot paint.</summary>
        public byte[]? Png => png.Value;
    }
}
