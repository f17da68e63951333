using System.Text.Json.Nodes;
using SplitBatch.Panel.Ballots;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Serving;
using SplitBatch.Numbers;

namespace SplitBatch.Trials.Seals;

/// <summary>
/// All of a trial that decides what its result will say: what a seal fixes, and what trial.json is compared with ever after.
/// </summary>
public sealed record TrialPlan
{
    /// <summary>The question, as one sentence.</summary>
    public required string Question { get; init; }

    /// <summary>The one thing that differs between the halves.</summary>
    public required string Variable { get; init; }

    /// <summary>The name of each half.</summary>
    public required IReadOnlyDictionary<Side, string> Beers { get; init; }

    /// <summary>
    /// In what the hop lots differ on purpose, in the words of trial.json; empty where the variable is no difference between lots.
    /// </summary>
    public string HopVariable { get; init; } = "";

    /// <summary>What would change the brewer's mind; empty where not given.</summary>
    public string WouldChangeMyMind { get; init; } = "";

    /// <summary>What is held equal between the halves.</summary>
    public IReadOnlyList<string> HeldEqual { get; init; } = [];

    /// <summary>Lines of the batch log that differ because of the variable, and so are no confound.</summary>
    public IReadOnlyList<string> FollowsFromVariable { get; init; } = [];

    /// <summary>The panels, in the order of trial.json.</summary>
    public required IReadOnlyList<PanelPlan> Panels { get; init; }

    /// <summary>The panel that the verdict rests on; empty where there is no panel.</summary>
    public required string Deciding { get; init; }

    /// <summary>Whether the panels are read together, stratified by panel, and not only side by side.</summary>
    public bool ReadTogether { get; init; }

    /// <summary>
    /// What trial.json says beforehand about the laboratory: precision, margins. Not the key of the samples, which stays blind until the
    /// return.
    /// </summary>
    public JsonObject Lab { get; init; } = [];

    /// <summary>The panel of a name; null where the plan has none.</summary>
    public PanelPlan? Panel(string name) =>
        Panels.FirstOrDefault(panel => string.Equals(panel.Name, name, StringComparison.OrdinalIgnoreCase));
}
