using System.Globalization;

namespace SplitBatch.Lab;

/// <summary>
/// What an outlier test says. A flagged value is kept and counted like any other, until a correction in the log replaces it with a reason.
/// </summary>
/// <param name="Test">The test, as "Cochran" or "Grubbs, one value".</param>
/// <param name="Label">The sample it is about.</param>
/// <param name="Values">The values under suspicion.</param>
/// <param name="Statistic">The test's statistic.</param>
/// <param name="Critical5">Its critical value at 5 %.</param>
/// <param name="Critical1">Its critical value at 1 %.</param>
/// <param name="Status">Correct, straggler or outlier.</param>
/// <param name="Analyte">What was measured.</param>
public sealed record OutlierFinding(
    string Test, string Label, IReadOnlyList<double> Values, double Statistic, double Critical5, double Critical1, OutlierStatus Status,
    Analyte Analyte)
{
    /// <summary>Whether it is about a sample's spread and not about single values of it.</summary>
    public bool IsAboutSpread => Test == Cochran.Name;

    /// <summary>The critical value that lies nearer to the statistic.</summary>
    internal double Nearest => Math.Abs(Statistic - Critical5) <= Math.Abs(Statistic - Critical1) ? Critical5 : Critical1;

    /// <summary>Whether it is worth a look.</summary>
    public bool IsFlagged => Status != OutlierStatus.Correct;

    /// <summary>For example <c>Sample K7: 29.6 BU is an outlier (Grubbs, one value: ...). It is kept; ...</c>.</summary>
    public override string ToString()
    {
        var numbers = string.Create(CultureInfo.InvariantCulture,
            $"{Test}: {Printed.Statistic(Statistic)}, critical {Printed.Statistic(Critical5)} at 5 % and "
                + $"{Printed.Statistic(Critical1)} at 1 %");
        var values = string.Join(" and ", Values.Select(Analyte.Format));
        var subject = IsAboutSpread ? $"the spread of {values}" : values;
        return Status switch
        {
            OutlierStatus.Correct => $"{Label}: {subject} is nothing unusual ({numbers}).",
            var status => $"{Label}: {subject} is {(status == OutlierStatus.Outlier ? "an outlier" : "a straggler")} ({numbers}). It is "
                + $"kept; look for a cause, and correct the log with a reason if there is one.",
        };
    }
}

/// <summary>How suspicious a value or a spread is, in the words of ISO 5725-2.</summary>
public enum OutlierStatus
{
    /// <summary>At or inside the 5 % critical value.</summary>
    Correct,

    /// <summary>Beyond the 5 % and not beyond the 1 % critical value.</summary>
    Straggler,

    /// <summary>Beyond the 1 % critical value.</summary>
    Outlier,
}
