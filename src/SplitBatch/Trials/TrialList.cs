using SplitBatch.Trials.Files;
using SplitBatch.Trials.Seals;

namespace SplitBatch.Trials;

/// <summary>Several trials in one place: how many beliefs were tested, and which were declared and never reported.</summary>
/// <param name="Trials">The trials that could be read, by folder name.</param>
/// <param name="LeftOut">The folders that could not, each with the reason.</param>
public sealed record TrialList(IReadOnlyList<ListedTrial> Trials, IReadOnlyList<string> LeftOut)
{
    /// <summary>Reads every trial folder that stands in a folder.</summary>
    /// <param name="folder">The folder that holds the trial folders.</param>
    /// <exception cref="DirectoryNotFoundException">There is no such folder.</exception>
    /// <example><code>TrialList.In("my-trials")</code></example>
    public static TrialList In(string folder)
    {
        if (!Directory.Exists(Guard.NotBlank(folder)))
            throw new DirectoryNotFoundException($"There is no folder \"{folder}\" with trials.");
        var (trials, leftOut) = (new List<ListedTrial>(), new List<string>());
        foreach (var place in Directory.EnumerateDirectories(folder).Select(path => new TrialFolder(path)).Where(place => place.HoldsTrial)
            .OrderBy(place => place.Name, StringComparer.Ordinal))
        {
            try
            {
                trials.Add(ListedTrial.Of(Trial.Open(place.Path)));
            }
            catch (TrialFolderException error)
            {
                leftOut.Add($"{place.Name}: the folder has {error.Faults.Count} {(error.Faults.Count == 1 ? "fault" : "faults")}; the "
                    + $"first is {error.Faults[0]}");
            }
        }

        var twice = trials.Where(trial => trial.Seal is not null).GroupBy(trial => trial.Seal).Where(group => group.Count() > 1);
        foreach (var same in twice)
        {
            var names = string.Join(" and ", same.Select(trial => trial.Folder));
            trials =
            [
                .. trials.Select(trial => trial.Seal == same.Key
                    ? trial with { Note = $"{names} hold the same seal: copies of one trial, or two panels under one plan" }
                    : trial),
            ];
        }

        return new(trials, leftOut);
    }

    /// <summary>Trials with a count.</summary>
    public int Tested => Trials.Count(trial => trial.Stage is TrialStage.Counted or TrialStage.Reported);

    /// <summary>Trials that were sealed, and of whose result the author says nowhere that it was published.</summary>
    public IReadOnlyList<ListedTrial> NeverReported =>
        [.. Trials.Where(trial => trial.Seal is not null && trial.Stage != TrialStage.Reported)];

    /// <summary>For example <c>3 trials: 2 tested; 2 sealed, of which 1 was never reported (stout).</c></summary>
    public override string ToString()
    {
        var sealedTrials = Trials.Count(trial => trial.Seal is not null);
        var open = NeverReported.Count == 0
            ? "all reported"
            : $"of which {NeverReported.Count} {(NeverReported.Count == 1 ? "was" : "were")} never reported "
                + $"({string.Join(", ", NeverReported.Select(trial => trial.Folder))})";
        return $"{Trials.Count} {(Trials.Count == 1 ? "trial" : "trials")}: {Tested} tested; {sealedTrials} "
            + $"sealed{(sealedTrials == 0 ? "" : ", " + open)}.";
    }
}

/// <summary>How far a trial has come.</summary>
public enum TrialStage
{
    /// <summary>Its plan is a draft.</summary>
    Draft,

    /// <summary>Its plan is sealed, and nothing is served.</summary>
    Sealed,

    /// <summary>Its panel is served, and not closed yet.</summary>
    Open,

    /// <summary>Its panel is counted.</summary>
    Counted,

    /// <summary>Its result was published, by its author's word.</summary>
    Reported,
}

/// <summary>One trial of a list.</summary>
/// <param name="Folder">The folder's name.</param>
/// <param name="Question">The question.</param>
/// <param name="Stage">How far it has come.</param>
/// <param name="Seal">The fingerprint of its first seal; null where it is not sealed.</param>
/// <param name="Headline">What it says; empty before it is counted.</param>
public sealed record ListedTrial(string Folder, string Question, TrialStage Stage, Fingerprint? Seal, string Headline)
{
    /// <summary>What else has to be known of it; empty for nothing.</summary>
    public string Note { get; init; } = "";

    internal static ListedTrial Of(Trial trial)
    {
        var counted = trial.Panels.Any(panel => panel.HasCount);
        var stage = counted ? trial.Plan.Reported is null ? TrialStage.Counted : TrialStage.Reported
            : trial.Panels.Any(panel => panel.Codes is not null) ? TrialStage.Open
            : trial.LatestSeal is not null ? TrialStage.Sealed
            : TrialStage.Draft;
        return new(trial.Folder.Name, trial.Question, stage, (trial.Plan.Chain.Seals is [{ } first, ..] ? first.Fingerprint : null),
            counted ? trial.Verdict().Headline : "");
    }

    /// <summary>One line.</summary>
    public override string ToString() =>
        $"{Folder}: {Question} {InWords}{(Headline.Length > 0 ? $" {Headline}" : "")}{(Note.Length > 0 ? $" ({Note}.)" : "")}";

    private string InWords => (Seal is null ? "Not sealed" : $"Sealed {Seal.Spoken}") + Stage switch
    {
        TrialStage.Draft => "; a draft.",
        TrialStage.Sealed => "; not served yet.",
        TrialStage.Open => "; its panel is open.",
        TrialStage.Reported => "; reported, by its author's word.",
        _ => "; not reported, as far as trial.json says.",
    };
}
