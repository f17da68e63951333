using System.Collections;

namespace SplitBatch.Evidence.Findings;

/// <summary>All findings of a trial: one list in the order of the job, each under its own name.</summary>
public sealed class TrialFindings : IReadOnlyList<Finding>
{
    private readonly Finding[] all;
    private readonly Dictionary<FindingId, Finding> byName;

    /// <summary>A list of findings.</summary>
    /// <param name="findings">In the order in which a reader meets them.</param>
    /// <exception cref="ArgumentException">Two have one name.</exception>
    public TrialFindings(IEnumerable<Finding> findings)
    {
        all = [.. findings];
        byName = [];
        foreach (var finding in all)
        {
            if (!byName.TryAdd(finding.Id, finding))
                throw new ArgumentException($"Two findings are called {finding.Id}.", nameof(findings));
        }
    }

    /// <inheritdoc/>
    public int Count => all.Length;

    /// <inheritdoc/>
    public Finding this[int index] => all[index];

    /// <summary>The finding of a name; null where there is none.</summary>
    public Finding? Find(FindingId id) => byName.GetValueOrDefault(id);

    /// <summary>The first finding of a kind; null where there is none.</summary>
    public T? First<T>()
        where T : Finding => all.OfType<T>().FirstOrDefault();

    /// <summary>The first finding of a kind about a subject; null where there is none.</summary>
    public T? First<T>(Subject about)
        where T : Finding => all.OfType<T>().FirstOrDefault(finding => finding.About == about);

    /// <summary>The findings of one role.</summary>
    public IEnumerable<Finding> As(FindingRole role) => all.Where(finding => finding.Role == role);

    /// <summary>The results about a subject.</summary>
    public IEnumerable<Finding> ResultsAbout(Subject about) => As(FindingRole.Result).Where(finding => finding.About == about);

    /// <inheritdoc/>
    public IEnumerator<Finding> GetEnumerator() => ((IEnumerable<Finding>)all).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
