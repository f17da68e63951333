using SplitBatch.Bitterness;
using SplitBatch.BrewDay;

namespace SplitBatch.Lab;

/// <summary>
/// Whether two samples may have been swapped on the way: what the batch log and the doses foretold of the difference between the halves,
/// beside what the laboratory found under the labels.
/// </summary>
/// <remarks>
/// Differences are compared and not values, so a bias of the laboratory or of an instrument cancels. Tolerances are the laboratory's
/// critical difference and the 95 % half-width of what was foretold, squared and added.
/// </remarks>
public sealed record SwapCheck
{
    private static readonly (string Quantity, Analyte Analyte)[] Logged =
    [
        ("alcohol by volume", Analyte.Alcohol), ("pH", Analyte.Ph), ("colour", Analyte.Colour),
    ];

    private SwapCheck(IReadOnlyList<SwapLine> lines) => Lines = lines;

    /// <summary>One line for each analyte that something else foretold.</summary>
    public IReadOnlyList<SwapLine> Lines { get; }

    /// <summary>
    /// Whether a swap should be looked into: something fits only with the labels swapped, or the analytes contradict each other.
    /// </summary>
    public bool IsSuspicious => Lines.Any(line => line.Sign == SwapSign.FitsSwapped);

    /// <summary>Checks a return.</summary>
    /// <param name="lab">The return, with the key of its samples.</param>
    /// <param name="parity">The batch log's comparison of the halves, or null.</param>
    /// <param name="doses">How sure the two doses are, or null. Only a difference between the doses that was meant or known can tell a
    /// swap.</param>
    public static SwapCheck Of(LabReturn lab, ParityCheck? parity, DoseUncertainty? doses = null)
    {
        ArgumentNullException.ThrowIfNull(lab);
        var lines = new List<SwapLine>();
        foreach (var (quantity, analyte) in Logged)
        {
            var logged = parity?.Lines.FirstOrDefault(line => string.Equals(line.Quantity, quantity, StringComparison.OrdinalIgnoreCase));
            if (logged?.Difference is { } foretold && lab.Compare(analyte) is { } found)
            {
                lines.Add(new(analyte, foretold, found.Difference, Combine(logged.Tolerance, LimitOf(found)), "the batch log"));
            }
        }

        if (doses is not null && lab.Compare(Analyte.Bitterness) is { } bitterness)
        {
            lines.Add(new(Analyte.Bitterness, -doses.Mean.Difference, bitterness.Difference,
                Combine(1.96 * doses.Deviation.Difference, LimitOf(bitterness)), "the doses' estimate"));
        }

        return new(lines);
    }

    /// <summary>What follows, in a sentence or two.</summary>
    public override string ToString()
    {
        var (swapped, right, neither) = (Names(SwapSign.FitsSwapped), Names(SwapSign.FitsLabels), Names(SwapSign.FitsNeither));
        return (swapped, right) switch
        {
            ({ Count: > 0 }, { Count: 0 }) =>
                $"The samples may have been swapped: {Fit(swapped)} only if they were. Check the labels, the shipping list and what is "
                    + $"left in the bottles before using the return.",
            ({ Count: > 0 }, _) => $"The analytes contradict each other: {Fit(swapped)} only if the samples were swapped, {Fit(right)} "
                + $"only if they were not. One analysis may have mixed them up; ask the laboratory.",
            (_, { Count: > 0 }) => $"Nothing points to a swap of samples: {Fit(right)} the labels.",
            _ when Lines.Count == 0 => "Whether samples were swapped cannot be checked: nothing else predicts any analyte. Have one "
                + "measured that the batch log also holds, such as alcohol or pH.",
            _ when neither.Count > 0 => $"Whether samples were swapped cannot be told: {Fit(neither)} neither the labels nor the labels "
                + $"swapped, so something else is wrong; look at the units, the log and the return.",
            _ => "Whether samples were swapped cannot be told: in what was measured the halves are too alike, or the precision is "
                + "not known.",
        };

        List<string> Names(SwapSign sign) => [.. Lines.Where(line => line.Sign == sign).Select(line => line.Analyte.Name)];
    }

    private static string Fit(List<string> names) =>
        names is [var one] ? $"{one} fits" : $"{string.Join(", ", names.SkipLast(1))} and {names[^1]} fit";

    private static double? LimitOf(LabComparison comparison) =>
        comparison.CriticalDifference ?? comparison.Readings.Max(reading => reading.CriticalDifference) ?? comparison.LimitFromReplicates;

    private static double? Combine(double? a, double? b) => a is { } x && b is { } y ? Math.Sqrt(x * x + y * y) : null;
}
