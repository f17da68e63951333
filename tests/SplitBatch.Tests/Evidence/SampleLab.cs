using SplitBatch.Lab;

namespace SplitBatch.Evidence;

/// <summary>Lab comparisons in every state that a return can be in.</summary>
internal static class SampleLab
{
    private static readonly double[] A = [22.6, 23.2], NearA = [23.1, 23.5], Far = [24.9, 25.5];
    private static readonly LabPrecision Known = new(Repeats(0.6));

    private static Precision Repeats(double deviation) => Precision.StandardDeviation(deviation, PrecisionCondition.Repeatability);

    /// <summary>Each state by name; null stands for no return.</summary>
    public static IReadOnlyList<(string State, LabComparison? Lab)> States { get; } =
    [
        ("no return", null),
        ("one run, apart", Compare(Known, Run("R1", A), Run("R1", Far))),
        ("one run, not told apart", Compare(Known, Run("R1", A), Run("R1", NearA))),
        ("run not told, apart", LabComparison.Compare(Repeats(0.6), A, Far)),
        ("run not told, single readings, not told apart", LabComparison.Compare(Repeats(0.6), [22.6], [23.2])),
        ("run not told, unlike numbers of readings, not told apart", LabComparison.Compare(Repeats(0.6), [22.6], NearA)),
        ("meaning of the figure open, depends on it", LabComparison.Compare(StatedPrecision.Absolute(1.0), A, Far)),
        ("meaning of the figure open, apart however read", LabComparison.Compare(StatedPrecision.Absolute(0.2), A, Far)),
        ("meaning of the figure open, not told apart however read",
            LabComparison.Compare(StatedPrecision.Absolute(3.0) with { Condition = PrecisionCondition.Repeatability }, A, NearA)),
        ("no precision", LabComparison.Compare(new LabPrecision(null), new("A", A), new("B", Far))),
        ("reproducibility only, below it",
            LabComparison.Compare(new LabPrecision(null, Precision.StandardDeviation(1.5, PrecisionCondition.Reproducibility)),
                new("A", A), new("B", Far))),
        ("two laboratories, spread unknown", Compare(Known, new("A", A, lab: "Valley"), new("B", Far, lab: "Hill"))),
        ("two laboratories, spread known, not told apart",
            Compare(new(Repeats(0.6), Precision.StandardDeviation(1.5, PrecisionCondition.Reproducibility)), new("A", A, lab: "Valley"),
                new("B", Far, lab: "Hill"))),
        ("separate runs, spread unknown", Compare(Known, Run("R1", A), Run("R2", Far))),
        ("separate runs by day, spread unknown", Compare(Known, Day(2, A), Day(5, Far))),
        ("separate runs, spread known, apart",
            Compare(Known with { Intermediate = Precision.StandardDeviation(0.7, PrecisionCondition.Intermediate) }, Run("R1", A),
                Run("R2", Far))),
        ("separate runs, spread known, not told apart",
            Compare(Known with { Intermediate = Precision.StandardDeviation(1.2, PrecisionCondition.Intermediate) }, Run("R1", A),
                Run("R2", Far))),
        ("separate runs, intermediate precision alone, below it",
            Compare(new(null) { Intermediate = Precision.StandardDeviation(1.2, PrecisionCondition.Intermediate) }, Run("R1", A),
                Run("R2", Far))),
        ("separate runs, reproducibility stands in, below it",
            Compare(Known with { Reproducibility = Precision.StandardDeviation(1.5, PrecisionCondition.Reproducibility) }, Run("R1", A),
                Run("R2", Far))),
        ("each of three runs holds both, apart", Compare(Known, Runs(30.3, 31.4, 29.9), Runs(32.1, 33.0, 31.9))),
        ("each of four runs holds both, not told apart", Compare(Known, Runs(25.0, 25.6, 24.7, 25.2), Runs(25.4, 25.5, 25.2, 25.9))),
        ("other methods", Compare(Known, new("A", A) { Methods = ["EBC 9.8"] }, new("B", Far) { Methods = ["HPLC"] })),
    ];

    public static LabComparison Apart { get; } = States[1].Lab!;

    private static LabComparison Compare(LabPrecision precision, Replicates a, Replicates b) => LabComparison.Compare(precision, a, b);

    private static Replicates Run(string run, double[] values) =>
        new(values == A ? "A" : "B", values) { Runs = new Dictionary<string, double> { [run] = values.Average() } };

    private static Replicates Day(int day, double[] values) =>
        new(values == A ? "A" : "B", values) { Received = [new DateOnly(2026, 5, day)] };

    private static Replicates Runs(params double[] values) =>
        new("half", values) { Runs = values.Index().ToDictionary(run => $"R{run.Index}", run => run.Item) };
}
