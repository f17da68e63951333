using SplitBatch.Display.Drawing;
using SplitBatch.Display.Figures;

namespace SplitBatch.Display.WriteUp;

/// <summary>The shape of a picture.</summary>
public enum PictureShape
{
    /// <summary>16:9, 1600 by 900 pixels: for a screen.</summary>
    Wide,

    /// <summary>Square, 1200 by 1200 pixels: for a post.</summary>
    Square,
}

/// <summary>One step of a trial in a <see cref="SummaryPicture"/>.</summary>
/// <param name="Heading">What it is: the doses, the lab, the panel.</param>
/// <param name="Text">What came out, in a sentence or two.</param>
/// <param name="Figure">The figure that shows it; null for words only.</param>
public sealed record SummaryStep(string Heading, string Text, Figure? Figure = null);

/// <summary>The whole trial in one picture: the question, what was done and found step by step, and the verdict.</summary>
/// <param name="Question">The question that was asked.</param>
/// <param name="Steps">One to four steps, in the order of the work.</param>
/// <param name="Verdict">What the trial shows, in a sentence.</param>
public sealed record SummaryPicture(string Question, IReadOnlyList<SummaryStep> Steps, string Verdict)
{
    /// <summary>A line of small print, such as that the data are invented; may be blank.</summary>
    public string SmallPrint { get; init; } = "";

    /// <summary>The whole picture in words.</summary>
    public string AltText => $"{Question} {string.Join(" ", Steps.Select(s => $"{s.Heading}: {s.Text}"))} {Verdict} {SmallPrint}".Trim();

    /// <summary>The picture as a stand-alone SVG.</summary>
    /// <param name="shape">Its shape.</param>
    public string ToSvg(PictureShape shape = PictureShape.Wide) => SvgWriter.Write(SummaryLayout.Compose(this, shape));

    /// <summary>The picture as a PNG, or null where this machine cannot paint one.</summary>
    /// <param name="shape">Its shape.</param>
    public byte[]? ToPng(PictureShape shape = PictureShape.Wide) => PngWriter.TryWrite(SummaryLayout.Compose(this, shape), 1, out _);
}
