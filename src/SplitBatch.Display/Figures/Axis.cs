namespace SplitBatch.Display.Figures;

/// <summary>One axis: what it measures, in which unit, and how far it goes.</summary>
/// <param name="Name">What is measured, such as <c>bitterness</c>; empty where the categories speak for themselves.</param>
/// <param name="Unit">The unit, such as <c>IBU</c>; empty for a count or a share.</param>
public sealed record Axis(string Name, string Unit = "")
{
    /// <summary>The lower end; null to take it from the marks.</summary>
    public double? Min { get; init; }

    /// <summary>The upper end; null to take it from the marks.</summary>
    public double? Max { get; init; }

    /// <summary>The categories, first at the top or at the left; empty for an axis of numbers.</summary>
    public IReadOnlyList<string> Categories { get; init; } = [];

    /// <summary>Whether the values are shares, written as percentages.</summary>
    public bool Percent { get; init; }

    /// <summary>Whether only whole numbers get a tick.</summary>
    public bool Whole { get; init; }

    /// <summary>Whether the axis bears categories.</summary>
    public bool IsCategorical => Categories.Count > 0;

    /// <summary>Name and unit as written beside the axis, such as <c>bitterness [IBU]</c>.</summary>
    public string Title => (Name, Unit, Percent) switch
    {
        (_, "", true) => $"{Name} [%]",
        (_, "", _) => Name,
        _ => $"{Name} [{Unit}]",
    };

    /// <summary>An axis of categories.</summary>
    public static Axis Of(IReadOnlyList<string> categories, string name = "") => new(name) { Categories = categories };
}
