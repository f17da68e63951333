using System.Net;
using System.Text;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Display.Sheets;

/// <summary>
/// The frame around every sheet, and the small parts that they share. Everything is black on white, because printers drop backgrounds.
/// </summary>
internal static class SheetPage
{
    private const string Css = """
        *{box-sizing:border-box}
        html{font:11pt/1.35 'Liberation Sans','DejaVu Sans',Arial,sans-serif;color:#000;background:#fff}
        body{margin:0 auto;max-width:190mm;padding:4mm}
        h1{font-size:17pt;line-height:1.15;margin:0 0 2mm}
        h2{font-size:12.5pt;margin:5mm 0 1.5mm;break-after:avoid}
        p{margin:0 0 2mm}
        ol,ul{margin:0 0 3mm;padding-left:6mm}
        li{margin-bottom:1.2mm}
        table{border-collapse:collapse;width:100%}
        thead{display:table-header-group}
        tr{break-inside:avoid}
        th,td{border:.3mm solid #000;padding:1.2mm 2mm;text-align:left;vertical-align:middle}
        th{font-size:9pt;font-weight:bold;border-bottom-width:.6mm}
        .code{font-weight:bold;font-variant-numeric:tabular-nums;letter-spacing:.06em;white-space:nowrap}
        .code u{text-underline-offset:.16em;text-decoration-thickness:.35mm}
        .middle{text-align:center}
        .small{font-size:9pt}
        .sealed{border:1mm solid #000;padding:2mm 3mm;margin:0 0 4mm;font-weight:bold}
        .box{display:inline-block;width:4.5mm;height:4.5mm;border:.35mm solid #000;vertical-align:-.8mm}
        .line{display:inline-block;border-bottom:.3mm solid #000;min-width:30mm;height:1.1em}
        .part{break-after:page}
        .part:last-child{break-after:auto}
        /* A border on the very edge of the print area is cut off. */
        @media print{body{max-width:none;padding:0 .6mm}}
        """;

    internal static PrintableSheet Make(string file, string title, bool isSealed, PaperSize paper, string css, string body)
    {
        string size = paper == PaperSize.A4 ? "A4" : "letter";
        string html = $$"""
            <!DOCTYPE html>
            <html lang="en">
            <head>
            <meta charset="utf-8">
            <meta name="viewport" content="width=device-width, initial-scale=1">
            <title>{{Text(title)}}</title>
            <style>
            @page{size:{{size}} portrait;margin:10mm 12mm}
            {{Css}}
            {{css}}
            </style>
            </head>
            <body>
            {{body}}</body>
            </html>

            """;
        return new PrintableSheet(file, title, isSealed, html.ReplaceLineEndings("\n"));
    }

    internal static string Text(string text) => WebUtility.HtmlEncode(text);

    /// <summary>A code with its foot marked, so that 6 and 9 cannot be mixed up when a cup or a label is turned round.</summary>
    internal static string Code(string code) => $"<span class=\"code\"><u>{Text(code)}</u></span>";

    internal static string Items(string tag, IEnumerable<string> items)
    {
        var html = new StringBuilder($"<{tag}>\n");
        foreach (string item in items) html.Append("<li>").Append(Text(item)).Append("</li>\n");
        return html.Append($"</{tag}>\n").ToString();
    }

    internal static string Sealed(string why) => $"<p class=\"sealed\">Not for servers or tasters. {Text(why)}</p>\n";

    internal static string CupHeads(SetDesign design) =>
        string.Concat(Enumerable.Range(design.Orders[0].Reference is null ? 1 : 0, design.Cups)
            .Select(i => $"<th class=\"middle\">{(i == 0 ? "Reference" : $"Cup {i}")}</th>"));
}

/// <summary>The paper in the printer.</summary>
public enum PaperSize
{
    /// <summary>210 by 297 mm.</summary>
    A4,

    /// <summary>8.5 by 11 inches.</summary>
    Letter,
}
