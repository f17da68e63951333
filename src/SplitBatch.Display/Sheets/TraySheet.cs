using System.Text;
using SplitBatch.Panel.Serving;

namespace SplitBatch.Display.Sheets;

/// <summary>For who serves: which codes go to whom, in which order. It says nothing about the beers.</summary>
internal static class TraySheet
{
    internal static PrintableSheet Make(ServingPlan plan, PaperSize paper)
    {
        var body = new StringBuilder();
        foreach (var part in plan.Sets.GroupBy(set => (set.Session, set.Server)))
        {
            body.Append($"<div class=\"part\">\n<h1>Tray sheet: session {part.Key.Session}, server "
                + $"{SheetPage.Text(part.Key.Server)}</h1>\n");
            body.Append("<p>Set the cups down in this order, first cup on the taster's left. Tick when served, and again when the ballot "
                + "is back. Say nothing about the beers.</p>\n");
            body.Append($"<table>\n<thead><tr><th>Set</th><th>Taster</th>{SheetPage.CupHeads(plan.Design)}<th "
                + $"class=\"middle\">Served</th><th class=\"middle\">Ballot back</th></tr></thead>\n<tbody>\n");
            foreach (var set in part)
            {
                body.Append($"<tr><td>{set.Number}</td><td>{SheetPage.Text(set.Taster)}</td>");
                foreach (var cup in set.Cups) body.Append($"<td class=\"middle\">{SheetPage.Code(cup.Code)}</td>");
                body.Append("<td class=\"middle\"><span class=\"box\"></span></td><td class=\"middle\"><span "
                    + "class=\"box\"></span></td></tr>\n");
            }
            body.Append("</tbody>\n</table>\n</div>\n");
        }
        return SheetPage.Make("trays.html", "Tray sheets", false, paper,
            "td{height:8.2mm;padding-top:0;padding-bottom:0}td .code{font-size:14pt}", body.ToString());
    }
}
