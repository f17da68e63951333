using SplitBatch.Display.Drawing;

namespace SplitBatch.Display.Notebooks;

/// <summary>A result as the sentence it says about itself.</summary>
internal static class SentenceCard
{
    public static string Html(object? value) =>
        $"<div style=\"border-left:4px solid {Theme.Colour(Ink.BeerA)};padding:6px 12px;margin:0.5em "
            + $"0;max-width:70ch;font-size:15px;line-height:1.45;color:{Theme.Text};background:{Theme.Paper};white-space:pre-line\">" +
        $"{Xml.Text(value?.ToString() ?? "")}</div>";
}
