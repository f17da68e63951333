namespace SplitBatch.Trials.Checks;

/// <summary>One thing that is legal in a trial folder and yet dubious. A check only warns: what cannot be used is a fault of the reader.</summary>
internal interface ITrialCheck
{
    /// <summary>A warning for each place where it is so.</summary>
    IEnumerable<Fault> Find(TrialFacts facts);
}
