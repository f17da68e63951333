using SplitBatch.Lab;
using SplitBatch.Trials.Logs;

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
                    $"No precision is stated for {analyte.Name}, so nobody can say whether two results differ by more than the method repeats.",
                    $"in {TrialFolder.DescriptionFile} under \"lab\": \"precision\": [ {{ \"analyte\": \"{analyte.Name}\", \"kind\": ..., \"condition\": ..., \"value [{analyte.Unit}]\": ... }} ]",
                    "Ask the lab for the repeatability of its method and what kind of figure it is.");
            }
            else
            {
                yield return new Fault(TrialFolder.DescriptionFile, $"The precision of {analyte.Name} can be read in several ways: {method.Stated}")
                {
                    Column = "lab.precision",
                    Accepted = "\"kind\": coefficient of variation, standard deviation or 95 % limit; \"condition\": repeatability or reproducibility",
                    Suggestion = "Ask the lab which it is; until then every reading is worked out beside the others.",
                    Severity = Severity.Warning,
                };
            }
        }
    }
}
