using System.ComponentModel;
using SplitBatch.BrewDay;
using SplitBatch.Lab;
using static System.FormattableString;

namespace SplitBatch.Display.Tables;

/// <summary>Tables of the lab's returns.</summary>
[EditorBrowsable(EditorBrowsableState.Never)]
public static class LabTables
{
    /// <summary>Both beers by every analyte, against what the methods tell apart.</summary>
    /// <param name="comparisons">The comparisons.</param>
    public static Table Table(this IEnumerable<LabComparison> comparisons) => TableOf.Each(comparisons, "The two beers by the lab")
        .Text("analyte", c => c.Analyte.ToString())
        .Text("beer A", c => c.Analyte.Format(c.A.Mean))
        .Text("beer B", c => c.Analyte.Format(c.B.Mean))
        .Text("B minus A", c => c.Analyte.Format(-c.Difference))
        .Text("critical difference", c => Criticals(c))
        .Text("judgement", c => c.Judgement switch
        {
            Judgement.Exceeds => "larger than the method's scatter",
            Judgement.Within => "not told apart by this method",
            Judgement.DependsOnReading => "depends on what the lab's figure means",
            _ => "not judged",
        })
        .Note("Critical difference: two results on the same beer lie closer together than this in 95 cases out of 100.")
        .ToTable();

    /// <summary>Every result in force, replicate by replicate.</summary>
    /// <param name="lab">The return.</param>
    public static Table Table(this LabReturn lab)
    {
        ArgumentNullException.ThrowIfNull(lab);
        return TableOf.Each(lab.Results, "Every result of the lab")
            .Text("sample", r => r.Sample)
            .Text("beer", r => lab.BeerOf(r.Sample)?.ToString() ?? "not yet opened")
            .Text("analyte", r => r.Analyte.Name)
            .Number("replicate", r => r.Replicate, decimals: 0)
            .Text("value", r => r.Analyte.Format(r.Value))
            .Text("method", r => r.Method.Length > 0 ? r.Method : null)
            .Text("laboratory", r => r.Laboratory.Length > 0 ? r.Laboratory : null)
            .ToTable();
    }

    /// <summary>What the replicates say about themselves: outlier tests, and whether the run repeated as well as the lab states.</summary>
    /// <param name="lab">The return.</param>
    public static Table TableOfOutliers(this LabReturn lab)
    {
        ArgumentNullException.ThrowIfNull(lab);
        var tests = lab.Analytes.SelectMany(lab.Outliers).Select(finding => (
            Analyte: finding.Analyte.Name,
            Sample: finding.Label,
            finding.Test,
            About: finding.IsAboutSpread ? "the spread" : string.Join(" and ", finding.Values.Select(finding.Analyte.Format)),
            Found: Invariant($"{Printed.Statistic(finding.Statistic)}"),
            Limit: Invariant($"{Printed.Statistic(finding.Critical5)} at 5 %, {Printed.Statistic(finding.Critical1)} at 1 %"),
            Says: finding.Status switch
            {
                OutlierStatus.Outlier => "outlier: look for a cause",
                OutlierStatus.Straggler => "straggler: look for a cause",
                _ => "nothing unusual",
            }));
        var ranges = lab.Analytes.SelectMany(lab.RangeChecks).Select(check => (
            Analyte: check.Sample.Analyte.Name,
            Sample: check.Sample.Label,
            Test: "range",
            About: "the spread",
            Found: check.Sample.Analyte.Format(check.Sample.Range),
            Limit: check.Sample.Analyte.Format(check.CriticalRange),
            Says: check.IsAcceptable ? "repeats as well as stated" : "does not repeat as well as stated"));
        return TableOf.Each(tests.Concat(ranges), "Do the replicates agree?")
            .Text("analyte", row => row.Analyte)
            .Text("sample", row => row.Sample)
            .Text("test", row => row.Test)
            .Text("about", row => row.About)
            .Text("found", row => row.Found)
            .Text("limit", row => row.Limit)
            .Text("says", row => row.Says)
            .Note("Cochran and Grubbs as ISO 5725-2 uses them; range as in ISO 5725-6. A flagged value stays in every mean until a "
                + "correction with a reason replaces it. Two replicates can disagree, but they cannot say which of them is wrong.")
            .ToTable();
    }

