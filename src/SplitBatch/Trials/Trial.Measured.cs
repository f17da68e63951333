using SplitBatch.Bitterness;
using SplitBatch.Lab;
using SplitBatch.Trials.Logs;

namespace SplitBatch.Trials;

public sealed partial class Trial
{
    /// <summary>Each half's estimate beside the lab's value; null until both halves have charges and a bitterness.</summary>
    /// <example><code>trial.EstimateAgainstLab()</code></example>
    public EstimateCheck? EstimateAgainstLab() =>
        Doses is { } doses && Lab.Compare(Analyte.Bitterness) is { } lab ? EstimateCheck.Of(doses, DoseUncertainty.Of(doses, draws: 100_000), lab) : null;

    /// <summary>Whether two samples may have been swapped on the way: the lab return beside the batch log and the doses.</summary>
    public SwapCheck CheckSamples() =>
        SwapCheck.Of(Lab, Parity, Doses is { } doses ? DoseUncertainty.Of(doses, draws: 100_000) : null);

    /// <summary>What the measured difference lets one expect in the glass, from the just-noticeable difference in trial.json; says so where none is stated.</summary>
    public string ExpectedInTheGlass() =>
        Lab.Compare(Analyte.Bitterness) is { } lab ? JustNoticeable.Expect(lab, content.LabSection.Noticeable) : "The lab's bitterness of both halves is not logged yet.";

    /// <summary>Logs what a lab's own file holds, as trial.json maps it under lab.imports, and returns the trial with it. Doing it again is harmless.</summary>
    /// <param name="file">The file within the trial folder, as <c>incoming/lab-return.csv</c>; the only one mapped if null.</param>
    /// <exception cref="TrialFolderException">Something in the file cannot be used; every fault is listed and nothing is logged.</exception>
    /// <exception cref="ArgumentException">trial.json maps no such file.</exception>
    /// <exception cref="InvalidOperationException">The folder is an example and not a working copy.</exception>
    /// <example><code>trial = trial.ImportReturn("incoming/lab-return.csv");</code></example>
    public Trial ImportReturn(string? file = null)
    {
        GuardExample();
        var imports = content.LabSection.Imports;
        var import = file is null && imports is [{ } only] ? only : imports.FirstOrDefault(one => string.Equals(one.File, file, StringComparison.OrdinalIgnoreCase));
        if (import is null)
        {
            var mapped = imports.Count == 0 ? "none" : string.Join(", ", imports.Select(one => one.File));
            throw new ArgumentException($"trial.json maps no file \"{file}\" under lab.imports; it maps: {mapped}.", nameof(file));
        }

        var faults = new FaultList();
        var results = Folder.ReadText(import.File, faults) is { } text ? import.Read(text, faults) : [];
        if (faults.HasErrors) throw new TrialFolderException(Folder.Name, faults);
        new LabReturnLog(Folder.Path, Description.Decimals).Append(results);
        return Open(Folder.Path);
    }

    /// <summary>Logs every file that trial.json maps under lab.imports and that has come in, and returns the trial with them; with none, the trial as it is. Doing it again is harmless.</summary>
    /// <exception cref="TrialFolderException">Something in a file cannot be used; every fault is listed and nothing of that file is logged.</exception>
    /// <exception cref="InvalidOperationException">The folder is an example and not a working copy.</exception>
    public Trial ImportReturns() =>
        content.LabSection.Imports.Where(import => Folder.Holds(import.File)).Aggregate(this, (trial, import) => trial.ImportReturn(import.File));

    /// <summary>Replaces a lab result with a corrected value and says why; the old row stays. Returns the trial with it. Doing it again is harmless.</summary>
    /// <param name="id">The id of the result in force.</param>
    /// <param name="value">The corrected value, in the unit of the old one.</param>
    /// <param name="reason">Why, for whoever reads the log.</param>
    /// <exception cref="ArgumentException">There is no such result, or the reason is blank.</exception>
    /// <exception cref="LogException">The result is already replaced by another.</exception>
    public Trial CorrectReturn(string id, double value, string reason)
    {
        GuardExample();
        var old = Lab.History.Find(Guard.NotBlank(id)) ?? throw Unknown("lab result", id, Lab.History.Rows.Select(row => row.Id));
        if (Lab.History.ReplacementOf(id) is { } done && done.GivenValue.Equals(value) && done.Reason == Guard.NotBlank(reason).Trim()) return this;
        var corrected = new LabResult(NextId(id, Lab.History.Rows.Select(row => row.Id)), old.Sample, old.Analyte, value, old.GivenUnit, old.Replicate)
        {
            Beer = old.Beer,
            Received = old.Received,
            Method = old.Method,
            Laboratory = old.Laboratory,
            Supersedes = old.Id,
            Reason = Guard.NotBlank(reason).Trim(),
        };
        new LabReturnLog(Folder.Path, Description.Decimals).Append(corrected);
        return Open(Folder.Path);
    }

    /// <summary>Logs something measured or noted on the halves, and returns the trial with it. Logging the same entry again is harmless.</summary>
    /// <exception cref="LogException">The id is taken by another entry, or a correction is incomplete.</exception>
    /// <example><code>trial = trial.LogBrew(BatchEntry.Measured("17", Side.A, "pH", 4.42, "pH", 0.05));</code></example>
    public Trial LogBrew(params IEnumerable<BatchEntry> entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        GuardExample();
        var file = new BatchLogFile(Folder.Path, Description.Decimals);
        foreach (var entry in entries) file.Append(entry);
        return Open(Folder.Path);
    }

    private static string NextId(string id, IEnumerable<string> taken)
    {
        var known = new HashSet<string>(taken, StringComparer.OrdinalIgnoreCase);
        var number = 2;
        while (known.Contains($"{id}#{number}")) number++;
        return $"{id}#{number}";
    }
}
