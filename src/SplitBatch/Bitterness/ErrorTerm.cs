using System.Globalization;

namespace SplitBatch.Bitterness;

/// <summary>What an error acts on, and so the unit of its standard uncertainty.</summary>
public enum ErrorKind
{
    /// <summary>Alpha acid of a lot, as a share of its value.</summary>
    Alpha,

    /// <summary>The yield of a hop form against cones, as a share of its value.</summary>
    Form,

    /// <summary>Mass of every charge, as a share of its value: the scale's calibration.</summary>
    Calibration,

    /// <summary>Mass of one charge, in grams: the scale's reading.</summary>
    Reading,

    /// <summary>Volume, as a share of its value.</summary>
    Volume,

    /// <summary>Gravity, in points (0.001 of specific gravity).</summary>
    Gravity,

    /// <summary>Time of a charge, in minutes.</summary>
    Minutes,

    /// <summary>
    /// What the formula says of hops that boil, as a share of its value. Forms with a yield of their own do not meet it.
    /// </summary>
    Formula,

    /// <summary>The beer as a whole, as a share of its value.</summary>
    Estimate,
}

/// <summary>Whether both beers meet the same error. Shared errors cancel in the difference, wholly or in part.</summary>
public enum Sharing
{
    /// <summary>One error, the same in both beers.</summary>
    Shared,

    /// <summary>Each beer draws its own.</summary>
    Independent,
}

/// <summary>How an error is spread.</summary>
public enum ErrorShape
{
    /// <summary>The normal distribution.</summary>
    Normal,

    /// <summary>All values within ± √3 standard uncertainties alike: a rounding or a tolerance.</summary>
    Rectangular,
}

/// <summary>One source of error.</summary>
/// <param name="Name">What a brewer calls it.</param>
/// <param name="Kind">What it acts on.</param>
/// <param name="Standard">Its standard uncertainty, in the unit of <paramref name="Kind"/>; zero or more.</param>
/// <param name="Sharing">Whether both beers meet the same error.</param>
public sealed record ErrorTerm(string Name, ErrorKind Kind, double Standard, Sharing Sharing)
{
    /// <summary>What a brewer calls it.</summary>
    public string Name { get; init; } = Guard.NotBlank(Name);

    /// <summary>Its standard uncertainty, in the unit of <see cref="Kind"/>.</summary>
    public double Standard { get; init => field = Guard.NotNegative(value, nameof(Standard)); } = Guard.NotNegative(Standard);

    /// <summary>How it is spread.</summary>
    public ErrorShape Shape { get; init; }

    /// <summary>
    /// The lot's name (for <see cref="ErrorKind.Alpha"/>) or the form in words, as <c>pellets</c> (for <see cref="ErrorKind.Form"/>) that
    /// it acts on; all when null.
    /// </summary>
    public string? Target { get; init; }

    /// <summary>Where the figure comes from.</summary>
    public string Source { get; init; } = "as given";

    /// <summary>What would make it smaller.</summary>
    public string Remedy { get; init; } = "";

    /// <summary>For example <c>volume, each kettle: 1.5 %, independent</c>.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Name}: {Amount}, {(Sharing == Sharing.Shared ? "shared" : "independent")}");

    private string Amount => string.Create(CultureInfo.InvariantCulture, $"{Kind switch
    {
        ErrorKind.Reading => $"{Printed.Ratio(Standard)} g",
        ErrorKind.Gravity => $"{Printed.Chosen(Standard)} gravity points",
        ErrorKind.Minutes => $"{Printed.Chosen(Standard)} min",
        _ => $"{Printed.Percent(Standard)}",
    }}");
}

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
        $"{Term.Name} ({(Term.Sharing == Sharing.Shared ? "shared" : "independent")}): {Printed.Bitterness(ToDifference)} IBU of the "
            + $"difference, {Printed.Percent(Share)} of its variance");
}
