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
        [.. Folder.Names("*.json").Concat(Folder.Names("*.csv")).Concat(Folder.Names("*.csv", "incoming")).Concat(Folder.Names("*.md", "notes")).Select(name => InputFile.Of(Folder, name))];

    /// <summary>The paragraphs of one name, or null when the writer wrote none.</summary>
    public string? Note(string name) => Notes.GetValueOrDefault(name);
}

public sealed partial class Trial
{
    /// <summary>All that a verdict rests on, as far as the folder holds it.</summary>
    public TrialEvidence Evidence => new()
    {
        Variable = Description.Variable,
        NameA = Description.Beers[Side.A],
        NameB = Description.Beers[Side.B],
        Doses = Doses,
        Bitterness = Lab.Compare(Analyte.Bitterness),
        Lab = Lab.Results.Count == 0 ? null : Lab,
        Samples = Lab.Results.Count == 0 ? null : CheckSamples(),
        Panels = [.. Panels.Where(panel => panel.HasCount).Select(panel => panel.Finding)],
        NotCounted = [.. Panels.Where(panel => !panel.HasCount).Select(panel => panel.Name)],
        PassedOver = [.. Panels.TakeWhile(panel => !panel.HasCount).Select(panel => panel.Name)],
        HeldEqual = Description.HeldEqual,
        FollowsFromVariable = Description.FollowsFromVariable,
        Together = Together(),
        TogetherByPeople = TogetherByPeople(),
        HopConfounds = HopConfounds,
        Parity = content.BatchLog is null ? null : Parity,
        Units = Description.Units,
        Invented = Description.Invented,
    };

    /// <summary>What was meant to be held equal, beside what the batch log says of it.</summary>
    public IReadOnlyList<MeantEqual> MeantEqual => SplitBatch.Evidence.Findings.MeantEqual.Of(Description.HeldEqual, content.BatchLog is null ? null : Parity);

    /// <summary>What the trial allows one to say in public.</summary>
    /// <example><code>trial.Verdict()</code></example>
    public Verdict Verdict() => SplitBatch.Evidence.Verdict.Of(Evidence);
}
