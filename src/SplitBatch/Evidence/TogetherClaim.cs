using SplitBatch.Panel.Counting;

namespace SplitBatch.Evidence;

/// <summary>What may be said of several panels combined by the stated method.</summary>
internal static class TogetherClaim
{
    public static Claim Of(StratifiedCombination together)
    {
        var right = together.Panels.Sum(panel => panel.Correct);
        var sets = together.Panels.Sum(panel => panel.Tasters);
        var chance = 100 * together.PValue;
        var agree = together.HeterogeneityPValue < 0.05
            ? "the panels disagree, so that one number hides something"
            : "there is no sign that the panels disagree";
        var level = 100 * together.Interval.Level;
        string[] sources = [.. together.Panels.SelectMany(panel => new[] { $"ballots-{panel.Name}.csv", $"serving-{panel.Name}.csv" }), "trial.json"];
        return double.IsFinite(together.Interval.High)
            ? new Claim("panels.together", $"The {together.Panels.Count} panels together, each by its own guessing chance: {right} right of {sets}, which guessing alone would reach in {chance:0.0##} % of cases; the distance between the beers is put at a d-prime of {together.DPrime:0.00} (between {together.Interval.Low:0.00} and {together.Interval.High:0.00} with {level:0} % confidence), and {agree}. The verdict rests on the main panel, as declared.", StratifiedCombination.Method, sources)
            : new Claim("panels.together", $"The {together.Panels.Count} panels together, each by its own guessing chance: {right} right of {sets}, which guessing alone would reach in {chance:0.0##} % of cases; the distance between the beers is put at a d-prime of {together.Interval.Low:0.00} or more (with {level:0} % confidence), and {agree}. The verdict rests on the main panel, as declared.", StratifiedCombination.Method, sources);
    }
}
