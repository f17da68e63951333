using System.Text;
using SplitBatch.Panel.Protocols;
using SplitBatch.Panel.Serving;

namespace SplitBatch.Display.Sheets;

/// <summary>For the tasters: one ballot for each set, two on a page. It names neither the beers nor what was changed.</summary>
internal static class BallotSheet
{
    private const string Css = """
        .ballot{height:calc(50vh - 1mm);min-height:120mm;padding:4mm 0;break-inside:avoid;break-after:auto;display:flex;flex-direction:column}
        .ballot:nth-of-type(odd){border-bottom:.3mm dashed #000}
        .pair{break-after:page}.pair:last-child{break-after:auto}
        .who{display:flex;justify-content:space-between;border-bottom:.6mm solid #000;padding-bottom:1.5mm;margin-bottom:3mm;font-weight:bold}
        .task{font-size:12pt}
        .cups{display:flex;gap:4mm;margin:3mm 0 4mm}
        .cup{flex:1;border:.4mm solid #000;text-align:center;padding:2mm 1mm 2.5mm}
        .cup .code{display:block;font-size:20pt;line-height:1.2}
        .cup .box{width:8mm;height:8mm;margin-top:1.5mm}
        .cup.reference{border-style:dotted}
        .ask{margin-bottom:2.6mm}
        .ask .box{margin-left:3mm}
        .rule{border-bottom:.3mm solid #000;height:7.5mm}
        .end{margin-top:auto;padding-top:2mm}
        @media print{.ballot{height:132mm;min-height:0}.letter .ballot{height:125mm}}
        """;

    internal static PrintableSheet Make(ServingPlan plan, Allergens allergens, PaperSize paper)
    {
        var body = new StringBuilder();
        foreach (var pair in plan.Sets.Chunk(2))
        {
            body.Append($"<div class=\"pair{(paper == PaperSize.Letter ? " letter" : "")}\">\n");
            foreach (var set in pair) body.Append(One(plan, allergens, set));
            body.Append("</div>\n");
        }
        return SheetPage.Make("ballots.html", "Ballots", false, paper, Css, body.ToString());
    }

    private static string One(ServingPlan plan, Allergens allergens, ServedSet set)
    {
        var design = plan.Design;
        var html = new StringBuilder();
        html.Append($"<div class=\"part ballot\">\n<div class=\"who\"><span>Taster {SheetPage.Text(set.Taster)}</span><span>Session "
            + $"{set.Session}</span><span>Set {set.Number}</span></div>\n");
        html.Append($"<p class=\"task\">{SheetPage.Text(design.Task)}</p>\n<div class=\"cups\">\n");
        foreach (var cup in set.Cups)
        {
            string mark = cup.IsReference
                ? "<span class=\"small\">taste first</span>"
                : design.AnswersByCode ? "<span class=\"box\"></span>" : "<span class=\"small\">&nbsp;</span>";
            html.Append($"<div class=\"cup{(cup.IsReference ? " reference" : "")}\">{SheetPage.Code(cup.Code)}{mark}</div>\n");
        }
        html.Append("</div>\n");
        string answer = design.Answer switch
        {
            AnswerKind.OwnOrNot => Ask("My answer", "A", "not A"),
            AnswerKind.SameOrDifferent => Ask("My answer", "same", "different"),
            AnswerKind.Pair => "<p class=\"ask\">Tick the boxes under the two codes you picked.</p>\n",
            _ => "<p class=\"ask\">Tick the box under the code you picked.</p>\n",
        };
        html.Append(answer);
        html.Append(Ask("How sure are you?", "a guess", "fairly sure", "sure"));
        html.Append("<p>What did you notice? (in your own words; you may leave this blank)</p>\n<div class=\"rule\"></div>\n<div "
            + "class=\"rule\"></div>\n<div class=\"rule\"></div>\n");
        html.Append($"<div class=\"end small\"><p>The beers contain {SheetPage.Text(allergens.ToString())}. You may stop at any "
            + $"time.</p>\n");
        html.Append("<p>Tick what is true: <span class=\"box\"></span> I know what was changed in this beer. <span class=\"box\"></span> "
            + "I helped to brew it.</p>\n");
        html.Append("<p>Handed in at <span class=\"line\"></span></p></div>\n</div>\n");
        return html.ToString();
    }

    private static string Ask(string question, params ReadOnlySpan<string> answers)
    {
        var html = new StringBuilder($"<p class=\"ask\">{question}");
        foreach (string answer in answers) html.Append($" <span class=\"box\"></span> {answer}");
        return html.Append("</p>\n").ToString();
    }
}
