using SplitBatch.Bitterness;
using SplitBatch.Lab;
using SplitBatch.Trials.Checks;
using SplitBatch.Trials.Files;
using SplitBatch.Trials.Reading;
using UnitsNet;

namespace SplitBatch.Trials;

/// <summary>Reads a trial folder as a whole: every file, every fault, before anything is said about any of it.</summary>
/// <param name="folder">The folder.</param>
/// <param name="today">The day of reading, which only warnings look at.</param>
internal sealed class TrialReader(TrialFolder folder, DateOnly? today = null)
{
    private static readonly Dictionary<string, bool> Combinations = new() { ["stratified"] = true, ["side by side"] = false };
    private readonly FaultList faults = [];
    private readonly List<CsvTable> tables = [];

    /// <summary>What the folder holds, or null when it cannot be used, with all its faults.</summary>
    public (TrialContent? Content, FaultList Faults) Read()
    {
        if (folder.ReadText(TrialFolder.DescriptionFile, faults) is not { } text) return (null, faults);
        if (JsonSection.Read(TrialFolder.DescriptionFile, new StringReader(text), faults) is not { } json) return (null, faults);

        var description = TrialDescription.Read(json);
        var kettle = json.Section("kettle") is { } section ? KettleReader.Read(section) : null;
        var lab = LabSection.Read(json.Section("lab"));
        var plans = PanelPlanReader.Read(json);
        var scale = json.OptionalMass("scale") is { } step ? json.Make<Mass?>("scale", () => ChargeMatch.CheckedScale(step)) : null;
        var decimals = description?.Decimals;
        var hops = Table(HopLotReader.FileName, decimals);
        var lots = hops is null ? [] : HopLotReader.Read(hops);
        var lotNames = hops?.Rows.Select(row => row.Optional("lot")).OfType<string>().ToList() ?? [];
        var charges = ChargeReader.Read(Table(ChargeReader.FileName, decimals), lots, lotNames, kettle);
        var batchLog = Log(LogFormat.BatchLog, decimals) is { } brewed ? BatchLogFile.Read(brewed) : null;
        var returns = Log(LogFormat.LabReturns, decimals) is { } log ? LabReturnLog.Read(log, lab.Samples) : [];
        var combine = json.OptionalOneOf("panels together", Combinations);
        var panels = plans.Select(plan => ReadPanel(plan, decimals)).ToList();
        var notes = ReadNotes();
        json.RefuseUnasked();
        if (description is null || faults.HasErrors) return (null, faults);
        var content = new TrialContent
        {
            Description = description,
            Kettle = kettle,
            Lots = lots,
            Charges = charges,
            Scale = scale,
            BatchLog = batchLog,
            Lab = new LabReturn(returns, lab.Samples, lab.Precision),
            LabSection = lab,
            Panels = panels,
            CombinesPanels = combine ?? false,
            Notes = notes,
        };
        var facts = new TrialFacts(content, tables, folder.Names("*"), today ?? DateOnly.FromDateTime(DateTime.Today));
        foreach (var warning in TrialChecks.Warnings(facts)) faults.Add(warning);
        return (content with { Warnings = [.. faults] }, faults);
    }

    private Dictionary<string, string> ReadNotes()
    {
        var notes = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase);
        foreach (var name in folder.Names("*.md", "notes"))
        {
            if (folder.ReadText(name, faults) is { } text) notes[Path.GetFileNameWithoutExtension(name)] = text;
        }

        return notes;
    }

    private PanelRecord ReadPanel(PanelSection panel, DecimalMark? decimals)
    {
        var plan = panel.Plan;
        var serving = Table(ServingKeyFile.NameOf(plan.Name), decimals) is { } key ? ServingKeyFile.Read(key, plan.Seed, plan.Expected, plan.Attribute) : null;
        var ballots = PanelBallots.Read(folder, plan.Name, panel.Import, faults, name => Table(name, decimals));
        var record = new PanelRecord(plan, serving, ballots.Ballots) { BallotFiles = ballots.Files, Import = panel.Import };
        return serving is null || ballots.Ballots.Count == 0 ? record : WithWords(record, decimals);
    }

    /// <summary>The panel with what its tasters rated and wrote.</summary>
    private PanelRecord WithWords(PanelRecord record, DecimalMark? decimals)
    {
        var leftOut = new List<string>();
        var ratings = Table(RatingFile.NameOf(record.Name), decimals) is { } rated ? RatingFile.Read(rated, record.Scored, leftOut) : [];
        var comments = Table(CommentFile.NameOf(record.Name), decimals) is { } written ? CommentFile.Read(written, record.Scored) : [];
        return new PanelRecord(record.Plan, record.Serving, record.Ballots)
        {
            BallotFiles = record.BallotFiles,
            Import = record.Import,
            RatingsGiven = ratings,
            RatingsLeftOut = [.. leftOut.Distinct()],
            CommentsGiven = comments,
        };
    }

    /// <summary>A log, or null when there is none; a row that a crash cut short is left out and told.</summary>
    private CsvTable? Log(LogFormat format, DecimalMark? mark) =>
        folder.Holds(format.FileName) && folder.ReadText(format.FileName, faults) is { } text ? Kept(LogText.Table(format, text, faults, mark)) : null;

    /// <summary>A CSV file, or null when the folder does not hold it, which is no fault: it may not be written yet.</summary>
    private CsvTable? Table(string name, DecimalMark? mark, IReadOnlyDictionary<string, string>? names = null) =>
        folder.Holds(name) && folder.ReadText(name, faults) is { } text
            ? Kept(CsvTable.Read(name, new StringReader(text), faults, mark, names))
            : null;

    private CsvTable Kept(CsvTable table)
    {
        tables.Add(table);
        return table;
    }
}
