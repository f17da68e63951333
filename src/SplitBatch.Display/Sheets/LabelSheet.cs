using System.Text;
using SplitBatch.Panel.Serving;

namespace SplitBatch.Display.Sheets;

/// <summary>Cup labels to cut and stick, in serving sequence: the code large, the set and the cup's place small.</summary>
internal static class LabelSheet
{
    private const int Columns = 4;

    private const string Css = """
        table{table-layout:fixed}
        td{border:.3mm dashed #777;height:24mm;text-align:center;padding:1mm}
        td .code{display:block;font-size:27pt;line-height:1.25}
        td.none{border:0}
        .letter td{height:23mm}
        """;

    internal static PrintableSheet Make(ServingPlan plan, PaperSize paper)
    {
        var body = new StringBuilder($"<table class=\"{(paper == PaperSize.Letter ? "letter" : "a4")}\">\n<tbody>\n");
        var cups = plan.Sets.SelectMany(set => set.Cups.Select(cup => (set, cup)));
        foreach (var row in cups.Chunk(Columns))
        {
            body.Append("<tr>");
            foreach (var (set, cup) in row)
                body.Append($"<td>{SheetPage.Code(cup.Code)}<span class=\"small\">set {set.Number}, "
                    + $"{(cup.IsReference ? "reference" : $"cup {cup.Position}")}</span></td>");
            for (int i = row.Length; i < Columns; i++) body.Append("<td class=\"none\"></td>");
            body.Append("</tr>\n");
        }
        body.Append("</tbody>\n</table>\n");
        return SheetPage.Make("labels.html", "Cup labels", false, paper, Css, body.ToString());
    }
}
