using SplitBatch.BrewDay;
using SplitBatch.Lab;
using SplitBatch.Trials.Files;
using SplitBatch.Trials.Reading;

namespace SplitBatch.Trials;

public sealed partial class Trial
{
    /// <summary>What was measured and noted on brewing day and after; empty until something is logged.</summary>
    public BatchLog BatchLog => content.BatchLog ?? new BatchLog([]);

    /// <summary>
    /// The two halves compared line by line: same, different within what the instrument can tell, a confound, or not measured.
    /// </summary>
    public ParityCheck Parity => BatchLog.Parity(Description.Changed);

    /// <summary>Everything the lab returned so far, corrections included; empty until a return is logged.</summary>
    public LabReturn Lab => content.Lab;

    /// <summary>The two halves by one analyte, for a step that cannot do without the comparison.</summary>
    /// <param name="analyte">What was measured.</param>
    /// <exception cref="TrialIncompleteException">A half has no result yet, or trial.json does not say which half the samples
    /// are.</exception>
    public LabComparison LabDifference(Analyte analyte)
    {
        ArgumentNullException.ThrowIfNull(analyte);
        if (Lab.Compare(analyte) is { } comparison) return comparison;
        var blind = Lab.BlindSamples.Count > 0 && Lab.Analytes.Contains(analyte);
        throw blind
            ? new TrialIncompleteException("key of the lab's samples",
                $"write which half each is into {TrialFolder.DescriptionFile}, as \"samples\": {{ \"{Lab.BlindSamples[0]}\": \"A\" }}",
                "3-lab-return")
            : new TrialIncompleteException($"lab result of both halves for {analyte.Name}",
                "log the lab's return in lab-returns.csv, or put its file into incoming", "3-lab-return");
    }

    /// <summary>
    /// Logs replicate results of one sample, and returns the trial with them. Logging the same results again is harmless.
    /// </summary>
    /// <param name="report">The number of the lab's report.</param>
    /// <param name="sample">The sample id as sent to the lab.</param>
    /// <param name="analyte">What was measured, in its own unit.</param>
    /// <param name="values">One or more results, in the order reported.</param>
    /// <exception cref="LogException">A result of that report, sample and place is logged with another value: correct it with a reason
    /// instead.</exception>
    /// <exception cref="InvalidOperationException">The folder is an example and not a working copy.</exception>
    /// <example><code>trial = trial.LogReturn("R-12", "S1", Analyte.Bitterness, 24.1, 24.6);</code></example>
    public Trial LogReturn(string report, string sample, Analyte analyte, params IEnumerable<double> values)
    {
        ArgumentNullException.ThrowIfNull(analyte);
        GuardExample();
        var results = values.Select((value, index) =>
            new LabResult($"{report}/{sample}/{analyte.Name}/{index + 1}", sample, analyte, value, analyte.Unit, index + 1)).ToList();
        new LabReturnLog(Folder.Path, Description.Decimals).Append(results);
        return Open(Folder.Path);
    }

    private void GuardExample()
    {
        if (Description.Invented && !Folder.IsWorkingCopy)
        {
            throw new InvalidOperationException(
                $"\"{Folder.Name}\" is an example and stays as it came; open it with Trial.WorkOn to work on a copy.");
        }
    }
}
