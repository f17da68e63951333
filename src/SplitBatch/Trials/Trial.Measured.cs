using SplitBatch.Bitterness;
using SplitBatch.BrewDay;
using SplitBatch.Lab;
using SplitBatch.Trials.Files;
using SplitBatch.Trials.Reading;

namespace SplitBatch.Trials;

public sealed partial class Trial
{
    /// <summary>Enough for the standard deviations that checks need; intervals for print are drawn with more.</summary>
    private const int DrawsForChecks = 20_000;

    /// <summary>Each half's estimate beside the lab's value.</summary>
    /// <exception cref="TrialIncompleteException">A half has no charge or no bitterness yet.</exception>
    /// <example><code>trial.EstimateAgainstLab()</code></example>
    public EstimateCheck EstimateAgainstLab()
    {
        var lab = LabDifference(Analyte.Bitterness);
        return EstimateCheck.Of(WeighedDoses, DoseUncertainty.Of(WeighedDoses, draws: DrawsForChecks), lab);
    }

    /// <summary>Whether two samples may have been swapped on the way: the lab return beside the batch log and the doses.</summary>
    /// <exception cref="TrialIncompleteException">No lab result is logged yet.</exception>
    /// <example><code>trial.CheckSamples()</code></example>
    public SwapCheck CheckSamples()
    {
        if (Lab.Results.Count == 0) _ = LabDifference(Analyte.Bitterness);
        return SwapCheck.Of(Lab, Parity, Doses is { } doses ? DoseUncertainty.Of(doses, draws: DrawsForChecks) : null);
    }

    /// <summary>
    /// What the measured difference lets one expect in the glass, from the just-noticeable difference in trial.json; says so where none
    /// is stated.
    /// </summary>
    public string ExpectedInTheGlass() =>
        Lab.Compare(Analyte.Bitterness) is { } lab
            ? JustNoticeable.Expect(lab, content.LabSection.Noticeable)
            : "The lab's bitterness of both halves is not logged yet.";

