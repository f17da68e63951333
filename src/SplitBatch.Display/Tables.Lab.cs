using SplitBatch.Lab;

namespace SplitBatch.Display;

/// <content>What the laboratory returned.</content>
public static partial class Tables
{
    /// <summary>Both beers by every analyte, against what the methods tell apart.</summary>
    /// <param name="comparisons">The comparisons.</param>
    public static Table Lab(IEnumerable<LabComparison> comparisons) => Table.Of(comparisons, "The two beers by the lab")
        .Text("analyte", c => c.Analyte.ToString())
        .Text("beer A", c => c.Analyte.Format(c.A.Mean))
        .Text("beer B", c => c.Analyte.Format(c.B.Mean))
        .Text("difference", c => c.Analyte.Format(c.Difference))
        .Text("critical difference", c => Criticals(c))
        .Text("judgement", c => c.Judgement switch
        {
            Judgement.Exceeds => "larger than the method's scatter",
            Judgement.Within => "not told apart by this method",
            Judgement.DependsOnReading => "depends on what the lab's figure means",
            _ => "not judged",
        })
        .Note("Critical difference: two results on one and the same beer lie closer together than this in 95 cases of 100.")
        .ToTable();

    /// <summary>Every result in force, replicate by replicate.</summary>
    /// <param name="lab">The return.</param>
    public static Table LabResults(LabReturn lab)
    {
        ArgumentNullException.ThrowIfNull(lab);
        return Table.Of(lab.Results, "Every result of the lab")
            .Text("sample", r => r.Sample)
            .Text("beer", r => lab.BeerOf(r.Sample)?.ToString() ?? "not yet opened")
            .Text("analyte", r => r.Analyte.Name)
            .Number("replicate", r => r.Replicate, decimals: 0)
            .Text("value", r => r.Analyte.Format(r.Value))
            .Text("method", r => r.Method.Length > 0 ? r.Method : null)
            .Text("laboratory", r => r.Laboratory.Length > 0 ? r.Laboratory : null)
            .ToTable();
    }

    private static string? Criticals(LabComparison comparison)
    {
        var limits = comparison.Readings.Select(r => r.CriticalDifference).OfType<double>().Order().ToList();
        return limits.Count switch
        {
            0 => null,
            1 => comparison.Analyte.Format(limits[0]),
            _ => $"{comparison.Analyte.Format(limits[0])} to {comparison.Analyte.Format(limits[^1])}",
        };
    }
}
