using System.Globalization;

namespace SplitBatch.Brewing;

/// <summary>How sure an alpha acid figure is. Built by name, because "± 0.3" means nothing until its basis is known.</summary>
public readonly record struct AssayUncertainty
{
    private AssayUncertainty(double points, double share, string basis)
    {
        Points = points;
        RelativeShare = share;
        Basis = basis;
    }

    private double Points { get; }

    private double RelativeShare { get; }

    /// <summary>Where the figure came from, in words.</summary>
    public string Basis { get => field ?? "none stated"; }

    /// <summary>
    /// What is assumed when a packet says nothing: ± 10 % of the value, all values in it alike, so a standard uncertainty of 5.8 % of
    /// the value. A judgement. Sales contracts for whole lots commonly allow ± 5 %, about what two laboratories differ by (Hopsteiner,
    /// "Interpretation of Hop Analysis Results", Brauwelt; 0.57 points at 10 % by EBC 7.7); a bag filled from an opened lot adds how the
    /// lot was sampled and what it lost since, for which no published figure was found.
    /// </summary>
    public static AssayUncertainty Packet { get; } =
        new(0, 0.10 / Math.Sqrt(3), "packet, assumed ± 10 % of the value: a judgement, twice what contracts for whole lots allow");

    /// <summary>A standard uncertainty (one standard deviation) in percentage points: 0.2 for 5.6 ± 0.2 %.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside [0, 10].</exception>
    public static AssayUncertainty Standard(double points) => new(Guard.InRange(points, 0.0, 10.0), 0, "standard uncertainty as given");

    /// <summary>Half of a 95 % range, in percentage points: standard uncertainty is the value divided by 1.96.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside [0, 10].</exception>
    public static AssayUncertainty Limit95(double points) => new(Guard.InRange(points, 0.0, 10.0) / 1.96, 0, "95 % range as given");

    /// <summary>
    /// A reproducibility critical difference between two laboratories (95 %), in percentage points: standard uncertainty is the value
    /// divided by 2.8 (ISO 5725-6).
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside [0, 10].</exception>
    public static AssayUncertainty CriticalDifference(double points) =>
        new(Guard.InRange(points, 0.0, 10.0) / 2.8, 0, "critical difference between laboratories as given");

    /// <summary>A tolerance as a share of the value, all values in it alike: 0.05 for ± 5 %.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside [0, 0.5].</exception>
    public static AssayUncertainty Tolerance(double share) => new(0, Guard.InRange(share, 0.0, 0.5) / Math.Sqrt(3), "tolerance as given");

    /// <summary>A standard uncertainty as a share of the value: 0.03 for 3 % of it.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside [0, 0.5].</exception>
    public static AssayUncertainty Relative(double share) =>
        new(0, Guard.InRange(share, 0.0, 0.5), "relative standard uncertainty as given");

    /// <summary>The standard uncertainty of <paramref name="alpha"/>, as a share of its value; zero for no alpha acid.</summary>
    public double RelativeTo(AlphaAcid alpha) => RelativeTo(alpha.Percent);

    /// <summary>
    /// The standard uncertainty of a figure in percent by weight, such as beta acids, as a share of its value; zero for nothing.
    /// </summary>
    public double RelativeTo(double percent) =>
        percent == 0 ? 0 : Math.Sqrt(Math.Pow(Points / percent, 2) + RelativeShare * RelativeShare);

    /// <summary>Half of the 95 % range of a figure in percent by weight, in percentage points.</summary>
    public double HalfWidth95(double percent) => 1.96 * percent * RelativeTo(percent);

    /// <summary>The uncertainty of a figure of which only a share is left: points shrink with it, a share of the value stays.</summary>
    internal AssayUncertainty Of(double left) => new(Points * left, RelativeShare, Basis);

    /// <summary>For example <c>standard uncertainty 0.20 percentage points</c>.</summary>
    public override string ToString() => Points > 0
        ? string.Create(CultureInfo.InvariantCulture, $"standard uncertainty {Printed.Fixed(Points, 2)} percentage points ({Basis})")
        : string.Create(CultureInfo.InvariantCulture, $"standard uncertainty {Printed.Percent(RelativeShare)} of the value ({Basis})");
}
