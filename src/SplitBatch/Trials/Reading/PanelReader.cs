using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Serving;
using SplitBatch.Trials.Files;
using SplitBatch.Trials.Seals;

namespace SplitBatch.Trials.Reading;

/// <summary>Reads the panels of a trial: by their seals where they were sealed in time, else by trial.json.</summary>
/// <param name="folder">The trial folder.</param>
/// <param name="faults">Takes what is wrong.</param>
/// <param name="table">Reads a CSV file by name; null where the folder does not hold it.</param>
internal sealed class PanelReader(TrialFolder folder, FaultList faults, Func<string, CsvTable?> table)
{
    private readonly Dictionary<string, PanelBallots> ballots = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>The panels, the deciding one first.</summary>
    /// <param name="sections">The panels of trial.json.</param>
    /// <param name="state">Seals and events.</param>
    public IReadOnlyList<PanelRecord> Read(IReadOnlyList<PanelSection> sections, PlanState state)
    {
        var names = state.Chain.Seals.Reverse().SelectMany(seal => seal.Plan.Panels).Select(panel => panel.Name);
        var panels = names.Concat(sections.Select(section => section.Plan.Name)).Distinct(StringComparer.OrdinalIgnoreCase)
            .Select(name => ReadOne(name, sections.FirstOrDefault(section => SameName(section.Plan.Name, name)), state))
            .OfType<PanelRecord>().ToList();
        var deciding = DecidingBySeal(state, panels) ?? state.Now.Deciding;
        return [.. panels.Where(panel => SameName(panel.Name, deciding)), .. panels.Where(panel => !SameName(panel.Name, deciding))];
    }

    /// <summary>The panels as trial.json would have them read now, for the result under a plan that was changed too late.</summary>
    public IReadOnlyList<PanelRecord> ReadAsChanged(IReadOnlyList<PanelSection> sections, PlanState state) =>
    [
        .. from section in sections
           orderby SameName(section.Plan.Name, state.Now.Deciding) ? 0 : 1
           let key = Quietly(ServingKeyFile.NameOf(section.Plan.Name))
           let serving = key is null ? null : InDirection(ServingKeyFile.Read(key), section.Plan)
           let own = ballots.GetValueOrDefault(section.Plan.Name)
           select new PanelRecord(section.Plan with { Declared = null }, serving, own?.Ballots ?? [])
           {
               BallotFiles = own?.Files ?? [],
               Import = section.Import,
           },
    ];

    private PanelRecord? ReadOne(string name, PanelSection? section, PlanState state)
    {
        var own = ballots[name] = PanelBallots.Read(folder, name, section?.Import, faults, table);
        var history = PanelHistory.Of(state.Chain, name, own.Ballots, state.Now);
        var custody = state.CustodyOf(name, history, () => Key(name));
        var plan = history.InForce is { } seal ? seal.Plan.Panel(name)! with { Declared = custody.Day } : section?.Plan;
        if (plan is null || (section is null && own.Ballots.Count == 0 && state.Chain.Latest!.Plan.Panel(name) is null)) return null;
        var serving = table(ServingKeyFile.NameOf(name)) is { } key
            ? ServingKeyFile.Read(key, plan.Seed, plan.Expected, plan.Attribute)
            : null;
        var codes = serving is not null ? CodeBook.Of(serving) : table(CodeBook.NameOf(name)) is { } coded ? CodeBook.Read(coded) : null;
        var record = new PanelRecord(plan, serving, own.Ballots)
        {
            BallotFiles = own.Files,
            Import = section?.Import,
            Custody = custody,
            Codes = codes,
        };
        if (serving is not null && own.Ballots.Count > 0) AddWords(record);
        return record;
    }

    /// <summary>What a panel's tasters rated and wrote, which is read by the ballots that count.</summary>
    private void AddWords(PanelRecord record)
    {
        var leftOut = new List<string>();
        if (table(RatingFile.NameOf(record.Name)) is { } rated) record.RatingsGiven = RatingFile.Read(rated, record.Counted, leftOut);
        if (table(CommentFile.NameOf(record.Name)) is { } written) record.CommentsGiven = CommentFile.Read(written, record.Counted);
        record.RatingsLeftOut = [.. leftOut.Distinct()];
    }

    /// <summary>A key read in the direction that a plan now asks in; null where its cups were not poured for that.</summary>
    private static ServingPlan? InDirection(ServingPlan? key, PanelPlan plan)
    {
        try
        {
            return key is null ? null : ServingKey.ToPlan(key.Key, plan.Seed, plan.Expected, plan.Attribute);
        }
        catch (ArgumentException)
        {
            return null;
        }
    }

    private static string? DecidingBySeal(PlanState state, List<PanelRecord> panels)
    {
        var all = panels.SelectMany(panel => panel.Ballots).ToList();
        var first = all.Min(ballot => ballot.When);
        return state.Chain
            .InForce(seal => seal.BallotsThen.Values.Sum() == 0 && !(first is { } time && seal.IsCertainlyLaterThan(time)))?.Plan.Deciding;
    }

    private Fingerprint? Key(string name) =>
        folder.Holds(ServingKeyFile.NameOf(name)) ? Fingerprint.Of(File.ReadAllBytes(folder.PathOf(ServingKeyFile.NameOf(name)))) : null;

    private CsvTable? Quietly(string name) =>
        folder.Holds(name) && folder.ReadText(name, []) is { } text ? CsvTable.Read(name, new StringReader(text), []) : null;

    private static bool SameName(string one, string other) => string.Equals(one, other, StringComparison.OrdinalIgnoreCase);
}
