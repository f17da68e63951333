using SplitBatch.Display.Tables;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Serving;
using static System.FormattableString;

namespace SplitBatch.Display.Sheets;

/// <summary>For who leads the panel: what to have ready, what to read aloud, what to take care of. It names no beer.</summary>
internal static class BriefingSheet
{
    internal static PrintableSheet Make(ServingPlan plan, PourPlan pour, Allergens allergens, PaperSize paper, PlanCustody? custody)
    {
        var options = pour.Options;
        int tasters = plan.Tasters.Count, cups = plan.Sets.Sum(set => set.Cups.Count), most = plan.Sets
            .GroupBy(set => (set.Taster, set.Session)).Max(group => group.Count());
        string[] ready =
        [
            Invariant($"{cups} clean cups of one kind ({plan.Design.Cups} for each set), covers, and the labels stuck on."),
            $"{pour.Beers[0].AtHand} of the one beer and {pour.Beers[1].AtHand} of the other, {options}.",
            Invariant($"{plan.Sets.Count} ballots, pencils, water, plain crackers, bowls to spit into, food for before and after."),
            "One person who pours, in another room or behind a screen, with the pouring sheet; others who serve with the tray sheets. "
                + "Nobody does both.",
        ];
        string[] aloud =
        [
            "Thank you for coming. We are testing the beers, not you. Most people find this hard.",
            $"The beers contain {allergens}. If that is a problem for you, or if you have any doubt, please do not taste.",
            plan.Design.Task,
            "Taste from left to right, and rinse with water between the cups. You may go back and taste again. You do not have to swallow "
                + "or to finish a cup.",
            "Do not talk about the beers, and do not look at your neighbour's ballot, until all ballots are in.",
            "If you know what was changed in this beer, or helped to brew it, tick that on your ballot. It is not a problem; the plan "
                + "says how your answer counts.",
            Invariant($"If you empty every cup, you drink at most {pour.Most.Drunk}. You may stop at any time."),
        ];
        string[] steps =
        [
            Invariant($"Pour, cover the cups, and let them stand for {Printed.Minutes(options.Settle.Minutes)}."),
            $"Serve each set to the taster on the tray sheet, cups in the order printed, first cup on the taster's "
                + $"left{(plan.Design.Orders[0].Reference is null ? "" : ", the reference before them")}.",
            "Collect each ballot at once and check that it is filled in. A guess counts; a blank does not.",
            most > 1
                ? Invariant(
                    $"Rest {Printed.Minutes(options.Rest.Minutes)} before the next set; each taster has up to {most} sets in a sitting.")
                : "Each taster has one set in a sitting.",
            "Type in every ballot as it is, blank or strange ones too. Do not correct anything, and do not score by hand.",
            "Open the sealed key when the last ballot is typed in.",
        ];
        string body = $"""
            <h1>Leading the panel “{SheetPage.Text(plan.Panel)}”</h1>
            <p>{SheetPage.Text(Words.Capital(plan.Protocol.Name))}, {tasters} tasters, {plan.Sets.Count} sets, {plan.Sessions.Count} {(plan.Sessions.Count == 1 ? "sitting" : "sittings")}.</p>
            {Sealed(custody)}
            <h2>Have ready</h2>
            {SheetPage.Items("ul", ready)}<h2>Step by step</h2>
            {SheetPage.Items("ol", steps)}<h2>Read aloud</h2>
            {SheetPage.Items("ol", aloud)}<h2>Take care</h2>
            {SheetPage.Items("ul", pour.Cautions)}
            """;
        return SheetPage.Make("briefing.html", "Leading the panel", false, paper,
            "body{font-size:10pt}h2{margin-top:3.5mm}code{overflow-wrap:anywhere}", body);
    }

    /// <summary>The fingerprint of the plan, to be published before the first cup is poured; or that nobody sealed it.</summary>
    private static string Sealed(PlanCustody? custody) => custody switch
    {
        null => "",
        { IsSealed: false } => "<p>The plan of this panel is <b>not sealed</b>: nobody can check later what was fixed before pouring.</p>",
        _ => $"<p>The plan is sealed. Its fingerprint, to read aloud: <b>{SheetPage.Text(custody.Fingerprint!)}</b>; the whole of it: "
            + $"<code>{SheetPage.Text(custody.Digits!)}</code>. "
            + "Publish it before the first cup is poured: only that proves to a stranger when the plan was fixed.</p>",
    };
}
