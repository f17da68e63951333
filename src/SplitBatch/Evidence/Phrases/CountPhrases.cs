using SplitBatch.Evidence.Findings;
using SplitBatch.Panel.Protocols;
using SplitBatch.Panel;

namespace SplitBatch.Evidence.Phrases;

/// <summary>How many were right, beside what guessing gives.</summary>
internal static class CountPhrases
{
    public static Sentence Of(SetsCounted finding)
    {
        var guessing = Sentence.Of($"guessing gives {Printed.Expected(finding.ByGuessing)} on average");
        return finding.Plan switch
        {
            { AsksPreference: true } =>
                Sentence.Of($"{Tasted(finding)}; asked which half they like better, tasters chose {Chosen(finding)}."),
            { IsDirected: true } =>
                Sentence.Of($"{Tasted(finding)}; asked for the more {new Name(finding.Plan.Attribute)} beer, tasters named half "
                    + $"{finding.Plan.Expected}, the expected one, in {Printed.Count(finding.Right)}; {guessing}."),
            { Protocol.Sides: 2 } =>
                Sentence.Of($"{Tasted(finding)}; asked for the more {new Name(finding.Plan.Attribute)} beer, tasters named "
                    + $"{Chosen(finding)}; {guessing} for either."),
            _ => Sentence.Of($"{Tasted(finding)}, and {Wording.AnswersRight(finding.Right)}; {guessing}."),
        };
    }

    public static Sentence Of(KindsCounted finding)
    {
        var (hits, alarms) = (Printed.Count(finding.Hits), Printed.Count(finding.FalseAlarms));
        return ReferenceEquals(finding.Plan.Protocol, Protocol.ANotA)
            ? Sentence.Of($"By the {Protocols(finding)} protocol tasters called {hits} of {Printed.Count(finding.Different, "cup")} of "
                + $"half B not A, and {alarms} of {Printed.Count(finding.Alike, "cup")} of half A.")
            : Sentence.Of($"By the {Protocols(finding)} protocol tasters called {hits} of {Printed.Count(finding.Different, "pair")} of "
                + $"unlike beers different, and {alarms} of {Printed.Count(finding.Alike, "pair")} of one beer.");
    }

    /// <summary>Far below chance: nothing is concluded but that something is wrong.</summary>
    public static Sentence Of(CountBelowChance finding)
    {
        var (few, either) = (Printed.Percent(finding.LowTail), Printed.Percent(finding.EitherWay));
        var look = finding.Plan.IsDirected
            ? "The direction, the key, the codes and the question as it was read must be looked at: the halves may stand the other "
                + "way round."
            : "The key, the codes, the blinding and the question as it was read must be looked at.";
        if (!finding.Plan.Protocol.HasKnownChance)
        {
            return Sentence.Of($"If both kinds of set were answered alike, so few of these answers, or fewer, would fall on the right "
                + $"kind in {few} of such panels, and counts as far apart, either way, in {AtMost(finding)}{either}. {look} Nothing else "
                + $"is concluded from this panel, and nothing is ruled out.");
        }

        return Sentence.Of($"Guessing gives so few right answers, or fewer, in {few} of such panels, and one as far out, either way, in "
            + $"{AtMost(finding)}{either}. {look} Nothing else is concluded from this panel, and nothing is ruled out.");
    }

    /// <summary>What is printed as less than something is at most that already.</summary>
    private static string AtMost(CountBelowChance finding) => finding.EitherWay < 0.0001 ? "" : "at most ";

    private static Name Protocols(PanelFinding finding) => new(finding.Plan.Protocol.Name);

    private static Sentence Tasted(SetsCounted finding)
    {
        var sets = Printed.Count(finding.Sets, "blind set");
        var order = finding.OneAfterAnother ? "one after another " : "";
        return finding.HasRepeats
            ? Sentence.Of($"{Printed.Count(finding.People, "person", "people")} tasted {sets} by the {Protocols(finding)} protocol")
            : Sentence.Of($"{sets} {Wording.Were(finding.Sets)} tasted {order}by the {Protocols(finding)} protocol, each by "
                + $"another person");
    }

    private static Sentence Chosen(SetsCounted finding)
    {
        var (a, b) = finding.Plan.Expected == Side.A
            ? (finding.Right, finding.Sets - finding.Right)
            : (finding.Sets - finding.Right, finding.Right);
        return Sentence.Of($"half A in {Printed.Count(a)} and half B in {Printed.Count(b)}");
    }
}