    /// <summary>
    /// Logs what a lab's own file holds, as trial.json maps it under lab.imports, and returns the trial with it. Doing it again is
    /// harmless.
    /// </summary>
    /// <param name="file">The file within the trial folder, as <c>incoming/lab-return.csv</c>; the only one mapped if null.</param>
    /// <exception cref="TrialFolderException">Something in the file cannot be used; every fault is listed and nothing is
    /// logged.</exception>
    /// <exception cref="ArgumentException">trial.json maps no such file.</exception>
    /// <exception cref="InvalidOperationException">The folder is an example and not a working copy.</exception>
    /// <example><code>trial = trial.ImportReturn("incoming/lab-return.csv");</code></example>
    public Trial ImportReturn(string? file = null)
    {
        GuardExample();
        var imports = content.LabSection.Imports;
        var import = file is null && imports is [{ } only]
            ? only
            : imports.FirstOrDefault(one => string.Equals(one.File, file, StringComparison.OrdinalIgnoreCase));
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

    /// <summary>
    /// Logs every file that trial.json maps under lab.imports and that has come in, and returns the trial with them; with none, the trial
    /// as it is. Doing it again is harmless.
    /// </summary>
    /// <exception cref="TrialFolderException">Something in a file cannot be used; every fault is listed and nothing of that file is
    /// logged.</exception>
    /// <exception cref="InvalidOperationException">The folder is an example and not a working copy.</exception>
    public Trial ImportReturns() =>
        content.LabSection.Imports.Where(import => Folder.Holds(import.File))
            .Aggregate(this, (trial, import) => trial.ImportReturn(import.File));

    /// <summary>
    /// Logs bitterness that was read with one's own instrument: the readings are kept, and the value follows from them. Returns the trial
    /// with it. Doing it again is harmless.
    /// </summary>
    /// <param name="report">What the series of readings is called, as "own-1".</param>
    /// <param name="sample">The sample id.</param>
    /// <param name="readings">One or more readings in a 10 mm cell, in the order taken. See <see cref="Cautions.InTheLaboratory"/>
    /// first.</param>
    /// <exception cref="LogException">A reading of that series, sample and place is logged with other numbers: correct it with a reason
    /// instead.</exception>
    /// <exception cref="InvalidOperationException">The folder is an example and not a working copy.</exception>
    /// <example><code>trial = trial.LogAbsorbance("own-1", "S1", new AbsorbanceReading(0.482, blank: 0.006));</code></example>
    public Trial LogAbsorbance(string report, string sample, params IEnumerable<AbsorbanceReading> readings)
    {
        ArgumentNullException.ThrowIfNull(readings);
        GuardExample();
        new LabReturnLog(Folder.Path, Description.Decimals).Append(
            readings.Select((reading, index) =>
                reading.AsResult($"{report}/{sample}/{Analyte.Bitterness.Name}/{index + 1}", sample, index + 1)).ToList());
        return Open(Folder.Path);
    }

    /// <summary>
    /// Replaces a lab result with a corrected value and says why; the old row stays. Returns the trial with it. Doing it again is
    /// harmless.
    /// </summary>
    /// <param name="id">The id of the result in force.</param>
    /// <param name="value">The corrected value, in the unit of the old one.</param>
    /// <param name="reason">Why, for whoever reads the log.</param>
    /// <param name="who">Who corrects it, as the user likes to say.</param>
    /// <exception cref="ArgumentException">There is no such result, or the reason is blank.</exception>
    /// <exception cref="LogException">The result is already replaced by another.</exception>
    /// <example><code>trial = trial.CorrectReturn("R-12/S1/bitterness/1", 24.1, "misprint; the lab's letter of 2 May");</code></example>
    public Trial CorrectReturn(string id, double value, string reason, string who = "")
    {
        GuardExample();
        var old = Lab.History.Find(Guard.NotBlank(id)) ?? throw Unknown("lab result", id, Lab.History.Rows.Select(row => row.Id));
        if (Lab.History.ReplacementOf(id) is { } done && done.GivenValue.Equals(value) && done.Reason == Guard.NotBlank(reason).Trim())
            return this;
        var corrected = old.CorrectedBy(NextId(id, Lab.History.Rows.Select(row => row.Id)), reason, value) with { Who = who };
        new LabReturnLog(Folder.Path, Description.Decimals).Append(corrected);
        return Open(Folder.Path);
    }

    /// <summary>
    /// Gives each of two samples the results that stand under the other, and says why; the old rows stay. Returns the trial with the
    /// corrections. Doing it again with the same reason is harmless, and finishes what was cut short.
    /// </summary>
    /// <param name="first">One sample id.</param>
    /// <param name="second">The other.</param>
    /// <param name="reason">Why, for whoever reads the log.</param>
    /// <param name="who">Who corrects it, as the user likes to say.</param>
    /// <param name="analyte">The one analysis that mixed the samples up; all of them if null.</param>
    /// <exception cref="ArgumentException">A sample has no result, both are the same, or the reason is blank.</exception>
    /// <example>
    /// <code>
    /// trial = trial.ExchangeSamples("S1", "S2", "bottles swapped at packing, see the shipping list", "brewer");
    /// </code>
    /// </example>
    public Trial ExchangeSamples(string first, string second, string reason, string who = "", Analyte? analyte = null)
    {
        GuardExample();
        var why = Guard.NotBlank(reason).Trim();
        var samples = Lab.Results.Select(result => result.Sample).Distinct(StringComparer.OrdinalIgnoreCase).ToList();
        foreach (var sample in new[] { first, second })
        {
            if (!samples.Contains(Guard.NotBlank(sample), StringComparer.OrdinalIgnoreCase)) throw Unknown("lab sample", sample, samples);
        }

        if (string.Equals(first, second, StringComparison.OrdinalIgnoreCase))
            throw new ArgumentException($"Sample {first} cannot be exchanged with itself; name two samples.", nameof(second));
        var exchanged = new List<LabResult>();
        var taken = Lab.History.Rows.Select(row => row.Id).ToHashSet(StringComparer.OrdinalIgnoreCase);
        foreach (var old in Lab.Results.Where(result => result.Reason != why && (analyte is null || result.Analyte.Equals(analyte))))
        {
            var other = string.Equals(old.Sample, first, StringComparison.OrdinalIgnoreCase)
                ? second
                : string.Equals(old.Sample, second, StringComparison.OrdinalIgnoreCase) ? first : null;
            if (other is null) continue;
            var moved = old.CorrectedBy(NextId(old.Id, taken), why, sample: other) with { Who = who };
            taken.Add(moved.Id);
            exchanged.Add(moved);
        }

        new LabReturnLog(Folder.Path, Description.Decimals).Append(exchanged);
        return Open(Folder.Path);
    }

    /// <summary>
    /// Logs something measured or noted on the halves, and returns the trial with it. Logging the same entry again is harmless.
    /// </summary>
    /// <exception cref="LogException">The id is taken by another entry, or a correction is incomplete.</exception>
    /// <example><code>trial = trial.LogBrew(BatchEntry.Measured("17", Side.A, "pH", 4.42, "pH", 0.05));</code></example>
    public Trial LogBrew(params IEnumerable<BatchEntry> entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        GuardExample();
        new BatchLogFile(Folder.Path, Description.Decimals).Append(entries);
        return Open(Folder.Path);
    }

    /// <summary>
    /// The id of a correction: that of the first row with the number of the version, so that a chain of corrections reads in order.
    /// </summary>
    private static string NextId(string id, IEnumerable<string> taken)
    {
        var known = new HashSet<string>(taken, StringComparer.OrdinalIgnoreCase);
        var root = id.LastIndexOf('#') is > 0 and var at && id[(at + 1)..].All(char.IsAsciiDigit) ? id[..at] : id;
        var number = 2;
        while (known.Contains($"{root}#{number}")) number++;
        return $"{root}#{number}";
    }
}
