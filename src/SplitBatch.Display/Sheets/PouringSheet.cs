using System.Text;
using SplitBatch.Panel.Serving;
using static System.FormattableString;

namespace SplitBatch.Display.Sheets;

/// <summary>For who pours behind the screen: which beer goes under which code, tray by tray.</summary>
internal static class PouringSheet
{
    internal static PrintableSheet Make(ServingPlan plan, PourPlan pour, PaperSize paper)
    {
        var options = pour.Options;
        var body = new StringBuilder(SheetPage.Sealed("Whoever pours stays in another room or behind the screen, and serves nobody."));
        body.Append(Invariant($"<h1>Pouring sheet</h1>\n<p>{options}. Cover, and let stand for ")
            + Invariant($"{Printed.Minutes(options.Settle.Minutes)}. Do not serve the first glass of a bottle.</p>\n"));
        body.Append(SheetPage.Items("ul", pour.Beers.Select(beer => beer.ToString())));
        foreach (var session in plan.Sets.GroupBy(set => set.Session))
        {
            body.Append($"<h2>Session {session.Key}</h2>\n<table>\n<thead><tr><th>Set</th><th>Server</th>"
                + $"{SheetPage.CupHeads(plan.Design)}<th class=\"middle\">Poured</th></tr></thead>\n<tbody>\n");
            foreach (var set in session)
            {
                body.Append($"<tr><td>{set.Number}</td><td>{SheetPage.Text(set.Server)}</td>");
                foreach (var cup in set.Cups)
                    body.Append($"<td class=\"middle\">{SheetPage.Code(cup.Code)} &nbsp; <b class=\"beer\">{cup.Beer}</b></td>");
                body.Append("<td class=\"middle\"><span class=\"box\"></span></td></tr>\n");
            }
            body.Append("</tbody>\n</table>\n");
        }
        return SheetPage.Make("sealed/pouring.html", "Pouring sheet", true, paper,
            "td{height:7.5mm;padding-top:0;padding-bottom:0}.beer{font-size:14pt}", body.ToString());
    }
}
