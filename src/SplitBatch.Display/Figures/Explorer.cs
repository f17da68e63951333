using SplitBatch.Display.Tables;

namespace SplitBatch.Display.Figures;

/// <summary>One slider of an <see cref="Explorer"/>.</summary>
/// <param name="Name">What it changes, such as <c>tasters</c>.</param>
/// <param name="Steps">The values it can stand at, in words.</param>
/// <param name="Start">The step it stands at first, from 0.</param>
public sealed record Slider(string Name, IReadOnlyList<string> Steps, int Start)
{
    /// <summary>For each step the ends of the axes, where they move with the slider; null where they stand still.</summary>
    public IReadOnlyList<(double MaxX, double MaxY)>? Ends { get; init; }
}

/// <summary>A mark that is shown while the sliders stand at certain steps.</summary>
/// <param name="Mark">The mark.</param>
/// <param name="At">For each slider the step at which the mark is shown; null where it does not matter.</param>
public sealed record Layer(Mark Mark, params int?[] At);

/// <summary>
/// A figure with up to three sliders that a reader moves, in a notebook or on a page, without a kernel or a server: every step is
/// computed beforehand. Where there is no script it is the figure of its first position, with the numbers below it.
/// </summary>
public sealed record Explorer
{
    /// <summary>The most sliders that one explorer can have.</summary>
    public const int MostSliders = 3;

    /// <summary>An explorer.</summary>
    /// <param name="still">The figure at the first position; its marks are taken from the layers, and what notes read off there its title
    /// says.</param>
    /// <param name="sliders">One to three sliders.</param>
    /// <param name="layers">The marks, from back to front, with the steps at which they are shown.</param>
    /// <exception cref="ArgumentException">There are no sliders or too many, or a layer does not fit them.</exception>
    public Explorer(Figure still, IReadOnlyList<Slider> sliders, IReadOnlyList<Layer> layers)
    {
        ArgumentNullException.ThrowIfNull(still);
        ArgumentNullException.ThrowIfNull(sliders);
        ArgumentNullException.ThrowIfNull(layers);
        if (sliders.Count is 0 or > MostSliders)
            throw new ArgumentException($"An explorer has one to {MostSliders} sliders, and not {sliders.Count}.", nameof(sliders));
        if (sliders.FirstOrDefault(s => s.Start < 0 || s.Start >= s.Steps.Count) is { } astray)
            throw new ArgumentException($"The slider \"{astray.Name}\" has no step {astray.Start}.", nameof(sliders));
        if (layers.Any(layer => layer.At.Length != sliders.Count))
            throw new ArgumentException("Each layer names a step, or null, for each slider.", nameof(layers));
        (Sliders, Layers) = (sliders, layers);
        Still = still with { Marks = [.. At([.. sliders.Select(slider => slider.Start)]).Where(mark => mark is not Note)] };
    }

    /// <summary>The figure at the first position: what is seen without a script, and in print.</summary>
    public Figure Still { get; }

    /// <summary>The sliders.</summary>
    public IReadOnlyList<Slider> Sliders { get; }

    /// <summary>The marks with the steps at which they are shown.</summary>
    public IReadOnlyList<Layer> Layers { get; }

    /// <summary>The heading of the form that moves, which is true at every position.</summary>
    public required string Title { get; init; }

    /// <summary>What is below the heading of the form that moves; likewise true at every position.</summary>
    public string Subtitle { get; init; } = "";

    /// <summary>The text alternative: that of the first position, and what the sliders change.</summary>
    public string AltText =>
        $"{Still.AltText} On a page with scripts, sliders change {Words.Listed([.. Sliders.Select(slider => slider.Name)])}.";

    /// <summary>The marks that are shown while the sliders stand at the given steps.</summary>
    /// <param name="steps">One step for each slider, from 0.</param>
    public IReadOnlyList<Mark> At(params IReadOnlyList<int> steps)
    {
        ArgumentNullException.ThrowIfNull(steps);
        return [.. Layers.Where(layer => layer.At.Zip(steps).All(pair => pair.First is null || pair.First == pair.Second))
            .Select(layer => layer.Mark)];
    }

    /// <summary>The text alternative.</summary>
    public override string ToString() => AltText;
}
