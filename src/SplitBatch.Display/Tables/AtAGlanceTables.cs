using System.ComponentModel;
using System.Globalization;
using SplitBatch.Bitterness;
using SplitBatch.Numbers;
using static System.FormattableString;

namespace SplitBatch.Display.Tables;

/// <summary>Two doses on one small page.</summary>
[EditorBrowsable(EditorBrowsableState.Never)]
public static class AtAGlanceTables
{
    /// <summary>
    /// All that is said of two doses, line by line: what to weigh, what each formula says, how sure it is, and what comes with it.
    /// </summary>
    /// <param name="match">The two doses.</param>
    /// <param name="criticalDifference">The laboratory's critical difference in IBU; null to leave it out.</param>
    /// <param name="tasteMargin">The difference in IBU that people are thought to taste; null to leave it out.</param>
    /// <param name="seed">The seed of the draws behind the ranges.</param>
    public static Table AtAGlance(this ChargeMatch match, double? criticalDifference = null, double? tasteMargin = null, int seed = 2026)
    {
        ArgumentNullException.ThrowIfNull(match);
        var (a, b, measure) = (match.A, match.B, Measure.Of(match));
        var doubt = match.Uncertainty(seed: seed, draws: 200_000, criticalDifference: criticalDifference, tasteMargin: tasteMargin);
        var models = match.Compare(Side.A).Rows.Zip(match.Compare(Side.B).Rows);
        List<(string What, string A, string B, string Difference)> rows =
        [
            ("to weigh", Weighed(a), Weighed(b), ""),
            ($"estimate by {a.Estimate.Model.Name}", Ibu(a.Bitterness.Value), Ibu(b.Bitterness.Value), Signed(match.Mismatch)),
            ("where it may lie (95 %)", Range(doubt.A), Range(doubt.B), Range(doubt.Difference)),
            .. models.Where(pair => pair.First.Model != a.Estimate.Model.Name)
                .Select(pair => ($"by {pair.First.Model}", Ibu(pair.First.Bitterness), Ibu(pair.Second.Bitterness),
                    Signed(pair.Second.Bitterness - pair.First.Bitterness))),
            ("alpha acid", measure.Text(a.AlphaMass, 1), measure.Text(b.AlphaMass, 1), ""),
            ("plant matter", measure.Text(a.PlantMatter), measure.Text(b.PlantMatter), ""),
            ("wort kept back by the hops", KeptBack(a), KeptBack(b), ""),
            .. a.Cost is { } costA && b.Cost is { } costB
                ? [("cost of the hops", Price(costA), Price(costB), Price(costB - costA))]
                : Array.Empty<(string, string, string, string)>(),
        ];
        return TableOf.Each(rows, "The two doses at a glance")
            .Text("", row => row.What)
            .Text("half A", row => row.A)
            .Text("half B", row => row.B)
            .Text("B minus A", row => row.Difference)
            .Note(string.Join(" ", [
                .. Chance("the laboratory's critical difference", criticalDifference, doubt.ChanceBeyondCriticalDifference),
                .. Chance("the taste margin", tasteMargin, doubt.ChanceBeyondTasteMargin),
                doubt.Advice,
                .. match.Warnings,
                Invariant($"({doubt.Draws} draws, seed {doubt.Seed}.)")]))
            .ToTable();

        string KeptBack(SideDose side) => Printed.WortHeld(side.WortHeld, measure.UsVolumes ? UnitSystem.Us : UnitSystem.Metric);
        string Weighed(SideDose side) =>
            string.Join(" + ", side.Charges.Select(charge => $"{measure.Text(charge.Mass)} {charge.Lot.Name}, {charge.When}"));
    }

    private static IEnumerable<string> Chance(string what, double? limit, double? chance) => limit is { } ibu && chance is { } share
        ? [Invariant($"The chance that the halves truly differ by more than {what} of {Printed.Chosen(ibu)} IBU is ")
            + Invariant($"{Printed.Percent(share)}.")]
        : [];

    private static string Ibu(double value) => Invariant($"{Printed.Bitterness(value)} IBU");

    private static string Signed(double value) => Printed.Fixed(value, 1) + " IBU";

    private static string Range(Interval interval) => $"{Printed.Fixed(interval.Low, 1)} to {Printed.Fixed(interval.High, 1)} IBU";

    private static string Price(decimal price) => Printed.Fixed((double)price, 2);
}
