namespace SplitBatch.Trials.Files;

/// <summary>A trial folder that cannot be used as it stands; the message lists every fault.</summary>
public sealed class TrialFolderException : Exception
{
    /// <summary>An exception that lists faults.</summary>
    /// <param name="trial">The folder's name.</param>
    /// <param name="faults">What is wrong, at least one.</param>
    public TrialFolderException(string trial, IReadOnlyList<Fault> faults)
        : base(Describe(trial, faults)) => Faults = faults;

    /// <summary>What is wrong.</summary>
    public IReadOnlyList<Fault> Faults { get; }

    private static string Describe(string trial, IReadOnlyList<Fault> faults)
    {
        var count = faults.Count == 1 ? "one fault" : $"{faults.Count} faults";
        return $"The trial folder \"{trial}\" has {count}:" + string.Concat(faults.Select(fault => $"\n  {fault}"));
    }
}
