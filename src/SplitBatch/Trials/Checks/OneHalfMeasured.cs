using SplitBatch.Trials.Logs;

namespace SplitBatch.Trials.Checks;

/// <summary>A lab value that only one half has.</summary>
internal sealed class OneHalfMeasured : ITrialCheck
{
    /// <inheritdoc/>
    public IEnumerable<Fault> Find(TrialFacts facts)
    {
        var lab = facts.Content.Lab;
        if (lab.BlindSamples.Count > 0) yield break; // Which half has what is not known yet.
        foreach (var analyte in lab.Analytes)
        {
            var (a, b) = (lab.Replicates(Side.A, analyte), lab.Replicates(Side.B, analyte));
            if (a is null == b is null) continue;
            var missing = a is null ? Side.A : Side.B;
            yield return facts.InRow(
                LogFormat.LabReturns.FileName, "analyte", analyte.Name, "analyte",
                $"Half {missing} has no result for {analyte.Name}, so the halves cannot be compared by it.",
                "results of both halves, of one lab and one run where possible",
                "Log the other sample's result, or have it measured.");
        }
    }
}
