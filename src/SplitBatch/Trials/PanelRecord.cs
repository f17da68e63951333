using SplitBatch.Evidence;
using SplitBatch.Panel;

namespace SplitBatch.Trials;

/// <summary>One panel of a trial: its plan, the sealed key, the ballots as they came, and the count.</summary>
public sealed class PanelRecord
{
    private readonly Lazy<ScoredPanel?> scored;

    internal PanelRecord(PanelPlan plan, ServingPlan? serving, IReadOnlyList<Ballot> ballots, BallotRules rules)
    {
        Plan = plan;
        Serving = serving;
        Ballots = ballots;
        Rules = rules;
        scored = new Lazy<ScoredPanel?>(() => Serving is { } key && Ballots.Count > 0 ? key.Score(Ballots, Rules) : null);
    }

    /// <summary>The plan, declared before serving.</summary>
    public PanelPlan Plan { get; }

    /// <summary>The plan's name.</summary>
    public string Name => Plan.Name;

    /// <summary>The sealed key: who got which cup; null until it is made.</summary>
    public ServingPlan? Serving { get; }

    /// <summary>The ballots as they came, in the file's order.</summary>
    public IReadOnlyList<Ballot> Ballots { get; }

    /// <summary>How doubtful ballots are counted.</summary>
    public BallotRules Rules { get; }

    /// <summary>Whether there is a key, at least one ballot that counts, and a protocol whose count can be tested.</summary>
    public bool HasCount => scored.Value is { Counted: > 0 } && Plan.Protocol.HasKnownChance;

    /// <summary>The ballots scored against the key.</summary>
    /// <exception cref="TrialIncompleteException">There is no key, or no ballot, yet.</exception>
    public ScoredPanel Scored => scored.Value ?? throw (Serving is null
        ? new TrialIncompleteException($"serving plan for panel {Name}", $"make it with splitbatch serve, or in a cell with trial.Serve(\"{Name}\"), which writes {ServingKeyFile.NameOf(Name)}", "1-design")
        : new TrialIncompleteException($"ballots for panel {Name}", $"type them into {BallotFile.NameOf(Name)}", "4-panel-statistics"));

    /// <summary>Both questions asked of the count: is there a difference, and is one that matters ruled out? Repeats by one taster do not count as new tasters.</summary>
    /// <exception cref="TrialIncompleteException">There is no key, or no ballot, yet.</exception>
    public PanelReading Reading => Plan.Protocol.Sides == 1 && Scored.PerTaster.Any(taster => taster.Counted > 1)
        ? PanelReading.OfRepeats(Plan.Protocol, Counted, Plan.Margin, Plan.Alpha, Plan.Beta)
        : PanelReading.Of(Plan.Protocol, Scored.Counted, Scored.Correct, Plan.Margin, Plan.Alpha, Plan.Beta);

    private IEnumerable<TasterCount> Counted => Scored.PerTaster.Where(taster => taster.Counted > 0).Select(taster => new TasterCount(taster.Counted, taster.Correct));

    /// <summary>Where practice departed from the plan.</summary>
    /// <exception cref="TrialIncompleteException">There is no key, or no ballot, yet.</exception>
    public IReadOnlyList<Departure> Departures => Plan.Departures(new PanelPractice(
        Serving!.Protocol, Scored.PerTaster.Count(taster => taster.Counted > 0), Scored.Counted)
    {
        Seed = Serving.Seed,
        Served = Ballots.Min(ballot => ballot.When) is { } first ? DateOnly.FromDateTime(first.DateTime) : null,
    });

    /// <summary>What the verdict takes from this panel.</summary>
    internal PanelFinding Finding => new(Plan, Reading, Departures, [.. Remarks()]);

    /// <summary>The count in a line, or what is missing.</summary>
    public override string ToString() => scored.Value is { } count ? $"{Plan.Name}: {count}" : $"{Plan} Not counted yet.";

    private IEnumerable<string> Remarks()
    {
        foreach (var ballot in Scored.Excluded) yield return $"A ballot of {ballot.Ballot.Taster} is not counted: {ballot.Reasons}.";
        if (Scored.Missing.Count > 0) yield return $"Ballots not returned: {Scored.Missing.Count} of {Scored.Served}.";
        if (!Serving!.Balance.IsBalanced) yield return $"The serving orders were not balanced: {Serving.Balance.InWords}";
    }
}
