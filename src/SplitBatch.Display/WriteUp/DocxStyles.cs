using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Wordprocessing;
using SplitBatch.Display.Drawing;
using A = DocumentFormat.OpenXml.Drawing;
using DW = DocumentFormat.OpenXml.Drawing.Wordprocessing;
using Pic = DocumentFormat.OpenXml.Drawing.Pictures;

namespace SplitBatch.Display.WriteUp;

/// <summary>The look of the word-processor file.</summary>
internal static class DocxStyles
{
    private const double EmuPerPixel = 9525;
    private const double TextWidth = 640;

    public static Styles Create() => new(
        new DocDefaults(
            new RunPropertiesDefault(new RunPropertiesBaseStyle(
                new RunFonts { Ascii = "Georgia", HighAnsi = "Georgia" }, new FontSize { Val = "22" }, new Languages { Val = "en-GB" })),
            new ParagraphPropertiesDefault(
                new ParagraphPropertiesBaseStyle(
                    new SpacingBetweenLines { After = "140", Line = "288", LineRule = LineSpacingRuleValues.Auto }))),
        new Style(new StyleName { Val = "Normal" }, new PrimaryStyle())
        {
            Type = StyleValues.Paragraph,
            StyleId = "Normal",
            Default = true,
        },
        Paragraph("Title", "Title", 40, bold: true, before: 0, after: 120, outline: null, sans: true),
        Paragraph("Subtitle", "Subtitle", 21, bold: false, before: 0, after: 240, outline: null, sans: true, colour: Theme.Quiet),
        Paragraph("Heading1", "heading 1", 30, bold: true, before: 400, after: 120, outline: 0, sans: true),
        Paragraph("Heading2", "heading 2", 25, bold: true, before: 300, after: 100, outline: 1, sans: true),
        Paragraph("Heading3", "heading 3", 22, bold: true, before: 240, after: 80, outline: 2, sans: true),
        Paragraph("Heading4", "heading 4", 22, bold: true, before: 200, after: 80, outline: 3, sans: true),
        Paragraph("Caption", "caption", 18, bold: false, before: 40, after: 200, outline: null, sans: true, colour: Theme.Quiet),
        Paragraph("TableCaption", "Table caption", 19, bold: true, before: 200, after: 80, outline: null, sans: true, keepNext: true),
        Paragraph("TableText", "Table text", 17, bold: false, before: 20, after: 20, outline: null, sans: true),
        WithLeftBar("Callout", "Callout", Theme.LinkColour, "F4F1EA"),
        WithLeftBar("Quote", "Quote", Theme.Quiet, null),
        new Style(
            new StyleName { Val = "List Bullet" },
            new BasedOn { Val = "Normal" },
            new StyleParagraphProperties(
                new NumberingProperties(new NumberingLevelReference { Val = 0 }, new NumberingId { Val = 1 }),
                new SpacingBetweenLines { After = "60" },
                new Indentation { Left = "400", Hanging = "260" })) { Type = StyleValues.Paragraph, StyleId = "ListBullet" });

    public static Numbering BulletNumbering() => new(
        new AbstractNum(new Level(
            new NumberingFormat { Val = NumberFormatValues.Bullet },
            new LevelText { Val = "\u2022" },
            new PreviousParagraphProperties(new Indentation { Left = "400", Hanging = "260" })) { LevelIndex = 0 })
            {
                AbstractNumberId = 1,
            },
        new NumberingInstance(new AbstractNumId { Val = 1 }) { NumberID = 1 });

    public static TableProperties TableFrame() => new(
        new TableWidth { Width = "5000", Type = TableWidthUnitValues.Pct },
        new TableBorders(
            new TopBorder { Val = BorderValues.Single, Size = 12, Color = Theme.Text[1..] },
            new BottomBorder { Val = BorderValues.Single, Size = 6, Color = Theme.Text[1..] },
            new InsideHorizontalBorder { Val = BorderValues.Single, Size = 4, Color = Theme.Grid[1..] }),
        new TableLook { FirstRow = true });

    public static DocumentFormat.OpenXml.Wordprocessing.Drawing Picture(string id, uint number, string name, string description,
        double width, double height)
    {
        var scale = Math.Min(1, TextWidth / width);
        var (x, y) = ((long)(width * scale * EmuPerPixel), (long)(height * scale * EmuPerPixel));
        return new DocumentFormat.OpenXml.Wordprocessing.Drawing(new DW.Inline(
            new DW.Extent { Cx = x, Cy = y },
            new DW.DocProperties { Id = number, Name = $"Figure {number}", Title = name, Description = description },
            new DW.NonVisualGraphicFrameDrawingProperties(new A.GraphicFrameLocks { NoChangeAspect = true }),
            new A.Graphic(new A.GraphicData(new Pic.Picture(
                new Pic.NonVisualPictureProperties(new Pic.NonVisualDrawingProperties { Id = number, Name = $"figure-{number}.png" },
                    new Pic.NonVisualPictureDrawingProperties()),
                new Pic.BlipFill(new A.Blip { Embed = id }, new A.Stretch(new A.FillRectangle())),
                new Pic.ShapeProperties(
                    new A.Transform2D(new A.Offset { X = 0, Y = 0 }, new A.Extents { Cx = x, Cy = y }),
                    new A.PresetGeometry(new A.AdjustValueList()) { Preset = A.ShapeTypeValues.Rectangle })))
                    {
                        Uri = "http://schemas.openxmlformats.org/drawingml/2006/picture",
                    }))
        { DistanceFromTop = 0, DistanceFromBottom = 0, DistanceFromLeft = 0, DistanceFromRight = 0 });
    }

    private static Style Paragraph(string id, string name, int halfPoints, bool bold, int before, int after, int? outline, bool sans,
        string? colour = null, bool keepNext = false)
    {
        var shape = new StyleParagraphProperties();
        if (outline is not null || keepNext) shape.AppendChild(new KeepNext());
        shape.AppendChild(new SpacingBetweenLines { Before = Text(before), After = Text(after) });
        if (outline is { } level) shape.AppendChild(new OutlineLevel { Val = level });
        var face = new StyleRunProperties();
        if (sans) face.AppendChild(new RunFonts { Ascii = "Verdana", HighAnsi = "Verdana" });
        if (bold) face.AppendChild(new Bold());
        face.AppendChild(new Color { Val = (colour ?? Theme.Text)[1..] });
        face.AppendChild(new FontSize { Val = Text(halfPoints) });
        return new Style(new StyleName { Val = name }, new BasedOn { Val = "Normal" }, new NextParagraphStyle { Val = "Normal" },
            new PrimaryStyle(), shape, face)
        {
            Type = StyleValues.Paragraph,
            StyleId = id,
        };
    }

    private static Style WithLeftBar(string id, string name, string colour, string? fill)
    {
        var shape = new StyleParagraphProperties(
            new ParagraphBorders(new LeftBorder { Val = BorderValues.Single, Size = 36, Space = 8, Color = colour[1..] }));
        if (fill is not null) shape.AppendChild(new Shading { Val = ShadingPatternValues.Clear, Color = "auto", Fill = fill });
        shape.AppendChild(new SpacingBetweenLines { After = "80" });
        shape.AppendChild(new Indentation { Left = "240" });
        return new Style(new StyleName { Val = name }, new BasedOn { Val = "Normal" }, shape)
        {
            Type = StyleValues.Paragraph,
            StyleId = id,
        };
    }

    private static string Text(int number) => number.ToString(System.Globalization.CultureInfo.InvariantCulture);
}
