using SplitBatch.Bitterness;
using SplitBatch.BrewDay;
using SplitBatch.Brewing;
using SplitBatch.Lab;

namespace SplitBatch.Evidence;

/// <summary>
/// Whole lab returns: replicates that stray, several laboratories, own readings, other analytes, samples that may be swapped.
/// </summary>
internal static class ReturnCases
{
    private static readonly Dictionary<string, Side> Key = new() { ["S1"] = Side.A, ["S2"] = Side.B };
    private static readonly Dictionary<Analyte, MethodPrecision> Stated = new()
    {
        [Analyte.Bitterness] = MethodPrecision.Of(Precision.StandardDeviation(0.6, PrecisionCondition.Repeatability)),
        [Analyte.Alcohol] = MethodPrecision.Of(Precision.StandardDeviation(0.03, PrecisionCondition.Repeatability)),
        [Analyte.Colour] = MethodPrecision.Of(Precision.StandardDeviation(0.3, PrecisionCondition.Repeatability)),
    };

    public static IEnumerable<(string Name, TrialEvidence Evidence)> All()
    {
        yield return ("two readings of each", Of(Rows("S1", Analyte.Bitterness, 26.1, 26.5), Rows("S2", Analyte.Bitterness, 26.4, 26.0)));
        yield return ("an outlier and a straggler",
            Of(Rows("S1", Analyte.Bitterness, 26.1, 26.2, 26.3, 26.2, 26.1, 31),
                Rows("S2", Analyte.Bitterness, 26.4, 26.5, 26.4, 26.6, 27.5)));
        yield return ("two values that stray",
            Of(Rows("S1", Analyte.Bitterness, 26.1, 26.2, 26.3, 26.2, 29.9, 30), Rows("S2", Analyte.Bitterness, 26.4, 26.0)));
        yield return ("one spread wider than the other",
            Of(Rows("S1", Analyte.Bitterness, 26.1, 26.15), Rows("S2", Analyte.Bitterness, 24, 28)));
        yield return ("replicates of several runs",
            Of(Rows("S1", Analyte.Bitterness, 22, 26).Select(one => one with { Run = one.Replicate == 1 ? "R1" : "R2" }),
                Rows("S2", Analyte.Bitterness, 26.4, 26.0)));
        yield return ("alcohol apart, bitterness not measured",
            Of(Rows("S1", Analyte.Alcohol, 5.10, 5.12), Rows("S2", Analyte.Alcohol, 5.40, 5.42)));
        yield return ("alcohol and colour apart",
            Of(Rows("S1", Analyte.Bitterness, 26.1, 26.5), Rows("S2", Analyte.Bitterness, 26.4, 26.0),
                Rows("S1", Analyte.Alcohol, 5.10, 5.12), Rows("S2", Analyte.Alcohol, 5.40, 5.42), Rows("S1", Analyte.Colour, 20),
                Rows("S2", Analyte.Colour, 14)));
        yield return ("alcohol apart, which follows from the variable",
            Of(Rows("S1", Analyte.Alcohol, 5.10, 5.12), Rows("S2", Analyte.Alcohol, 5.40, 5.42)) with
            {
                FollowsFromVariable = ["final gravity"],
            });
        yield return ("pH apart, without a precision", Of(Rows("S1", Analyte.Ph, 4.10), Rows("S2", Analyte.Ph, 4.50)));
        yield return ("two laboratories, one measured both",
            Of(By("Valley", "S1", 26, 26.2), By("Valley", "S2", 26.1, 26.4), By("Hill", "S2", 29)));
        yield return ("two laboratories, each one half", Of(By("Valley", "S1", 26, 26.2), By("Hill", "S2", 29, 29.1)));
        yield return ("own readings", Of(Own("S1", 0.500, 0.004), Own("S2", 0.560, 0.004)));
        yield return ("own readings, doubtful", Of(Own("S1", 0.850, 0.020), Own("S2", 0.860, 0.020)));
        yield return ("one half measured", Of(Rows("S1", Analyte.Bitterness, 26.1, 26.5)));
        BatchEntry[] fermented =
        [
            BatchEntry.Measured("1", null, BatchLog.OriginalGravity, 1.050, "SG", 0.0005),
            BatchEntry.Measured("2", Side.A, BatchLog.FinalGravity, 1.010, "SG", 0.0005),
            BatchEntry.Measured("3", Side.B, BatchLog.FinalGravity, 1.016, "SG", 0.0005),
        ];
        yield return ("samples swapped",
            Beside(fermented, Of(Rows("S1", Analyte.Alcohol, 4.45, 4.47), Rows("S2", Analyte.Alcohol, 5.24, 5.26))));
        yield return ("samples as labelled",
            Beside(fermented, Of(Rows("S1", Analyte.Alcohol, 5.24, 5.26), Rows("S2", Analyte.Alcohol, 4.45, 4.47))));
        foreach (var (name, target) in new[] { ("alike", 1.0), ("a tenth apart", 1.1), ("a little apart", 1.04) })
        {
            var doses = ChargeMatch.AsGiven(Kettle.Metric(20, 1.050), [Charge(HopLot.Cones("cones", 5), 50)],
                [Charge(HopLot.Cones("cones", 5), 50 * target)]);
            foreach (var (more, b) in new[] { ("less in B", 22.0), ("more in both", 36), ("about as estimated", 28.2) })
            {
                yield return ($"dosed {name}, found {more}",
                    Of(Rows("S1", Analyte.Bitterness, 29.0, 29.1), Rows("S2", Analyte.Bitterness, b, b + 0.1)) with { Doses = doses });
            }
        }
    }

    private static HopCharge Charge(HopLot lot, double grams) =>
        new(lot, UnitsNet.Mass.FromGrams(grams), AdditionStage.Boil, UnitsNet.Duration.FromMinutes(60));

    private static IEnumerable<LabResult> Rows(string sample, Analyte analyte, params double[] values) =>
        values.Select((value, i) => new LabResult($"{sample}/{analyte.Name}/{i + 1}", sample, analyte, value, replicate: i + 1));

    private static IEnumerable<LabResult> By(string lab, string sample, params double[] values) =>
        Rows(sample, Analyte.Bitterness, values)
            .Select(one => new LabResult($"{lab}/{one.Id}", sample, one.Analyte, one.Value, replicate: one.Replicate)
            {
                Laboratory = lab,
            });

    private static IEnumerable<LabResult> Own(string sample, double absorbance, double blank) =>
        [new AbsorbanceReading(absorbance, blank).AsResult($"own/{sample}", sample)];

    private static TrialEvidence Of(params IEnumerable<LabResult>[] rows)
    {
        var lab = new LabReturn(rows.SelectMany(some => some), Key, Stated);
        return SamplePanel.Trial(SamplePanel.Single(Panel.Protocols.Protocol.Triangle, 24, 11)) with
        {
            Lab = lab,
            Bitterness = lab.Compare(Analyte.Bitterness),
            Samples = SwapCheck.Of(lab, null),
        };
    }

    /// <summary>The return beside a batch log that foretells the halves' alcohol.</summary>
    private static TrialEvidence Beside(BatchEntry[] entries, TrialEvidence trial)
    {
        var parity = new BatchLog(entries).Parity();
        return trial with { Parity = parity, Samples = SwapCheck.Of(trial.Lab!, parity) };
    }
}
