using SplitBatch.Evidence;
using SplitBatch.Panel.Ballots;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Serving;
using SplitBatch.Trials.Reading;
using static System.FormattableString;

namespace SplitBatch.Trials;

/// <summary>
/// A panel while its ballots come in: who has answered, who has not, and what is wrong with single rows, which keep nobody from counting
/// the others. How anybody answered is not shown before the panel is over: before its last ballot, its close, or a line of its sequential
/// plan.
/// </summary>
public sealed record LiveTally
{
    internal LiveTally(PanelRecord panel, IReadOnlyList<Fault> faults)
    {
        Panel = panel;
        Faults = faults;
        var codes = panel.Codes ?? CodeBook.Of(panel.Key);
        (Served, (Waited, Remarkable)) = (codes.Sets, codes.Against(panel.Ballots, panel.Plan.Rules));
        Tasters =
            [.. codes.Tasters
                .Select(taster => new TasterProgress(taster.Taster, taster.Sets,
                    taster.Sets - Waited.Count(set => set.Taster == taster.Taster)))];
    }

    /// <summary>The panel as it stands.</summary>
    public PanelRecord Panel { get; }

    /// <summary>Rows of the file that cannot be read, or only in part.</summary>
    public IReadOnlyList<Fault> Faults { get; }

    /// <summary>Sets served.</summary>
    public int Served { get; }

    /// <summary>Sets whose ballot is in.</summary>
    public int Answered => Served - StillOut;

    /// <summary>Sets that no ballot has come back for.</summary>
    public int StillOut => Waited.Count;

    /// <summary>Whether every set served has its ballot.</summary>
    public bool IsComplete => StillOut == 0;

    /// <summary>Every taster in seat order, with the sets served and answered.</summary>
    public IReadOnlyList<TasterProgress> Tasters { get; }

    /// <summary>
    /// Whether a sequential panel serves its next taster; null for a panel of fixed size, before the first ballot, and where the key is
    /// kept apart.
    /// </summary>
    public bool? PourOn => Panel.PoursOn;

    /// <summary>Whether no ballot is waited for any more.</summary>
    public bool IsOver => Panel.Serving is not null && Panel.Ballots.Count > 0
        && (PourOn is { } on ? !on : IsComplete || Panel.Custody.Closed is not null);

    /// <summary>What the panel found; null while it is not over, or where no ballot can be counted.</summary>
    public CountedPanel? Verdict => IsOver && Panel.HasCount ? Panel.Finding : null;

    /// <summary>
    /// What it would cost to stop at the first difference, looking after every ballot; null for a protocol without a known guessing
    /// chance, and for a sequential panel, whose lines allow for its looks.
    /// </summary>
    public EarlyLooks? IfStoppedEarly => Panel.Plan is { Protocol.HasKnownChance: true, Stopping: StoppingRule.Fixed }
        ? EarlyLooks.At(Panel.Plan.Protocol, Panel.Plan.Alpha, [.. Enumerable.Range(1, Served)])
        : null;

    /// <summary>The rows and ballots that somebody should look at, as sentences.</summary>
    public IReadOnlyList<string> ToLookAt =>
    [
        .. Faults.Select(fault => fault.ToString()),
        .. Remarkable.Select(ballot => $"{(ballot.Ballot.Row is { } row ? Invariant($"Row {row}, ") : "")}{ballot.Ballot}: "
            + $"{ballot.Reasons}{(ballot.IsCounted ? "" : "; not counted")}."),
    ];

    /// <summary>What was done to the sealed plan so far; once the panel is over it stands before the result.</summary>
    private string Told =>
        Verdict is null && Panel.Custody.Departures().Select(departure => departure.What).Distinct().ToList() is { Count: > 0 } done
            ? $" This will stand before the result, as a departure from the sealed plan: {string.Join(", ", done)}."
            : "";

    private IReadOnlyList<ServedSet> Waited { get; }

    private IReadOnlyList<ScoredBallot> Remarkable { get; }

    /// <summary>Who is still out, and the verdict when the panel is over.</summary>
    public override string ToString()
    {
        var look = Told + (ToLookAt.Count == 0 ? "" : $" To look at: {string.Join(" ", ToLookAt)}");
        if (Verdict is not null)
            return Invariant(
                $"{(IsComplete ? $"All {Served} ballots are in." : $"The panel is over after {Answered} of {Served} ballots.")} ")
                    + Invariant($"{Panel.InWords}{look}");
        if (PourOn is { } on) return Invariant($"{Answered} of {Served} ballots are in: {(on ? "pour on" : "stop")}.{look}");
        var so = Answered == 0 ? "No ballot is in yet" : Invariant($"{Answered} of {Served} ballots are in");
        if (IsComplete) return $"{so}. The count is shown when the panel is closed.{look}";
        var price = IfStoppedEarly is { } looks
            ? Invariant($" The count is hidden until then: whoever looks after every ballot and stops at the first difference finds a ")
                + Invariant($"false one in {Printed.Percent(looks.TrueAlpha)} of panels, and not in ")
                + Invariant($"{Printed.ChosenPercent(Panel.Plan.Alpha)}.")
            : "";
        return Invariant($"{so}; {StillOut} {(StillOut == 1 ? "is" : "are")} still out, so there is no verdict yet.{price}{look}");
    }
}

/// <summary>How far one taster has come.</summary>
/// <param name="Taster">The taster's code.</param>
/// <param name="Sets">Sets served to the taster.</param>
/// <param name="Answered">Sets whose ballot is in.</param>
public sealed record TasterProgress(string Taster, int Sets, int Answered);
