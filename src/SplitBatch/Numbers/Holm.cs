namespace SplitBatch.Numbers;

/// <summary>Correction for asking many questions of one panel.</summary>
public static class Holm
{
    /// <summary>
    /// Holm's adjusted p-values: those at or below alpha may be called shown together, with a chance of at most alpha of any false one
    /// among them.
    /// </summary>
    /// <param name="pValues">One for each question, each in [0, 1].</param>
    /// <returns>The adjusted p-values in the order given.</returns>
    /// <remarks>Ref. S. Holm (1979), Scand. J. Statist. 6, 65.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is not in [0, 1].</exception>
    public static IReadOnlyList<double> Adjust(IReadOnlyList<double> pValues)
    {
        ArgumentNullException.ThrowIfNull(pValues);
        foreach (var p in pValues) Guard.Share(p, nameof(pValues));
        var adjusted = new double[pValues.Count];
        var largest = 0.0;
        var left = pValues.Count;
        foreach (var i in Enumerable.Range(0, pValues.Count).OrderBy(i => pValues[i]))
        {
            largest = Math.Max(largest, Math.Min(1, left-- * pValues[i]));
            adjusted[i] = largest;
        }

        return adjusted;
    }
}
