namespace SplitBatch.Evidence.Findings;

/// <summary>Panels stand side by side, and the verdict rests on one of them.</summary>
public sealed record RestsOnOnePanel : Limit
{
    internal RestsOnOnePanel(string panel, IReadOnlyList<string> passedOver)
        : base(Subject.Panels, "panels") => (Panel, PassedOver) = (panel, passedOver);

    /// <summary>Whether the seal names it; else it is the first of trial.json.</summary>
    public bool BySeal { get; init; }

    /// <summary>The panel that the verdict rests on.</summary>
    public string Panel { get; }

    /// <summary>Panels that trial.json names before it and that are not counted.</summary>
    public IReadOnlyList<string> PassedOver { get; }

    /// <summary>How many panels are counted.</summary>
    public required int Counted { get; init; }

    /// <summary>Which of them are read together as well.</summary>
    public required ReadTogether Together { get; init; }

    /// <summary>
    /// At most so often at least one of so many panels shows a difference that is not there: the sum of their alphas, or of the true
    /// rates of sequential ones.
    /// </summary>
    public required double OneFalseAtLeast { get; init; }
}

/// <summary>Which of several counted panels are read together.</summary>
public enum ReadTogether
{
    /// <summary>None: they stand side by side.</summary>
    None,

    /// <summary>All of them.</summary>
    All,

    /// <summary>The one that the verdict rests on, and some others.</summary>
    SomeWithMain,

    /// <summary>Some others, and not the one that the verdict rests on.</summary>
    SomeWithoutMain,
}
