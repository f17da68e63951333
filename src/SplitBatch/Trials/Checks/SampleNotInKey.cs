using SplitBatch.Trials.Logs;

namespace SplitBatch.Trials.Checks;

/// <summary>A sample in the lab's return that the key of the samples does not know, while it knows others.</summary>
internal sealed class SampleNotInKey : ITrialCheck
{
    /// <inheritdoc/>
    public IEnumerable<Fault> Find(TrialFacts facts)
    {
        var lab = facts.Content.Lab;
        var known = facts.Content.LabSection.Samples.Keys.ToList();
        if (known.Count == 0) yield break; // The samples are blind, as they should be until the return is in.
        foreach (var sample in lab.BlindSamples)
        {
            yield return facts.InRow(
                LogFormat.LabReturns.FileName, "sample", sample, "sample",
                $"Sample {sample} is not in the key of the samples, so its results belong to neither half.",
                string.Join(", ", known),
                Nearest.Suggestion(sample, known) ?? $"Add it in {TrialFolder.DescriptionFile} under \"lab\", \"samples\".");
        }
    }
}
