namespace SplitBatch.Numbers;

/// <summary>A search along rising steps.</summary>
internal static class Steps
{
    /// <summary>The place of the last step that holds, where all before it do and none after it does; -1 where none holds.</summary>
    public static int Last(IReadOnlyList<double> steps, Func<double, bool> holds)
    {
        var (low, high) = (-1, steps.Count - 1);
        while (low < high)
        {
            var middle = low + ((high - low + 1) / 2);
            if (holds(steps[middle])) low = middle;
            else high = middle - 1;
        }

        return low;
    }
}