    /// <summary>What something else foretold of the difference between the halves, beside what the lab found under the labels.</summary>
    /// <param name="check">The check of the samples.</param>
    public static Table Table(this SwapCheck check)
    {
        ArgumentNullException.ThrowIfNull(check);
        return TableOf.Each(check.Lines, "Could the samples have been swapped?")
            .Text("analyte", line => line.Analyte.ToString())
            .Text("expected from", line => line.Grounds)
            .Text("B minus A, expected", line => line.Analyte.Format(-line.Foretold))
            .Text("B minus A, by the lab", line => line.Analyte.Format(-line.Measured))
            .Text("may lie apart by", line => line.Tolerance is { } most ? line.Analyte.Format(most) : null)
            .Text("fits", line => line.Sign switch
            {
                SwapSign.FitsLabels => "the labels",
                SwapSign.FitsSwapped => "only the labels swapped",
                SwapSign.FitsNeither => "neither way",
                _ => line.Tolerance is null ? "precision not known" : "both ways, too alike",
            })
            .Note(check.ToString())
            .ToTable();
    }

    /// <summary>What the estimates against the lab suggest for the next batch.</summary>
    /// <param name="check">The estimates against the lab.</param>
    public static Table Table(this EstimateCheck check)
    {
        ArgumentNullException.ThrowIfNull(check);
        return TableOf.Each(check.NextTime, "What to change next time").Text("step", step => step).ToTable();
    }

    /// <summary>Every row of the return that was corrected, what it read, what replaced it, why and by whom.</summary>
    /// <param name="lab">The return.</param>
    public static Table TableOfHistory(this LabReturn lab)
    {
        ArgumentNullException.ThrowIfNull(lab);
        return History(lab.History, "Corrections of the lab return", row => $"{row.Sample}: {row.Analyte.Format(row.Value)}",
            row => row.Who);
    }

    /// <summary>Every entry of the batch log that was corrected, what it read, what replaced it, why and by whom.</summary>
    /// <param name="log">The batch log.</param>
    public static Table Table(this BatchLog log)
    {
        ArgumentNullException.ThrowIfNull(log);
        return History(log.History, "Corrections of the batch log", row => row.ToString(), row => row.Who);
    }

    /// <summary>Absorbances read with one's own instrument, the bitterness that follows, and what to know before trusting it.</summary>
    /// <param name="lab">The return.</param>
    public static Table TableOfAbsorbances(this LabReturn lab)
    {
        ArgumentNullException.ThrowIfNull(lab);
        return TableOf.Each(lab.Results.Where(result => result.Reading is not null), "Bitterness from absorbance at 275 nm")
            .Text("sample", result => result.Sample)
            .Number("replicate", result => result.Replicate, decimals: 0)
            .Number("absorbance", result => result.Reading!.Absorbance, decimals: 3)
            .Number("blank", result => result.Reading!.Blank, decimals: 3)
            .Number("thinned", result => result.Reading!.Dilution, "times", decimals: 1)
            .Number("bitterness", result => result.Reading!.Units, "BU")
            .Text("remark", result => result.Reading!.Warnings.Count > 0 ? string.Join(" ", result.Reading.Warnings) : null)
            .Note("BU = 50 x (absorbance minus blank) x dilution, in a 10 mm cell (EBC 9.8, ASBC Beer-23 A). "
                + string.Join(" ", AbsorbanceReading.Limits))
            .ToTable();
    }

    private static Table History<T>(LogHistory<T> history, string caption, Func<T, string> reads, Func<T, string> who)
        where T : class, ILogged => TableOf.Each(history.Corrections, caption)
            .Text("row", correction => correction.Old.Id)
            .Text("it read", correction => reads(correction.Old))
            .Text("replaced by", correction => correction.New.Id)
            .Text("which reads", correction => reads(correction.New))
            .Text("why", correction => correction.New.Reason)
            .Text("who", correction => who(correction.New) is { Length: > 0 } name ? name : null)
            .Note($"{Words.Counted(history.Rows.Count, "row")} in the log, {history.InForce.Count} of them in force. No row was changed "
                + $"or removed.")
            .ToTable();

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
