using SplitBatch.BrewDay;
using SplitBatch.Brewing;
using SplitBatch.Lab;
using SplitBatch.Panel;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;
using SplitBatch.Panel.Planning;

namespace SplitBatch.Evidence.Findings;

/// <summary>Something that limits what the results mean.</summary>
public abstract record Limit : Finding
{
    private protected Limit(Subject about, params IEnumerable<string> words)
        : base(about, FindingId.Of("limit").Then(words))
    {
    }

    /// <inheritdoc/>
    public override FindingRole Role => FindingRole.Limit;
}

/// <summary>A limit that holds by the trial's design or by what is missing from its folder.</summary>
public sealed record StandingLimit : Limit
{
    internal StandingLimit(Subject about, StandingLimitKind kind, string word)
        : base(about, word) => Kind = kind;

    /// <summary>Which one.</summary>
    public StandingLimitKind Kind { get; }
}

/// <summary>Limits that need no number.</summary>
public enum StandingLimitKind
{
    /// <summary>The data are invented.</summary>
    Invented,

    /// <summary>One batch of each half was brewed.</summary>
    OneBatchOfEach,

    /// <summary>No lab return is logged.</summary>
    NoLabReturn,

    /// <summary>A return is logged, and holds no bitterness of both halves.</summary>
    NoBitterness,

    /// <summary>The lab's precision is not known well enough.</summary>
    PrecisionUnclear,

    /// <summary>Nobody said whether both halves were measured in one run.</summary>
    RunNotTold,

    /// <summary>
    /// The halves were measured in circumstances that allow no comparison: other methods, or separate runs or laboratories of unknown
    /// spread.
    /// </summary>
    NotComparable,

    /// <summary>Dosed alike by estimate, found unlike by the lab.</summary>
    DosedAlikeMeasuredApart,

    /// <summary>Bitterness was read on an instrument of one's own.</summary>
    OwnReading,

    /// <summary>No batch log is kept.</summary>
    NoBatchLog,

    /// <summary>No panel has been counted.</summary>
    NoPanel,

    /// <summary>Panels speak for people like their tasters.</summary>
    PeopleLikeThese,
}

/// <summary>The hop lots differ in more than the variable.</summary>
public sealed record HopLotsDiffer : Limit
{
    internal HopLotsDiffer(HopConfound confound)
        : base(Subject.Batches, "hops", confound.Difference.ToString()) => Confound = confound;

    /// <summary>In what.</summary>
    public HopConfound Confound { get; }
}

/// <summary>The batch log shows that the halves differ in something besides the variable.</summary>
public sealed record HalvesDiffer : Limit
{
    internal HalvesDiffer(ParityLine line)
        : base(Subject.Batches, "confound", line.Quantity) => Line = line;

    /// <summary>The line of the parity check.</summary>
    public ParityLine Line { get; }
}

/// <summary>Quantities that nobody measured on both halves.</summary>
public sealed record NotMeasured : Limit
{
    internal NotMeasured(IReadOnlyList<string> quantities)
        : base(Subject.Batches, "unmeasured") => Quantities = quantities;

    /// <summary>Their names.</summary>
    public IReadOnlyList<string> Quantities { get; }
}

/// <summary>The samples sent to the lab may have been swapped.</summary>
public sealed record SamplesSuspicious : Limit
{
    internal SamplesSuspicious(SwapCheck check)
        : base(Subject.Lab, "samples") => Check = check;

    /// <summary>The check.</summary>
    public SwapCheck Check { get; }
}

/// <summary>More than one laboratory or instrument measured an analyte.</summary>
public sealed record SeveralMeasured : Limit
{
    internal SeveralMeasured(Analyte analyte, IReadOnlyList<string> names, string? used)
        : base(Subject.Lab, "labs", analyte.Name) => (Analyte, Names, Used) = (analyte, names, used);

    /// <summary>What was measured.</summary>
    public Analyte Analyte { get; }

    /// <summary>Who measured it.</summary>
    public IReadOnlyList<string> Names { get; }

    /// <summary>Whose results the halves are compared by; null where none measured both.</summary>
    public string? Used { get; }
}

/// <summary>The lab tells the halves apart in something other than bitterness, which may be what people taste.</summary>
public sealed record AnalyteApart : Limit
{
    internal AnalyteApart(LabComparison comparison)
        : base(Subject.Lab, "analyte", comparison.Analyte.Name) => Comparison = comparison;

    /// <summary>The comparison.</summary>
    public LabComparison Comparison { get; }
}

/// <summary>A warning about a reading with one's own instrument.</summary>
public sealed record ReadingDoubtful : Limit
{
    internal ReadingDoubtful(int number, string warning)
        : base(Subject.Lab, "own-reading", number.ToString(System.Globalization.CultureInfo.InvariantCulture)) => Warning = warning;

    /// <summary>The warning, as the reading gives it.</summary>
    public string Warning { get; }
}

/// <summary>A limit of one panel.</summary>
public abstract record PanelLimit : Limit
{
    private protected PanelLimit(CountedPlan plan, params IEnumerable<string> words)
        : base(Subject.Panel(plan.Panel), ["panel", plan.Panel, .. words]) => Plan = plan;

    /// <summary>What was planned.</summary>
    public CountedPlan Plan { get; }
}

/// <summary>Practice departed from the plan.</summary>
public sealed record DepartedFromPlan : PanelLimit
{
    internal DepartedFromPlan(CountedPlan plan, int number, Departure departure)
        : base(plan, "departure", number.ToString(System.Globalization.CultureInfo.InvariantCulture)) => Departure = departure;

    /// <summary>The departure.</summary>
    public Departure Departure { get; }
}

/// <summary>Nobody sealed the plan before the first ballot.</summary>
public sealed record PlanUnsealed : PanelLimit
{
    internal PlanUnsealed(CountedPlan plan)
        : base(plan, "unsealed")
    {
    }
}

/// <summary>Something besides the beers drove the answers.</summary>
public sealed record BiasShown : PanelLimit
{
    internal BiasShown(CountedPlan plan, int number, BiasCheck check)
        : base(plan, "bias", number.ToString(System.Globalization.CultureInfo.InvariantCulture)) => Check = check;

    /// <summary>The check that shows it.</summary>
    public BiasCheck Check { get; }
}

/// <summary>A remark on how the count was made.</summary>
public sealed record CountRemarked : PanelLimit
{
    internal CountRemarked(CountedPlan plan, int number, string remark)
        : base(plan, "remark", number.ToString(System.Globalization.CultureInfo.InvariantCulture)) => Remark = remark;

    /// <summary>The remark, as the count gives it.</summary>
    public string Remark { get; }
}

/// <summary>What nobody wrote down of a panel, and what it could mean.</summary>
public sealed record NotRecorded : PanelLimit
{
    internal NotRecorded(CountedPlan plan, NotRecordedKind kind, string word)
        : base(plan, word) => Kind = kind;

    /// <summary>What was not written down.</summary>
    public NotRecordedKind Kind { get; }

    /// <summary>
    /// Looks at the count before its end that would have been possible, one after each ballot; 0 where it does not matter.
    /// </summary>
    public int PossibleLooks { get; init; }

    /// <summary>How often looking after each ballot and stopping at the first difference finds a false one.</summary>
    public double FalselyShownByLooking { get; init; }
}

/// <summary>What nobody wrote down of a panel.</summary>
public enum NotRecordedKind
{
    /// <summary>Whether this panel could have told a known difference: no control was served.</summary>
    Control,

    /// <summary>Whether somebody looked at the count before its end.</summary>
    Looks,
}
