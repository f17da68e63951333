using System.Text;
using SplitBatch.Panel.Serving;

namespace SplitBatch.Display.Sheets;

/// <summary>The sealed key on paper, to be opened when the last ballot is in.</summary>
internal static class KeySheet
{
    internal static PrintableSheet Make(ServingPlan plan, PaperSize paper)
    {
        var body =
            new StringBuilder(SheetPage.Sealed("Put this into an envelope, seal it, and open it when the last ballot is typed in."));
        body.Append($"<h1>Sealed key of the panel “{SheetPage.Text(plan.Panel)}”</h1>\n<p>{SheetPage.Text(plan.ToString())}.</p>\n");
        body.Append("<p>Sealed by <span class=\"line\"></span> on <span class=\"line\"></span> &nbsp; Opened by <span "
            + "class=\"line\"></span> on <span class=\"line\"></span></p>\n");
        body.Append($"<table>\n<thead><tr><th>Set</th><th>Session</th><th>Server</th><th>Taster</th><th>Repeat</th><th>Order</th>"
            + $"{SheetPage.CupHeads(plan.Design)}</tr></thead>\n<tbody>\n");
        foreach (var set in plan.Sets)
        {
            body.Append($"<tr><td>{set.Number}</td><td>{set.Session}</td><td>{SheetPage.Text(set.Server)}</td><td>"
                + $"{SheetPage.Text(set.Taster)}</td><td>{set.Replicate}</td><td>{set.Order}</td>");
            foreach (var cup in set.Cups) body.Append($"<td class=\"middle\">{SheetPage.Code(cup.Code)} <b>{cup.Beer}</b></td>");
            body.Append("</tr>\n");
        }
        body.Append("</tbody>\n</table>\n<h2>How often each order is used</h2>\n<p>");
        body.AppendJoin(", ", plan.Balance.Uses.Select(use => $"{use.Key} {use.Value}"));
        body.Append("</p>\n");
        return SheetPage.Make("sealed/key.html", "Sealed key", true, paper,
            "th,td{padding:.8mm 1.6mm;font-size:9.5pt}p .line{min-width:24mm}", body.ToString());
    }
}
