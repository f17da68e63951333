namespace SplitBatch;

/// <summary>Checks shared by everything that counts right answers.</summary>
internal static class Counts
{
    /// <summary>Refuses no tasters and more right answers than sets.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The counts make no sense.</exception>
    public static void Check(int correct, int tasters)
    {
        if (tasters < 1)
        {
            throw new ArgumentOutOfRangeException(nameof(tasters), $"The number of sets tasted is {tasters}; it must be 1 or more.");
        }

        if (correct < 0 || correct > tasters)
        {
            throw new ArgumentOutOfRangeException(nameof(correct),
                $"{correct} right of {tasters} cannot be: the count must be between 0 and the {tasters} sets served.");
        }
    }
}
