using System.Globalization;
using System.Text.Json.Nodes;
using SplitBatch.Panel.Ballots;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Serving;
using SplitBatch.Numbers;
using Planned = SplitBatch.Panel.Planning.Power;
using static System.FormattableString;

namespace SplitBatch.Trials.Seals;

/// <summary>
/// A plan in plain words before it is sealed: what is asked, what the panels can and cannot find out, and what they cost in beer and cups.
/// </summary>
/// <param name="Plan">What would be sealed.</param>
/// <param name="Sections">The words: a heading and its sentences.</param>
public sealed record Declaration(TrialPlan Plan, IReadOnlyList<DeclarationSection> Sections)
{
    /// <summary>Puts a plan into words.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="units">The units for the beer to have ready.</param>
    public static Declaration Of(TrialPlan plan, UnitSystem units = UnitSystem.Metric)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return new(plan, [new("The question", [.. Asked(plan)]),
            .. plan.Panels.Select(panel => new DeclarationSection(Heading(plan, panel), [.. OfPanel(panel, PourOptions.For(units))]))]);
    }

    /// <summary>Heading by heading.</summary>
    public override string ToString() => string.Join("\n\n", Sections);

    private static IEnumerable<string> Asked(TrialPlan plan)
    {
        yield return plan.Question;
        yield return $"Half A: {plan.Beers[Side.A]}. Half B: {plan.Beers[Side.B]}. The one thing that differs: {plan.Variable}.";
        yield return plan.WouldChangeMyMind.Length > 0
            ? $"What would change your mind: {plan.WouldChangeMyMind}"
            : "You have not written down what would change your mind (\"would change my mind\" in trial.json).";
        if (plan.Panels.Count > 1)
            yield return $"The verdict rests on panel {plan.Deciding}. The panels are "
                + $"{(plan.ReadTogether ? "also read together, stratified by panel" : "shown side by side and not combined")}.";
        var lab = plan.Lab.Where(entry => entry.Value is JsonObject { Count: > 0 } or JsonArray { Count: > 0 })
            .Select(entry => entry.Key).ToList();
        yield return lab.Count > 0
            ? $"Sealed with it, as trial.json says it of the lab: {string.Join(", ", lab)}."
            : "Nothing is fixed about a lab. If you ask one later, what its difference means will not have been settled beforehand.";
    }

    private static string Heading(TrialPlan plan, PanelPlan panel) =>
        plan.Panels.Count == 1 ? "The panel" : $"Panel {panel.Name}{(panel.Name == plan.Deciding ? ", which decides" : "")}";

    private static IEnumerable<string> OfPanel(PanelPlan plan, PourOptions pour)
    {
        var sets = plan.Replicates == 1 ? "one set each" : Invariant($"{plan.Replicates} sets each");
        var sittings = plan.Sessions is { } sessions ? Invariant($", in {sessions} {(sessions == 1 ? "sitting" : "sittings")}") : "";
        yield return Invariant($"{plan.Tasters} tasters by the {plan.Protocol.Name} protocol, {sets}{sittings}.");
        if (plan.Protocol.NamesTheProperty)
            yield return $"They are asked which is the more "
                + $"{plan.Attribute}{(plan.Protocol.Sides == 1 ? $"; half {plan.Expected} is expected to be" : "")}.";
        foreach (var sentence in Reach(plan)) yield return sentence;
        yield return Stop(plan);
        foreach (var sentence in Rules(plan.Rules)) yield return sentence;
        if (plan.AskedBeside.Count > 0)
            yield return $"Asked beside: {string.Join(", ", plan.AskedBeside)}. Whatever else is asked is a lead and not a test.";
        yield return Cost(plan, pour);
    }

    private static IEnumerable<string> Reach(PanelPlan plan)
    {
        if (!plan.Protocol.HasKnownChance)
        {
            yield return Invariant($"A difference is shown if the two kinds of set are answered unlike at alpha ")
                + Invariant($"{Printed.ChosenPercent(plan.Alpha)}. This way of asking can rule no margin out.");
            yield break;
        }

        if (plan.Stopping == StoppingRule.Sequential)
        {
            yield return plan.Sequential().ToString();
            yield break;
        }

        if (plan.Replicates > 1)
        {
            yield return "Repeats by one taster are not new tasters; what the panel can find depends on how unlike the tasters are, and "
                + "is not said beforehand.";
            yield break;
        }

        var critical = plan.CriticalCount;
        yield return critical is { } needed
            ? Invariant($"{needed} right answers or more show a difference: guessing gives so many in at most ")
                + Invariant($"{Printed.ChosenPercent(plan.Alpha)} of panels. If {Margin(plan)} of tasters can tell, ")
                + Invariant($"{Printed.Percent(Planned.Of(plan.Protocol, plan.Tasters, plan.Alpha, plan.Margin))} of such panels show it ")
                + Invariant($"(wanted: {Printed.ChosenPercent(plan.Power)}).")
            : "No count of so few can show a difference.";
        yield return plan.SimilarityCount >= plan.Tasters * plan.Protocol.Chance
            ? Invariant($"{plan.SimilarityCount} right answers or fewer rule out that {Margin(plan)} can tell (risk ")
                + Invariant($"{Printed.ChosenPercent(plan.Beta)}). If nobody can, ")
                + Invariant($"{Printed.Percent(ExactBinomial.AtMost(plan.SimilarityCount!.Value, plan.Tasters, plan.Protocol.Chance))} ")
                + Invariant($"of such panels get there.")
            : Invariant($"It cannot rule out that {Margin(plan)} can tell, whatever it answers: it is too small for that.");
    }

    /// <summary>The margin as a share in the task, with the digits of a choice or of a computed share.</summary>
    private static Printed Margin(PanelPlan plan) =>
        plan.MarginAsDPrime is null ? Printed.ChosenPercent(plan.Margin) : Printed.Percent(plan.Margin);

    private static string Stop(PanelPlan plan) => plan.Stopping == StoppingRule.Sequential
        ? Invariant($"It stops at its two lines, or after {plan.Tasters} tasters.")
        : !plan.Protocol.HasKnownChance ? "It ends with its last ballot. Nobody sees a count before it is closed."
        : Invariant($"It ends with its last ballot. Nobody sees a count before it is closed: whoever looked after each ballot and ")
            + Invariant($"stopped at the first difference would find a false one in ")
            + Invariant($"{Printed.Percent(EarlyLooks.At(plan.Protocol, plan.Alpha, [.. Enumerable.Range(1, plan.Tasters)]).TrueAlpha)} ")
            + Invariant($"of panels.");

    private static IEnumerable<string> Rules(BallotRules rules)
    {
        yield return $"Ballots that are doubtful: of two for one set {Words(rules.Duplicates)}; of tasters who knew the variable, "
            + $"{Words(rules.KnewVariable)}; of the brewer, {Words(rules.Brewer)}; late, {Words(rules.Late)}; without a usable answer, "
            + $"{Words(rules.NoUsableAnswer)}; missing, {Words(rules.Missing)}.";
        if (rules.Closes is { } closes)
            yield return $"Late is what comes in after {closes.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture)}.";
        if (rules.Brewers.Count > 0) yield return $"Brewers at the table: {string.Join(", ", rules.Brewers)}.";
        if (rules.TastersWhoKnew.Count > 0) yield return $"Tasters who know the variable: {string.Join(", ", rules.TastersWhoKnew)}.";
    }

    private static string Cost(PanelPlan plan, PourOptions pour)
    {
        if (plan.Sets > 1000 || plan.Replicates > 20) return Invariant($"{plan.Sets} sets.");
        var needed = PourPlan.For(ServingPlan.Balanced(plan with { Seed = plan.Seed ?? 1 }), 0, 0, pour).Beers;
        return Invariant($"It takes, at {Spoken.Cup(pour.Pour)} a cup: {string.Join("; ", needed)}.");
    }

    private static string Words(DuplicateRule rule) => rule switch
    {
        DuplicateRule.First => "the first counts",
        DuplicateRule.Last => "the last counts",
        _ => "the first counts if they agree, and else none",
    };

    private static string Words(BallotRule rule) => rule switch
    {
        BallotRule.Count => "counted",
        BallotRule.CountAsWrong => "counted as wrong",
        _ => "left out",
    };
}

/// <summary>A part of a declaration.</summary>
/// <param name="Heading">What it is about.</param>
/// <param name="Sentences">Its sentences.</param>
public sealed record DeclarationSection(string Heading, IReadOnlyList<string> Sentences)
{
    /// <summary>Heading and sentences, one on a line.</summary>
    public override string ToString() => $"{Heading}\n{string.Join("\n", Sentences.Select(sentence => "  " + sentence))}";
}
