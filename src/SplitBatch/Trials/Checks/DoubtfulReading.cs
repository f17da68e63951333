using SplitBatch.Trials.Logs;

namespace SplitBatch.Trials.Checks;

/// <summary>An absorbance that lies outside what the method was made for, or whose blank absorbs too much.</summary>
internal sealed class DoubtfulReading : ITrialCheck
{
    /// <inheritdoc/>
    public IEnumerable<Fault> Find(TrialFacts facts) =>
        from result in facts.Content.Lab.Results
        from warning in result.Reading?.Warnings ?? []
        select facts.InRow(LogFormat.LabReturns.FileName, "id", result.Id, "absorbance", warning, "a reading within what the method was made for, 10 to 40 BU, against a clean blank");
}
