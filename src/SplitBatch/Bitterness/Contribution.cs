using System.Globalization;

namespace SplitBatch.Bitterness;

/// <summary>What one source of error adds: a bar of the ranked contribution chart.</summary>
/// <param name="Term">The source.</param>
/// <param name="ToA">Standard uncertainty that it alone gives half A, in IBU.</param>
/// <param name="ToB">Standard uncertainty that it alone gives half B, in IBU.</param>
/// <param name="ToDifference">Standard uncertainty that it alone gives the difference, in IBU.</param>
/// <param name="Share">Its share of the variance of the difference; all shares add to 1.</param>
public sealed record Contribution(ErrorTerm Term, double ToA, double ToB, double ToDifference, double Share)
{
    /// <summary>For example <c>form factor, pellets (independent): 2.1 IBU of the difference, 41 % of its variance</c>.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Term.Name} ({(Term.Sharing == Sharing.Shared ? "shared" : "independent")}): {ToDifference:0.00} IBU of the difference, {Share * 100:0} % of its variance");
}
