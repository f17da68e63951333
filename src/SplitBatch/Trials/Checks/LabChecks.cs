using SplitBatch.Lab;
using SplitBatch.Trials.Files;

namespace SplitBatch.Trials.Checks;

/// <summary>Lab values whose method's precision is not stated, or is stated so that it can be read in several ways.</summary>
internal sealed class NoPrecision : ITrialCheck
{
    /// <inheritdoc/>
    public IEnumerable<Fault> Find(TrialFacts facts)
    {
        var lab = facts.Content.Lab;
        foreach (var analyte in lab.Analytes)
        {
            var method = lab.Precision.GetValueOrDefault(analyte, MethodPrecision.Unknown);
            if (method.Known is not null) continue;
            if (method.Stated is null)
            {
                yield return facts.InRow(
                    LogFormat.LabReturns.FileName, "analyte", analyte.Name, "value",
                    $"No precision is stated for {analyte.Name}, so nobody can say whether two results differ by more than the method "
                        + $"repeats.",
                    $"in {TrialFolder.DescriptionFile} under \"lab\": \"precision\": [ {{ \"analyte\": \"{analyte.Name}\", \"kind\": ..., "
                        + $"\"condition\": ..., \"value [{analyte.Unit}]\": ... }} ]",
                    "Ask the lab for the repeatability of its method and what kind of figure it is.");
            }
            else
            {
                yield return new Fault(TrialFolder.DescriptionFile,
                    $"The precision of {analyte.Name} can be read in several ways: {method.Stated}")
                {
                    Column = "lab.precision",
                    Accepted = "\"kind\": coefficient of variation, standard deviation or 95 % limit; \"condition\": repeatability or "
                        + "reproducibility",
                    Suggestion = "Ask the lab which it is; until then every reading is worked out beside the others.",
                    Severity = Severity.Warning,
                };
            }
        }
    }
}

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

/// <summary>An absorbance that lies outside what the method was made for, or whose blank absorbs too much.</summary>
internal sealed class DoubtfulReading : ITrialCheck
{
    /// <inheritdoc/>
    public IEnumerable<Fault> Find(TrialFacts facts) =>
        from result in facts.Content.Lab.Results
        from warning in result.Reading?.Warnings ?? []
        select facts.InRow(LogFormat.LabReturns.FileName, "id", result.Id, "absorbance", warning,
            "a reading within what the method was made for, 10 to 40 BU, against a clean blank");
}
