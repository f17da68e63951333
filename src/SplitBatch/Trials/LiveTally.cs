using SplitBatch.Evidence;
using SplitBatch.Panel.Ballots;
using SplitBatch.Panel.Planning;
using SplitBatch.Trials.Reading;

namespace SplitBatch.Trials;

/// <summary>
/// A panel while its ballots come in: what is counted so far, what is still out, and what is wrong with single rows, which keep
/// nobody from counting the others. There is no verdict before the last ballot, or before a sequential panel reaches one of its declared lines.
/// </summary>
public sealed record LiveTally
{
    internal LiveTally(PanelRecord panel, IReadOnlyList<Fault> faults)
    {
        Panel = panel;
        Faults = faults;
        Scored = panel.Serving!.Score(panel.Ballots, panel.Plan.Rules);
    }

    /// <summary>The panel as it stands.</summary>
    public PanelRecord Panel { get; }

    /// <summary>The ballots so far, scored by the key; no ballot is a count of none.</summary>
    public ScoredPanel Scored { get; }

    /// <summary>Rows of the file that cannot be read, or only in part.</summary>
    public IReadOnlyList<Fault> Faults { get; }

    /// <summary>Answers counted so far.</summary>
    public int Counted => Scored.Counted;

    /// <summary>Right answers so far.</summary>
    public int Correct => Scored.Correct;

    /// <summary>Sets that no ballot has come back for.</summary>
    public int StillOut => Scored.Missing.Count;

    /// <summary>Whether every set served has its ballot.</summary>
    public bool IsComplete => StillOut == 0;

    /// <summary>Where a panel that was declared sequential stands between its lines; null for a panel of fixed size, and before the first ballot.</summary>
    public WaldPath? Course => Panel.HasCount ? Panel.Sequential : null;

    /// <summary>What the panel found; null while it is not over, or where no ballot can be counted.</summary>
    public CountedPanel? Verdict => Panel.HasCount && (Course is { } course ? course.Decision != SequentialDecision.PourOn : IsComplete) ? Panel.Finding : null;

    /// <summary>What it would cost to stop at the first difference, looking after every ballot; null for a protocol without a known guessing chance, and for a sequential panel, whose lines allow for its looks.</summary>
    public EarlyLooks? IfStoppedEarly => Panel.Plan is { Protocol.HasKnownChance: true, Stopping: StoppingRule.Fixed }
        ? EarlyLooks.At(Panel.Plan.Protocol, Panel.Plan.Alpha, [.. Enumerable.Range(1, Scored.Served)])
        : null;

    /// <summary>The rows and ballots that somebody should look at, as sentences.</summary>
    public IReadOnlyList<string> ToLookAt =>
    [
        .. Faults.Select(fault => fault.ToString()),
        .. Scored.Remarkable.Select(ballot => $"{(ballot.Ballot.Row is { } row ? $"Row {row}, " : "")}{ballot.Ballot}: {ballot.Reasons}{(ballot.IsCounted ? "" : "; not counted")}."),
    ];

    /// <summary>The count, what is still out, and the verdict when nothing is.</summary>
    public override string ToString()
    {
        var look = ToLookAt.Count == 0 ? "" : $" To look at: {string.Join(" ", ToLookAt)}";
        if (Verdict is not null) return $"{(IsComplete ? $"All {Scored.Served} ballots are in." : $"The panel is over after {Scored.Returned} of {Scored.Served} ballots.")} {Panel.InWords}{look}";
        if (Course is { } course) return $"{course}{look}";
        var so = Scored.Returned == 0 ? "No ballot is in yet" : $"{Counted} of {Scored.Served} ballots are counted, {Correct} of them right";
        var price = IfStoppedEarly is { } looks && !IsComplete
            ? $" Watching is harmless, stopping is not: whoever looks after every ballot and stops at the first difference finds a false one in {looks.TrueAlpha * 100:0} % of panels, and not in {Panel.Plan.Alpha * 100:0.#} %."
            : "";
        return string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{so}; {StillOut} {(StillOut == 1 ? "is" : "are")} still out, so there is no verdict yet.{price}{look}");
    }
}
