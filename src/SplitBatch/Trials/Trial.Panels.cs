using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Serving;
using SplitBatch.Trials.Files;
using SplitBatch.Trials.Reading;

namespace SplitBatch.Trials;

public sealed partial class Trial
{
    /// <summary>The panels that trial.json declares, the main one first.</summary>
    public IReadOnlyList<PanelRecord> Panels => content.Panels;

    /// <summary>The panel of a name.</summary>
    /// <exception cref="ArgumentException">No panel has that name; the message offers the nearest.</exception>
    /// <example><code>trial.Panel("main").Reading</code></example>
    public PanelRecord Panel(string name = "main") =>
        Panels.FirstOrDefault(panel => string.Equals(panel.Name, name, StringComparison.OrdinalIgnoreCase))
        ?? throw Unknown("panel", name, Panels.Select(panel => panel.Name));

    /// <summary>The panels that are counted, for a step that needs at least one.</summary>
    /// <exception cref="TrialIncompleteException">No panel is counted yet; the message says what the first one lacks.</exception>
    public IReadOnlyList<PanelRecord> CountedPanels => NeedsOne([.. Panels.Where(panel => panel.HasCount)]);

    /// <summary>The counted panels side by side: the data of a forest chart.</summary>
    /// <exception cref="TrialIncompleteException">No panel is counted yet whose protocol has a known guessing chance.</exception>
    public Forest Forest() =>
        SplitBatch.Panel.Counting.Forest
            .Of([.. NeedsOne([.. Panels.Where(panel => panel.HasCount && panel.Plan.Protocol.HasKnownChance)])
                .Select(panel => panel.AsPanelCount())]);

    /// <summary>
    /// The counted panels combined, stratified by panel, where trial.json says <c>"panels together": "stratified"</c>; null where it does
    /// not, fewer than two panels can be combined, or a taster sat at two of them (<see cref="TogetherByPeople"/>). Two-sided, sequential
    /// and repeated panels stay beside the others.
    /// </summary>
    public StratifiedCombination? Together() => Combinable is { Count: > 1 } panels && !ShareTasters(panels)
        ? SplitBatch.Panel.Counting.Forest.Of([.. panels.Select(panel => panel.AsPanelCount())]).Combine()
        : null;

    /// <summary>
    /// The counted panels combined by people, where trial.json asks for it and a taster's name stands in the keys of two panels or more:
    /// such panels are not independent. Equal names count as one person, which holds, if anything, too carefully where two people share a
    /// code. Null where no name comes back.
    /// </summary>
    public ReturningPeople? TogetherByPeople() => Combinable is { Count: > 1 } panels && ShareTasters(panels)
        ? ReturningPeople.Of(panels
            .SelectMany(panel => panel.Scored.PerTaster.Where(taster => taster.Counted > 0)
                .Select(taster => (Name: NameOf(taster.Taster), Task: new TaskCount(panel.Plan.Protocol, taster.Counted, taster.Correct))))
            .GroupBy(one => one.Name, one => one.Task))
        : null;

    /// <summary>Counted panels whose right answers may be added at all, where trial.json says that they are.</summary>
    private List<PanelRecord> Combinable => !content.CombinesPanels ? [] :
        [.. Panels.Where(panel => panel.HasCount
            && panel.Plan is { Protocol: { Sides: 1, HasKnownChance: true }, Stopping: StoppingRule.Fixed } && !panel.HasRepeats)];

    private static bool ShareTasters(List<PanelRecord> panels) => panels
        .SelectMany(panel => panel.Scored.PerTaster.Where(taster => taster.Counted > 0).Select(taster => NameOf(taster.Taster)).Distinct())
        .GroupBy(name => name).Any(same => same.Skip(1).Any());

    private static string NameOf(string taster) => string.Concat(taster.Where(c => !char.IsWhiteSpace(c))).ToUpperInvariant();

    private IReadOnlyList<PanelRecord> NeedsOne(IReadOnlyList<PanelRecord> counted)
    {
        if (counted.Count > 0) return counted;
        if (Panels.Count > 0) _ = Panels[0].Scored;
        throw new TrialIncompleteException("counted panel", "serve one and type its ballots in", "4-panel-statistics");
    }
}
