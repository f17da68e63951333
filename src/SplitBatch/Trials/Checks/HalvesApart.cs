using SplitBatch.Lab;

namespace SplitBatch.Trials.Checks;

/// <summary>Halves that differ in yeast, or in the day it was pitched. Other differences are the parity check's matter.</summary>
internal sealed class HalvesApart : ITrialCheck
{
    /// <inheritdoc/>
    public IEnumerable<Fault> Find(TrialFacts facts)
    {
        if (facts.Content.BatchLog is not { } log) yield break;
        foreach (var line in log.Parity(facts.Content.Description.Changed).Lines)
        {
            if (line.Verdict != Parity.Confound || !Matters(line.Quantity)) continue;
            yield return facts.InRow(
                Logs.LogFormat.BatchLog.FileName, "id", line.Rows[^1], "value",
                $"The halves differ in {line.Quantity}: {line.A} in A, {line.B} in B. This differs besides the variable, and the test cannot tell the two apart.",
                "the same in both halves",
                $"If this is a slip of the pen, log a correction. If it follows from the variable, name it in {TrialFolder.DescriptionFile} under \"follows from the variable\". If it is so, the write-up will say it.");
        }
    }

    private static bool Matters(string quantity) =>
        quantity.Contains("yeast", StringComparison.OrdinalIgnoreCase)
        || quantity.Equals("pitching date", StringComparison.OrdinalIgnoreCase);
}
