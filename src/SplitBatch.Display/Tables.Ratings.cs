using SplitBatch.Panel;

namespace SplitBatch.Display;

/// <content>Ratings of single attributes.</content>
public static partial class Tables
{
    /// <summary>Both beers compared attribute by attribute.</summary>
    /// <param name="comparisons">The comparisons.</param>
    public static Table Ratings(IEnumerable<RatingComparison> comparisons) => Table.Of(comparisons, "Ratings of both beers, attribute by attribute")
        .Text("attribute", r => r.Attribute)
        .Text("tasters", r => r.Group == RatingGroup.All ? "all" : "answered right")
        .Number("number", r => r.Tasters, decimals: 0)
        .Number("mean A", r => r.MeanA)
        .Number("mean B", r => r.MeanB)
        .Number("B less A", r => r.Difference)
        .Number("from", r => r.DifferenceInterval?.Low)
        .Number("to", r => r.DifferenceInterval?.High)
        .Number("p-value, all questions counted", r => r.AdjustedPValue, decimals: 4)
        .Note("The p-value is that of the signed ranks, corrected by Holm's method for the questions asked together.")
        .ToTable();
}
