using SplitBatch.Lab;
using SplitBatch.Numbers;
using SplitBatch.Series;

namespace SplitBatch.Methods;

/// <summary>Lab values, brews, and equivalence.</summary>
internal static partial class Answers
{
    private static readonly Dictionary<string, Func<CheckValue, object?>> LabQuestions = new()
    {
        ["critical_difference"] = v => v.Flag("separate")
            ? RunDifference.SeparateRuns(v.Number("s_r"), v.Number("s_run"), v.Whole("n1"), v.Whole("n2"))
            : RunDifference.OneRun(v.Number("s_r"), v.Whole("n1"), v.Whole("n2")),
        ["false_difference"] = v => RunDifference.FalseDifference(v.Number("ratio"), v.Whole("n")),
        ["components"] = v => Components(RunComponents.Of(v.NumberLists("runs"))),
        ["run_means_cd"] = v => RunDifference.FromControl(v.Numbers("run_means"), v.Number("level")),
        ["paired_runs"] = v => Paired(PairedRuns.Of(v.Numbers("a"), v.Numbers("b")).Mean),
        ["brew_t"] = v => Brews(BrewMean.Of(v.Numbers("y")).Test),
        ["hartung_knapp"] = v => Effects(RandomEffects.Of(v.Numbers("y"), v.Numbers("v"))),
        ["sign"] = v => BrewSigns.SignPValue(v.Whole("brews"), v.Whole("same")),
        ["sign_flip"] = v => BrewSigns.FlipPValue(v.Numbers("y")),
        ["at_least_u_brews"] = v => BrewCount.PValueOfAtLeast(v.Numbers("p"), v.Whole("u")),
        ["share_of_brews"] = v => Limits(BrewCount.ShareOfBrews(v.Whole("brews"), v.Whole("found"), v.Number("level"))),
        ["equivalence_known"] = v => Known(LabEquivalence.Known(
            v.Number("d"), v.Whole("n1"), v.Whole("n2"), v.Number("s_r"), v.Number("margin"), v.Flag("separate") ? v.Number("s_run") : 0,
            v.Number("alpha"))),
        ["equivalence_estimated"] = v => Estimated(LabEquivalence.Estimated(
            v.Numbers("a"), v.Numbers("b"), v.Number("margin"), v.NumberLists("others"), v.Number("alpha"))),
        ["smallest_margin"] = v => EquivalencePlan.SmallestMargin(
            v.Number("s_r"), v.Whole("n1"), v.Whole("n2"), (int?)v.NumberOrNone("df"), v.Number("alpha")),
        ["equivalence_power"] = v => EquivalencePlan.Power(
            v.Number("s_r"), v.Whole("n1"), v.Whole("n2"), v.Number("margin"), v.Number("d"), alpha: v.Number("alpha")),
    };

    private static object Components(RunComponents found) => new
    {
        s_r = found.Repeatability,
        s_run = found.BetweenRuns,
        s_between = found.Intermediate,
        df_r = found.FreedomWithin,
        df_run = found.FreedomBetween,
    };

    private static object Paired(MeanTest test) =>
        new { mean = test.Mean, se = test.StandardError, low = test.Interval.Low, high = test.Interval.High, p = test.PValue };

    private static object Brews(MeanTest test) => new
    {
        mean = test.Mean,
        sd = test.Deviation,
        low = test.Interval.Low,
        high = test.Interval.High,
        next_low = test.Next.Low,
        next_high = test.Next.High,
        p = test.PValue,
    };

    private static object Effects(RandomEffects found) => new
    {
        tau2 = found.BetweenBrews,
        mean = found.Mean,
        se = found.StandardError,
        low = found.Interval.Low,
        high = found.Interval.High,
        p = found.PValue,
        next_low = found.Next.Low,
        next_high = found.Next.High,
    };

    private static object Limits(Interval limits) => new { low = limits.Low, high = limits.High };

    private static object Known(LabEquivalence test) => new
    {
        se = test.StandardError,
        low = test.Interval.Low,
        high = test.Interval.High,
        p = test.PValue,
        equivalent = test.IsEquivalent,
    };

    private static object Estimated(LabEquivalence test) => new
    {
        d = test.Difference,
        s_r = test.Repeatability,
        df = (int)test.Freedom,
        low = test.Interval.Low,
        high = test.Interval.High,
        p = test.PValue,
        equivalent = test.IsEquivalent,
    };
}
