using System.Globalization;

namespace SplitBatch;

/// <summary>Checks and wordings shared by everything that counts right answers.</summary>
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
            throw new ArgumentOutOfRangeException(nameof(correct), $"{correct} right of {tasters} cannot be: the count must be between 0 and the {tasters} sets served.");
        }
    }

    /// <summary>A share as a percentage in running text: 34 %, 0.3 %.</summary>
    public static string Percent(double share)
    {
        var percent = share * 100;
        var format = Math.Abs(percent) is > 0 and < 1 ? "0.##" : Math.Abs(percent) is < 10 or > 99 ? "0.#" : "0";
        return percent.ToString(format, CultureInfo.InvariantCulture) + " %";
    }

    /// <summary>A p-value in running text: 0.038, 0.0042, below 0.0001.</summary>
    public static string P(double p) => p switch
    {
        < 0.0001 => "p below 0.0001",
        < 0.01 => "p = " + p.ToString("0.0000", CultureInfo.InvariantCulture),
        _ => "p = " + p.ToString("0.000", CultureInfo.InvariantCulture),
    };
}
