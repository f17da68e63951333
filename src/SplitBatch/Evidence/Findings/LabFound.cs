using SplitBatch.Lab;

namespace SplitBatch.Evidence.Findings;

/// <summary>What the lab measured in either half.</summary>
public sealed record LabMeans : Finding
{
    internal LabMeans(LabComparison comparison)
        : base(Subject.Lab, FindingId.Of("lab", "means")) => Comparison = comparison;

    /// <summary>The comparison of both halves.</summary>
    public LabComparison Comparison { get; }
}

/// <summary>Whether the lab tells the halves apart.</summary>
public sealed record LabDifference : Finding
{
    internal LabDifference(LabComparison comparison)
        : base(Subject.Lab, FindingId.Of("lab", "difference")) => Comparison = comparison;

    /// <summary>The comparison of both halves.</summary>
    public LabComparison Comparison { get; }

    /// <summary>Whether bitterness is the variable itself, or follows from it.</summary>
    public bool IsTheVariable { get; init; }

    /// <summary>What the method's precision makes of the difference.</summary>
    public LabOutcome Outcome => (Comparison.Judgement, Comparison.CriticalDifference) switch
    {
        _ when Comparison.Circumstance == LabCircumstance.OtherMethods => LabOutcome.OtherMethods,
        (Judgement.NotJudged, null) when Comparison.Circumstance == LabCircumstance.SeparateRuns => LabOutcome.RunsUnknown,
        (Judgement.NotJudged, null) when Comparison.Circumstance == LabCircumstance.TwoLaboratories => LabOutcome.LaboratoriesUnknown,
        (Judgement.Exceeds, { }) => LabOutcome.Apart,
        (Judgement.Exceeds, null) => LabOutcome.ApartHoweverRead,
        (Judgement.Within, { }) => LabOutcome.NotToldApart,
        (Judgement.Within, null) => LabOutcome.NotToldApartHoweverRead,
        (Judgement.DependsOnReading, _) => LabOutcome.DependsOnReading,
        (_, { }) => LabOutcome.BelowAnUpperBound,
        _ => LabOutcome.NotJudged,
    };
}

/// <summary>What the method's precision makes of a measured difference.</summary>
public enum LabOutcome
{
    /// <summary>Larger than the critical difference.</summary>
    Apart,

    /// <summary>Larger than the critical difference under every reading of the lab's figure.</summary>
    ApartHoweverRead,

    /// <summary>No larger than the critical difference.</summary>
    NotToldApart,

    /// <summary>No larger than the critical difference under every reading of the lab's figure.</summary>
    NotToldApartHoweverRead,

    /// <summary>It hangs on what the lab's figure means.</summary>
    DependsOnReading,

    /// <summary>No larger than an upper bound of the critical difference, which settles nothing.</summary>
    BelowAnUpperBound,

    /// <summary>The halves were measured by different methods.</summary>
    OtherMethods,

    /// <summary>The halves were measured in separate runs, and how runs differ is not known.</summary>
    RunsUnknown,

    /// <summary>The halves were measured by two laboratories, and how laboratories differ is not known.</summary>
    LaboratoriesUnknown,

    /// <summary>What is known of the precision does not settle it.</summary>
    NotJudged,
}

/// <summary>What the lab found beside what was estimated.</summary>
public sealed record LabAgainstEstimate : Finding
{
    internal LabAgainstEstimate()
        : base(Subject.Lab, FindingId.Of("lab", "estimate"))
    {
    }

    /// <summary>How much more the lab found than estimated in half A, as a share of the estimate; negative for less.</summary>
    public required double OffA { get; init; }

    /// <summary>The same of half B.</summary>
    public required double OffB { get; init; }
}

/// <summary>A replicate, or a spread of replicates, that an outlier test flags.</summary>
public sealed record ReplicateFlagged : Finding
{
    internal ReplicateFlagged(int number, OutlierFinding outlier)
        : base(Subject.Lab, FindingId.Of("lab", "outlier", number.ToString(System.Globalization.CultureInfo.InvariantCulture))) =>
            Outlier = outlier;

    /// <summary>The test.</summary>
    public OutlierFinding Outlier { get; }
}

/// <summary>Replicates that span more than the stated repeatability allows.</summary>
public sealed record ReplicatesTooWide : Finding
{
    internal ReplicatesTooWide(int number, RangeCheck check)
        : base(Subject.Lab, FindingId.Of("lab", "range", number.ToString(System.Globalization.CultureInfo.InvariantCulture))) =>
            Check = check;

    /// <summary>The check.</summary>
    public RangeCheck Check { get; }
}
