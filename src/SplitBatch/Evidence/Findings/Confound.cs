namespace SplitBatch.Evidence.Findings;

/// <summary>Something besides the variable that could explain what the panel found, and how much it weighs.</summary>
/// <param name="Kind">What kind; an earlier kind weighs more.</param>
/// <param name="Size">Among gaps, the gap divided by what the method tells apart; else 0.</param>
/// <param name="Finding">The finding that it is.</param>
public sealed record Confound(ConfoundKind Kind, double Size, Finding Finding);

/// <summary>Kinds of confound, the heaviest first.</summary>
public enum ConfoundKind
{
    /// <summary>The lab measured a gap in what is tasted, larger than its method's scatter.</summary>
    MeasuredGap,

    /// <summary>The batch log shows that the halves differ.</summary>
    LoggedInequality,

    /// <summary>Practice departed seriously from the plan.</summary>
    SeriousDeparture,

    /// <summary>A bias drove the answers.</summary>
    Bias,

    /// <summary>The hop lots differ in more than the variable.</summary>
    HopLots,

    /// <summary>Nobody measured a quantity on both halves.</summary>
    NotMeasured,
}
