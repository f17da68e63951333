using System.Globalization;
using SplitBatch.Trials.Files;

namespace SplitBatch.Trials.Seals;

/// <summary>Something that happened to a panel and cannot be taken back: its key was drawn, somebody looked, it was closed.</summary>
/// <param name="Id">The row's id.</param>
/// <param name="Kind">What happened.</param>
/// <param name="Panel">The panel's name.</param>
/// <param name="When">When, by the clock of the machine that wrote it.</param>
public sealed record PanelEvent(string Id, PanelEventKind Kind, string Panel, DateTimeOffset When)
{
    /// <summary>The log of these events: <c>panel-log.csv</c>.</summary>
    internal static LogFormat Log { get; } = new(
        "panel-log.csv",
        ["id", "when", "panel", "event", "day", "ballots", "key", "seal", "who", "supersedes", "reason", "because"],
        ["id", "when", "panel", "event", "supersedes", "reason"],
        new HashSet<string>());

    private const string Moment = "yyyy-MM-ddTHH:mm:sszzz";

    private static readonly Dictionary<string, PanelEventKind> Kinds = new()
    {
        ["served"] = PanelEventKind.Served,
        ["looked"] = PanelEventKind.Looked,
        ["closed"] = PanelEventKind.Closed,
    };

    /// <summary>The day of a close, as the person gave it; null for other events.</summary>
    public DateOnly? Day { get; init; }

    /// <summary>How many ballots were in.</summary>
    public int? Ballots { get; init; }

    /// <summary>The fingerprint of the serving key's file; null for other events.</summary>
    public Fingerprint? Key { get; init; }

    /// <summary>The fingerprint of the seal that the panel was served under; null where there was none.</summary>
    public Fingerprint? Seal { get; init; }

    /// <summary>Who did it, as they like to be called; empty where not said.</summary>
    public string Who { get; init; } = "";

    /// <summary>Why; empty where nobody asked.</summary>
    public string Because { get; init; } = "";

    /// <summary>Adds the event to the log of a trial folder. Adding the same again is harmless.</summary>
    internal void Append(TrialFolder folder) => new AppendLog(folder.Path, Log).Append(Cells());

    private Dictionary<string, string> Cells() => new()
    {
        ["id"] = Id,
        ["when"] = When.ToString(Moment, CultureInfo.InvariantCulture),
        ["panel"] = Panel,
        ["event"] = Kinds.First(pair => pair.Value == Kind).Key,
        ["day"] = Day?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "",
        ["ballots"] = Ballots?.ToString(CultureInfo.InvariantCulture) ?? "",
        ["key"] = Key?.Digits ?? "",
        ["seal"] = Seal?.Digits ?? "",
        ["who"] = Who,
        ["because"] = Because,
    };

    /// <summary>Every event of a log, corrected rows too: what happened is not undone by a later row.</summary>
    internal static IReadOnlyList<PanelEvent> Read(CsvTable table)
    {
        if (!table.Require([.. Log.Needed])) return [];
        return [.. table.Rows.Select(ReadRow).OfType<PanelEvent>()];
    }

    private static PanelEvent? ReadRow(CsvRow row)
    {
        string? id = row.Text("id"), panel = row.Text("panel"), when = row.Text("when");
        if (row.OneOf("event", Kinds) is not { } kind || id is null || panel is null || when is null) return null;
        if (!DateTimeOffset.TryParseExact(when, Moment, CultureInfo.InvariantCulture, DateTimeStyles.None, out var at))
        {
            row.Refuse("when", "The moment cannot be read.", "as 2026-05-02T19:40:00+02:00");
            return null;
        }

        return new(id, kind, panel, at)
        {
            Day = row.OptionalDate("day"),
            Ballots = row.OptionalWhole("ballots", 0, 1_000_000),
            Key = Print("key"),
            Seal = Print("seal"),
            Who = row.Optional("who") ?? "",
            Because = row.Optional("because") ?? "",
        };

        Fingerprint? Print(string column)
        {
            if (row.Optional(column) is not { } text) return null;
            if (Fingerprint.Parse(text) is { } print) return print;
            row.Refuse(column, "This is no fingerprint.", "64 digits of 0-9 and a-f");
            return null;
        }
    }
}

/// <summary>What can happen to a panel.</summary>
public enum PanelEventKind
{
    /// <summary>Its serving key was drawn.</summary>
    Served,

    /// <summary>Somebody looked at the count before the close.</summary>
    Looked,

    /// <summary>It was closed: no ballot is waited for any more.</summary>
    Closed,
}
