using System.Collections.Immutable;
using System.Globalization;

namespace SplitBatch.Brewing;

/// <summary>In what two lots may differ besides the one variable.</summary>
public enum HopDifference
{
    /// <summary>Harvest year.</summary>
    CropYear,

    /// <summary>Cones, pellets, extract and so on.</summary>
    Form,

    /// <summary>Storage temperature.</summary>
    Storage,

    /// <summary>Packaging.</summary>
    Packaging,

    /// <summary>Age since the assay, by more than 30 days.</summary>
    AssayDate,

    /// <summary>How far the resins have aged: storage index apart by more than its own scatter.</summary>
    StorageIndex,
}

/// <summary>A difference between the two lots that is not the variable under test, so the test cannot tell the two apart.</summary>
/// <param name="Difference">In what they differ.</param>
/// <param name="A">What half A has, or <c>not stated</c>.</param>
/// <param name="B">What half B has, or <c>not stated</c>.</param>
/// <param name="Why">What it may do to the beers.</param>
public sealed record HopConfound(HopDifference Difference, string A, string B, string Why)
{
    /// <summary>Whether the difference is only possible, because one side is not stated.</summary>
    public bool IsUnknown => A == NotStated || B == NotStated;

    private const string NotStated = "not stated";

    /// <summary>The confounds between two lots.</summary>
    /// <param name="lotA">The lot of half A.</param>
    /// <param name="lotB">The lot of half B.</param>
    /// <param name="variable">The difference that is under test and so no confound; none when null.</param>
    public static ImmutableArray<HopConfound> Between(HopLot lotA, HopLot lotB, HopDifference? variable = null)
    {
        ArgumentNullException.ThrowIfNull(lotA);
        ArgumentNullException.ThrowIfNull(lotB);
        return [.. All(lotA, lotB).Where(confound => confound.Difference != variable)];
    }

    /// <summary>For example <c>crop year: A 2024, B 2025. Crops differ in ...</c>.</summary>
    public override string ToString() => $"{Difference.InWords()}: A {A}, B {B}. {Why}";

    private static IEnumerable<HopConfound> All(HopLot a, HopLot b)
    {
        if (a.CropYear != b.CropYear || (a.CropYear is null && a.Name != b.Name))
        {
            yield return new(HopDifference.CropYear, Text(a.CropYear), Text(b.CropYear),
                "Crops differ in oils, beta acids and how far they have aged, so a difference in taste may come from the year.");
        }

        if (a.Form != b.Form)
        {
            yield return new(HopDifference.Form, a.Form.InWords(), b.Form.InWords(),
                "Forms yield bitterness differently and bring different amounts of plant matter and oil.");
        }

        if (a.Storage is { } x && b.Storage is { } y && Math.Abs(x.DegreesCelsius - y.DegreesCelsius) > 2)
        {
            yield return new(HopDifference.Storage, Spoken.Of(x), Spoken.Of(y), "Warmer hops age faster and taste of it.");
        }

        if (a.Packaging is { } packedA && b.Packaging is { } packedB && packedA != packedB)
        {
            yield return new(HopDifference.Packaging, packedA.InWords(), packedB.InWords(),
                "Hops that meet air age faster and taste of it.");
        }

        if (a.AssayDate is { } dayA && b.AssayDate is { } dayB && Math.Abs(dayA.DayNumber - dayB.DayNumber) > 30)
        {
            yield return new(HopDifference.AssayDate, Day(dayA), Day(dayB),
                "The older figure overstates what is left; age both lots to the brew day.");
        }

        if ((a.StorageIndex ?? a.StorageIndexAtAssay) is { } indexA && (b.StorageIndex ?? b.StorageIndexAtAssay) is { } indexB
            && Math.Abs(indexA - indexB) > 2.8 * 0.028 * Math.Max(indexA, indexB))
        {
            yield return new(HopDifference.StorageIndex, Text(indexA), Text(indexB),
                "One lot has aged more: its bitterness is less iso-alpha acid and more of other substances.");
        }
    }

    private static string Text(int? year) => year?.ToString(CultureInfo.InvariantCulture) ?? NotStated;

    private static string Text(double index) => Printed.Ratio(index);

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
