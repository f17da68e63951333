using SplitBatch.Bitterness;
using SplitBatch.Lab;
using SplitBatch.Trials.Files;

namespace SplitBatch.Trials;

/// <summary>What past trials teach: each beer's estimate beside what the lab measured, read from trial folders.</summary>
/// <param name="Pairs">The beers with both an estimate and a lab value.</param>
/// <param name="LeftOut">The folders that gave no pair, each with the reason.</param>
public sealed record PastTrials(IReadOnlyList<CalibrationPair> Pairs, IReadOnlyList<string> LeftOut)
{
    /// <summary>Reads every trial folder that stands in a folder.</summary>
    /// <param name="folder">The folder that holds the trial folders.</param>
    /// <param name="current">A trial of one's own to count as well, in place of a folder of the same name; null for none.</param>
    /// <exception cref="DirectoryNotFoundException">There is no such folder.</exception>
    /// <example><code>PastTrials.In("my-trials")</code></example>
    public static PastTrials In(string folder, Trial? current = null)
    {
        if (!Directory.Exists(Guard.NotBlank(folder)))
            throw new DirectoryNotFoundException($"There is no folder \"{folder}\" with past trials.");
        var pairs = new List<CalibrationPair>();
        var leftOut = new List<string>();
        var places = Directory.EnumerateDirectories(folder).Select(path => new TrialFolder(path)).Where(place => place.HoldsTrial)
            .OrderBy(place => place.Name, StringComparer.Ordinal);
        foreach (var place in places.Where(place => place.Name != current?.Folder.Name))
        {
            try
            {
                Add(Trial.Open(place.Path), pairs, leftOut);
            }
            catch (TrialFolderException error)
            {
                leftOut.Add($"{place.Name}: the folder has {error.Faults.Count} {(error.Faults.Count == 1 ? "fault" : "faults")}; the "
                    + $"first is {error.Faults[0]}");
            }
        }

        if (current is not null) Add(current, pairs, leftOut);
        return new PastTrials(pairs, leftOut);
    }

    /// <summary>
    /// For example <c>6 beers of 3 trials with an estimate and a lab value; 1 folder left out (new-trial: no lab return yet)</c>.
    /// </summary>
    public override string ToString()
    {
        var trials = Pairs.Select(pair => pair.Batch).Distinct().Count();
        var found = $"{Pairs.Count} {(Pairs.Count == 1 ? "beer" : "beers")} of {trials} {(trials == 1 ? "trial" : "trials")} with an "
            + $"estimate and a lab value";
        return LeftOut.Count == 0 ? found : $"{found}; left out: {string.Join("; ", LeftOut)}";
    }

    private static void Add(Trial trial, List<CalibrationPair> pairs, List<string> leftOut)
    {
        if (trial.Doses is not { } doses)
        {
            leftOut.Add($"{trial.Folder.Name}: no hop charges yet");
            return;
        }

        var (a, b) = (trial.Lab.Replicates(Side.A, Analyte.Bitterness), trial.Lab.Replicates(Side.B, Analyte.Bitterness));
        if (a is null && b is null) leftOut.Add($"{trial.Folder.Name}: no lab return yet");
        if (a is { Mean: > 0 }) pairs.Add(new CalibrationPair(trial.Folder.Name, doses.A.Bitterness.Value, a.Mean));
        if (b is { Mean: > 0 }) pairs.Add(new CalibrationPair(trial.Folder.Name, doses.B.Bitterness.Value, b.Mean));
    }
}
