using SplitBatch.Trials.Reading;
using SplitBatch.Panel.Planning;
using SplitBatch.Evidence;
using SplitBatch.Evidence.Findings;
using SplitBatch.Lab;
using SplitBatch.Trials.Files;

namespace SplitBatch.Trials;

public sealed partial class Trial
{
    /// <summary>
    /// The writer's own paragraphs, in Markdown, by the name of the file in <c>notes</c> without its ending: a write-up puts
    /// <c>introduction</c>, <c>method</c>, <c>results</c> and <c>discussion</c> into the sections of that name, and never changes them.
    /// </summary>
    public IReadOnlyDictionary<string, string> Notes => content.Notes;

    /// <summary>The files that the trial was read from, with their hashes.</summary>
    public IReadOnlyList<InputFile> InputFiles =>
        [.. Folder.Names("*.json").Concat(Folder.Names("*.csv")).Concat(Folder.Names("*.csv", "incoming"))
            .Concat(Folder.Names("*.md", "notes")).Select(name => InputFile.Of(Folder, name))];

    /// <summary>The paragraphs of one name, or null when the writer wrote none.</summary>
    public string? Note(string name) => Notes.GetValueOrDefault(name);
}

public sealed partial class Trial
{
    /// <summary>All that a verdict rests on, as far as the folder holds it.</summary>
    public TrialEvidence Evidence => content.AsChanged.Count == 0 ? EvidenceBy(Panels) : EvidenceBy(Panels) with
    {
        Changed = EvidenceBy(content.AsChanged) with
        {
            Variable = Plan.Now.Variable,
            NameA = Plan.Now.Beers[Side.A],
            NameB = Plan.Now.Beers[Side.B],
        },
    };

    private TrialEvidence EvidenceBy(IReadOnlyList<PanelRecord> panels) => new()
    {
        Variable = Description.Variable,
        NameA = Description.Beers[Side.A],
        NameB = Description.Beers[Side.B],
        Doses = Doses,
        Bitterness = Lab.Compare(Analyte.Bitterness),
        Lab = Lab.Results.Count == 0 ? null : Lab,
        Samples = Lab.Results.Count == 0 ? null : CheckSamples(),
        Panels = [.. Counted(panels)],
        NotCounted = [.. panels.Where(panel => !panel.HasCount).Select(panel => panel.Name)],
        PassedOver = [.. panels.TakeWhile(panel => !panel.HasCount).Select(panel => panel.Name)],
        HeldEqual = Description.HeldEqual,
        FollowsFromVariable = Description.FollowsFromVariable,
        Together = Together(),
        TogetherByPeople = TogetherByPeople(),
        HopConfounds = HopConfounds,
        Parity = content.BatchLog is null ? null : Parity,
        Units = Description.Units,
        Invented = Description.Invented,
    };

    /// <summary>
    /// What the counted panels found; where the panel that was sealed to decide is not among them, the first says so before its result.
    /// </summary>
    private static List<CountedPanel> Counted(IReadOnlyList<PanelRecord> panels)
    {
        var counted = panels.Where(panel => panel.HasCount).Select(panel => panel.Finding).ToList();
        if (counted.Count == 0 || panels[0].HasCount || !panels[0].Custody.IsSealed) return counted;
        var (sealedTo, first) = (panels[0].Name, counted[0]);
        var instead = new Departure("panel that decides", sealedTo, first.Plan.Name,
            "The panel that was sealed to decide is not counted, so the result is a lead to follow and not a test.", Severity.Error)
            {
                Kind = DepartureKind.AnotherPanel,
            };
        counted[0] = first with { Departures = [instead, .. first.Departures] };
        return counted;
    }

    /// <summary>What was meant to be held equal, beside what the batch log says of it.</summary>
    public IReadOnlyList<MeantEqual> MeantEqual =>
        SplitBatch.Evidence.Findings.MeantEqual.Of(Description.HeldEqual, content.BatchLog is null ? null : Parity);

    /// <summary>What the trial allows one to say in public.</summary>
    /// <example><code>trial.Verdict()</code></example>
    public Verdict Verdict() => SplitBatch.Evidence.Verdict.Of(Evidence);
}
