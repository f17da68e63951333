using SplitBatch.Bitterness;
using SplitBatch.Lab;
using SplitBatch.Trials.Checks;
using SplitBatch.Trials.Files;
using SplitBatch.Trials.Reading;
using SplitBatch.Trials.Seals;
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
        var sections = PanelSection.Read(json);
        var scale = json.OptionalMass("scale") is { } step ? json.Make<Mass?>("scale", () => ChargeMatch.CheckedScale(step)) : null;
        var decimals = description?.Decimals;
        var hops = Table(HopLotReader.FileName, decimals);
        var lots = hops is null ? [] : HopLotReader.Read(hops);
        var lotNames = hops?.Rows.Select(row => row.Optional("lot")).OfType<string>().ToList() ?? [];
        var charges = ChargeReader.Read(Table(ChargeReader.FileName, decimals), lots, lotNames, kettle);
        var batchLog = Log(LogFormat.BatchLog, decimals) is { } brewed ? BatchLogFile.Read(brewed) : null;
        var returns = Log(LogFormat.LabReturns, decimals) is { } log ? LabReturnLog.Read(log, lab.Samples) : [];
        var combine = json.OptionalOneOf("panels together", Combinations);
        var deciding = json.OptionalText(PlanText.DecidingName);
        if (deciding is not null
            && !sections.Any(section => string.Equals(section.Plan.Name, deciding, StringComparison.OrdinalIgnoreCase)))
        {
            json.Refuse(PlanText.DecidingName, "No panel has this name.",
                string.Join(", ", sections.Select(section => section.Plan.Name)), deciding);
        }

        var published = json.Section("published");
        var (seal, result) = (published?.OptionalText("seal"), published?.OptionalText("result"));
        var chain = SealChain.Read(folder, faults);
        var events = Log(PanelEvent.Log, decimals) is { } happened ? PanelEvent.Read(happened) : [];
        var now = description is null ? null : description.ToPlan() with
        {
            Panels = [.. sections.Select(section => section.Plan)],
            Deciding = deciding ?? (sections.Count > 0 ? sections[0].Plan.Name : ""),
            ReadTogether = combine ?? false,
            Lab = PlanText.LabOf(json.Section("lab")),
        };
        if (now is null) return (null, faults);
        var state = new PlanState(chain, events, now)
        {
            Published = seal,
            Reported = result,
            Timestamps = [.. chain.Seals.Select(one => Timestamp.Of(one, folder)).OfType<Timestamp>()],
        };
        var reader = new PanelReader(folder, faults, name => Table(name, decimals));
        var panels = reader.Read(sections, state);
        var notes = ReadNotes();
        json.RefuseUnasked();
        if (description is null || faults.HasErrors) return (null, faults);
        var sealedPlan = panels.Count > 0 && panels[0].Custody.Seal is { } inForce
            ? chain.Seals.First(one => one.File == inForce).Plan
            : now;
        lab = lab.AsSealed(sealedPlan.Lab);
        var content = new TrialContent
        {
            Description = description.AsSealed(sealedPlan),
            Kettle = kettle,
            Lots = lots,
            Charges = charges,
            Scale = scale,
            BatchLog = batchLog,
            Lab = new LabReturn(returns, lab.Samples, lab.Precision),
            LabSection = lab,
            Panels = panels,
            State = state,
            CombinesPanels = sealedPlan.ReadTogether,
            AsChanged = panels.Any(panel => panel.Custody.Changes.Count > 0) ? reader.ReadAsChanged(sections, state) : [],
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

    /// <summary>A log, or null when there is none; a row that a crash cut short is left out and told.</summary>
    private CsvTable? Log(LogFormat format, DecimalMark? mark) =>
        folder.Holds(format.FileName) && folder.ReadText(format.FileName, faults) is { } text
            ? Kept(LogText.Table(format, text, faults, mark))
            : null;

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
