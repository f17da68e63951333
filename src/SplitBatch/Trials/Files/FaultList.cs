using System.Collections;

namespace SplitBatch.Trials.Files;

/// <summary>Gathers every fault of a trial folder, so that all are reported at once.</summary>
internal sealed class FaultList : IReadOnlyList<Fault>
{
    private readonly List<Fault> faults = [];

    /// <inheritdoc/>
    public int Count => faults.Count;

    /// <summary>Whether any fault stops the work.</summary>
    public bool HasErrors => faults.Exists(fault => fault.Severity == Severity.Error);

    /// <inheritdoc/>
    public Fault this[int index] => faults[index];

    /// <summary>Adds a fault.</summary>
    public void Add(Fault fault)
    {
        ArgumentNullException.ThrowIfNull(fault);
        faults.Add(fault);
    }

    /// <inheritdoc/>
    public IEnumerator<Fault> GetEnumerator() => faults.GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}

/// <summary>Turns what a value said about its arguments into the sentence that a reader needs.</summary>
internal static class FaultText
{
    /// <summary>The message without the name of the parameter that the runtime adds.</summary>
    public static string Of(ArgumentException error)
    {
        var tail = error.Message.IndexOf(" (Parameter '", StringComparison.Ordinal);
        return tail < 0 ? error.Message : error.Message[..tail];
    }
}
