using SplitBatch.Display.Drawing;

namespace SplitBatch.Display.Figures;

/// <summary>The axis along which a value runs.</summary>
public enum Along
{
    /// <summary>From left to right.</summary>
    X,

    /// <summary>From the bottom up.</summary>
    Y,
}

/// <summary>A place in a figure, in the units of its axes.</summary>
/// <param name="X">The value on the horizontal axis (on an axis of categories: the number of the category, from 0).</param>
/// <param name="Y">The value on the vertical axis (likewise).</param>
public readonly record struct At(double X, double Y);

/// <summary>Something drawn in a figure.</summary>
public abstract record Mark
{
    /// <summary>What the mark stands for.</summary>
    public Ink Ink { get; init; } = Ink.Main;

    /// <summary>What the mark shows, in a word or two; written beside it where there is room.</summary>
    public string Name { get; init; } = "";

    /// <summary>The values that the mark has on an axis, which the axis must hold; they may be infinite.</summary>
    internal IEnumerable<double> ValuesOn(Along axis) => this switch
    {
        Dots dots => dots.Points.Select(p => axis == Along.X ? p.X : p.Y),
        Curve curve => curve.Points.Select(p => axis == Along.X ? p.X : p.Y),
        Note note => [axis == Along.X ? note.Place.X : note.Place.Y],
        Ribbon ribbon => axis == Along.X ? ribbon.Points.Select(p => p.X) : ribbon.Points.SelectMany(p => new[] { p.Low, p.High }),
        Ranges ranges => ranges.Along == axis
            ? ranges.Items.SelectMany(i => new[] { i.Low, i.High, i.Best ?? i.Low })
            : ranges.Items.Select(i => i.Place),
        Bars bars => bars.Along == axis
            ? bars.Items.SelectMany(i => new[] { 0, i.Value })
            : bars.Items.SelectMany(i => new[] { i.Place - 0.5, i.Place + 0.5 }),
        Zone zone when zone.Along == axis => [zone.Low, zone.High],
        Rule rule when rule.Along == axis => [rule.Value],
        _ => Enumerable.Empty<double>(),
    };
}

/// <summary>Separate points.</summary>
/// <param name="Points">The places.</param>
public sealed record Dots(IReadOnlyList<At> Points) : Mark;

/// <summary>One interval of a <see cref="Ranges"/> mark.</summary>
/// <param name="Place">Where it lies on the other axis.</param>
/// <param name="Low">Its lower end; minus infinity for an interval that is open below.</param>
/// <param name="High">Its upper end; infinity for an interval that is open above.</param>
/// <param name="Best">The best single value, marked by a point; null for none.</param>
/// <param name="Label">Text written beside the interval.</param>
public readonly record struct RangeItem(double Place, double Low, double High, double? Best = null, string Label = "");

/// <summary>Intervals, each with or without a best value.</summary>
/// <param name="Items">The intervals.</param>
/// <param name="Along">The axis along which the values run.</param>
public sealed record Ranges(IReadOnlyList<RangeItem> Items, Along Along = Along.X) : Mark;

/// <summary>One bar of a <see cref="Bars"/> mark.</summary>
/// <param name="Place">Where it stands on the other axis.</param>
/// <param name="Value">Where it ends; it starts at zero.</param>
/// <param name="Label">Text written at its end.</param>
public readonly record struct BarItem(double Place, double Value, string Label = "");

/// <summary>Bars from zero.</summary>
/// <param name="Items">The bars.</param>
/// <param name="Along">The axis along which the values run.</param>
public sealed record Bars(IReadOnlyList<BarItem> Items, Along Along = Along.Y) : Mark
{
    /// <summary>The width of a bar as a share of the room between two whole places, in (0, 1].</summary>
    public double Width { get; init; } = 0.7;
}

/// <summary>A line through points.</summary>
/// <param name="Points">The places, in the order in which they are joined.</param>
public sealed record Curve(IReadOnlyList<At> Points) : Mark
{
    /// <summary>A name short enough to stand at the curve's end on a phone; blank to write the whole name above the end.</summary>
    public string ShortName { get; init; } = "";
}

/// <summary>A shaded area between two curves.</summary>
/// <param name="Points">For each place on the horizontal axis the lower and the upper value.</param>
public sealed record Ribbon(IReadOnlyList<(double X, double Low, double High)> Points) : Mark;

/// <summary>A shaded stretch of one axis, across the whole figure.</summary>
/// <param name="Low">Its lower end.</param>
/// <param name="High">Its upper end.</param>
/// <param name="Along">The axis it is a stretch of.</param>
public sealed record Zone(double Low, double High, Along Along = Along.X) : Mark;

/// <summary>A reference line at one value of one axis, across the whole figure.</summary>
/// <param name="Value">The value.</param>
/// <param name="Along">The axis of the value: <see cref="Along.X"/> gives an upright line.</param>
public sealed record Rule(double Value, Along Along = Along.X) : Mark;

/// <summary>A few words at a place.</summary>
/// <param name="Place">Where.</param>
/// <param name="Text">The words.</param>
public sealed record Note(At Place, string Text) : Mark
{
    /// <summary>Whether the words stand below the place, and give way downwards; above it otherwise.</summary>
    public bool Below { get; init; }
}
