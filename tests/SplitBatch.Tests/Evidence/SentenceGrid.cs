using System.Text;
using SplitBatch.Evidence.Findings;

namespace SplitBatch.Evidence;

/// <summary>One entry of an approved file: what is said where it is made. What it is made of is worked out once.</summary>
/// <param name="Name">What it shows.</param>
/// <param name="Say">Says it anew.</param>
internal sealed record SentenceCase(string Name, Func<string> Say);

/// <summary>
/// Whole sentences, for every outcome, protocol, number of panels, state of the lab and of the log: each approved file with its entries.
/// The tests compare them with the files; the search for mutants that nobody notices says them again for each.
/// </summary>
internal static class SentenceGrid
{
    /// <summary>The approved files by name.</summary>
    public static IReadOnlyDictionary<string, IReadOnlyList<SentenceCase>> Files { get; } =
        new Dictionary<string, IReadOnlyList<SentenceCase>>
        {
            ["panels"] = [.. PanelCases.ByOutcome().Concat(PanelCases.Others()).Select(one => OfPanel(one.Name, one.Panel))],
            ["headlines"] = [.. HeadlineCases.All()
                .Select(one => new SentenceCase(one.Name, () => $"{one.Name}: {Verdict.Of(one.Evidence).Headline}\n"))],
            ["lab"] = [.. Lab().Select(one => OfTrial(one.Name, one.Evidence, finding => finding.About == Subject.Lab))],
            ["returns"] = [.. ReturnCases.All().Select(one => OfTrial(one.Name, one.Evidence, finding => finding.About == Subject.Lab))],
            ["batches"] =
                [.. BatchCases.All()
                    .Select(one => OfTrial(one.State, one.Evidence,
                        finding => finding.About == Subject.Batches || finding.About == Subject.Doses))],
            ["several"] =
                [.. SeveralCases.All()
                    .Select(one => OfTrial(one.State, one.Evidence,
                        finding => finding.About == Subject.Panels || finding.About == Subject.Trial, headline: true))],
            ["methods"] = [new("methods and sources", Methods)],
        };

    private static IEnumerable<(string Name, TrialEvidence Evidence)> Lab() =>
        from one in SampleLab.States
        from variable in new[] { "form of the bittering hop", "bitterness" }
        select ($"{one.State}{(variable == "bitterness" ? ", and bitterness is the variable" : "")}",
            SamplePanel.Trial(SamplePanel.Single(Panel.Protocols.Protocol.Triangle, 24, 11)) with
            {
                Bitterness = one.Lab,
                Variable = variable,
            });

    private static SentenceCase OfPanel(string name, CountedPanel panel) =>
        OfTrial(name, SamplePanel.Trial(panel), finding => finding.About == Subject.Panel(panel.Plan.Name), headline: true);

    private static SentenceCase OfTrial(string name, TrialEvidence evidence, Func<Finding, bool> shown, bool headline = false) =>
        new(name, () =>
        {
            var verdict = Verdict.Of(evidence);
            var text = new StringBuilder($"## {name}\n");
            if (headline) text.Append($"{verdict.Headline}\n");
            foreach (var claim in verdict.Findings.Where(shown).Select(Claim.Of)) text.Append($"[{claim.Id}] {claim.Sentence}\n");
            return text.Append('\n').ToString();
        });

    /// <summary>How each kind of sentence says that its numbers are made, and from which files: every pair that comes up, once.</summary>
    private static string Methods()
    {
        IEnumerable<TrialEvidence> trials = [.. PanelCases.Others().Select(one => SamplePanel.Trial(one.Panel)),
            .. Lab().Select(one => one.Evidence), .. ReturnCases.All().Select(one => one.Evidence), .. BatchCases.All()
                .Select(one => one.Evidence), .. SeveralCases.All().Select(one => one.Evidence)];
        var lines = trials.Select(Verdict.Of).SelectMany(verdict => verdict.Findings.Append(verdict.HeadlineFound))
            .Select(finding => $"{finding.GetType().Name}: {finding.Method} [{string.Join("; ", finding.Sources)}]").Distinct()
            .Order(StringComparer.Ordinal);
        return string.Join('\n', lines) + "\n";
    }
}
