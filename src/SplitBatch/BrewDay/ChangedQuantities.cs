using System.Text.RegularExpressions;

namespace SplitBatch.BrewDay;

/// <summary>
/// The quantities that a trial changes on purpose: the variable itself, what was named as following from it, and what follows from those
/// by arithmetic. None of them is a confound.
/// </summary>
/// <remarks>
/// A quantity is the variable itself when all words of its name are words of the variable's, or the other way round: "mash temperature"
/// where the variable is "temperature of the mash". When a gravity is among them, so are alcohol, attenuation and extract, which are
/// worked out from the gravities.
/// </remarks>
public sealed partial class ChangedQuantities
{
    private static readonly HashSet<string> Small =
        new(StringComparer.OrdinalIgnoreCase) { "of", "the", "a", "an", "and", "in", "at", "by", "or", "for" };

    private static readonly HashSet<string> FromGravities = new(StringComparer.OrdinalIgnoreCase)
    {
        "alcohol", "alcohol by volume", "apparent attenuation", "real attenuation", "attenuation", "real extract", "apparent extract",
    };

    private readonly HashSet<string> variable;
    private readonly HashSet<string> named;

    /// <summary>From the variable and what follows from it.</summary>
    /// <param name="variable">The one thing that differs between the halves, in words; blank for none.</param>
    /// <param name="follows">Quantities that differ because of it.</param>
    public ChangedQuantities(string variable, IEnumerable<string> follows)
    {
        ArgumentNullException.ThrowIfNull(variable);
        this.variable = Words(variable);
        named = new(follows, StringComparer.OrdinalIgnoreCase);
    }

    /// <summary>Nothing is changed on purpose.</summary>
    public static ChangedQuantities None { get; } = new("", []);

    /// <summary>Whether a quantity is the variable, or follows from it.</summary>
    public bool Contains(string quantity) =>
        IsChanged(quantity)
            || (FromGravities.Contains(quantity) && (IsChanged(BatchLog.OriginalGravity) || IsChanged(BatchLog.FinalGravity)));

    private bool IsChanged(string quantity) => named.Contains(quantity) || IsTheVariable(Words(quantity));

    private bool IsTheVariable(HashSet<string> quantity) =>
        quantity.Count > 0 && variable.Count > 0 && (quantity.IsSubsetOf(variable) || variable.IsSubsetOf(quantity));

    private static HashSet<string> Words(string text) =>
        new(Word().Matches(text).Select(match => match.Value).Where(word => !Small.Contains(word)), StringComparer.OrdinalIgnoreCase);

    [GeneratedRegex(@"[\p{L}\p{N}]+")]
    private static partial Regex Word();
}
