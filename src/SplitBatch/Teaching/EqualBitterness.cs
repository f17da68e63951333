using SplitBatch.Bitterness;
using SplitBatch.Brewing;
using UnitsNet;

namespace SplitBatch.Teaching;

/// <summary>
/// The exercises of the workshop's fourth notebook: one lot of hops, added early or late, for one bitterness. The lot is invented.
/// </summary>
public static class EqualBitterness
{
    /// <summary>What both halves aim at, in IBU.</summary>
    public const double Target = 30;

    private const double GramsPerOunce = 28.349523125;

    /// <summary>The kettle of one half.</summary>
    public static Kettle Kettle { get; } = Kettle.Metric(liters: 20, gravity: 1.050, boilMinutes: 60, evaporationLitersPerHour: 3);

    /// <summary>The lot of both halves (invented).</summary>
    public static HopLot Hops { get; } = HopLot.Pellets("pellets", alphaPercent: 7.4);

    /// <summary>How long half A's hops boil.</summary>
    public const double EarlyMinutes = 60;

    /// <summary>How long half B's hops boil.</summary>
    public const double LateMinutes = 20;

    /// <summary>Grams for the target, boiled for an hour.</summary>
    public static NumberExercise GramsEarly { get; } = new NumberExercise(
        "How many grams of the pellets, boiled for an hour, give 30 IBU by Tinseth's formula?", () => Grams(EarlyMinutes), tolerance: 1.5)
    {
        Start = "One IBU is a milligram in a litre. How many milligrams do twenty litres need? How much alpha acid is that, if only the "
            + "share shown above is used? And how many grams of pellets hold that much?",
        Because = "Milligrams wanted, divided by the share used, divided by the share of alpha acid. That is all there is to the "
            + "formula's last step.",
        Otherwise = ("So little leaves the beer below 30 IBU. Check each of the three steps.",
            "So much makes more than 30 IBU. Check each of the three steps."),
    }
        .When(Slip.OuncesForGrams, () => Grams(EarlyMinutes) / GramsPerOunce,
            "The size is right for ounces. The answer should be in grams.")
        .When(Slip.NoUtilisation, () => Grams(EarlyMinutes) * Used(EarlyMinutes),
            "That would do if all the alpha acid ended up in the beer. Most of it does not: divide by the share that is used.")
        .When(Slip.PowerOfTen, () => Grams(EarlyMinutes) * 10, "That is ten times too much. As a share, 7 % is 0.07.")
        .When(Slip.PowerOfTen, () => Grams(EarlyMinutes) / 10, "That is ten times too little. As a share, 7 % is 0.07.")
        .When(Slip.PowerOfTen, () => Grams(EarlyMinutes) * 1000, "Those are milligrams. The answer should be in grams.")
        .When(Slip.OneForBoth, () => Grams(LateMinutes), "That uses the share for the late addition. Half A's hops boil for an hour.");

    /// <summary>Grams for the same bitterness, boiled for twenty minutes.</summary>
    public static NumberExercise GramsLate { get; } = new NumberExercise(
        "How many grams give the same bitterness if they boil for only twenty minutes?", () => Grams(LateMinutes), tolerance: 2)
    {
        Start = "The same three steps with the other share: the one for twenty minutes.",
        Because = "Two thirds more hops, and not three times as many: much of the bitterness comes in the first twenty minutes. So half B "
            + "also gets more leaf and more hop oil. Those are confounds to name.",
        Otherwise = ("So little leaves half B less bitter than half A.", "So much makes half B more bitter than half A."),
    }
        .When(Slip.UpsideDown, () => Grams(EarlyMinutes) * Used(LateMinutes) / Used(EarlyMinutes),
            "Less time draws less bitterness from each gram, so it takes more grams, not fewer: turn the ratio round.")
        .When(Slip.SameUtilisation, () => Grams(EarlyMinutes),
            "That would do if twenty minutes drew out as much as an hour. Compare the two shares.")
        .When(Slip.Proportional, () => Grams(EarlyMinutes) * EarlyMinutes / LateMinutes,
            "That takes bitterness to grow in step with the minutes. Most of it comes early: compare the two shares.")
        .When(Slip.OuncesForGrams, () => Grams(LateMinutes) / GramsPerOunce,
            "The size is right for ounces. The answer should be in grams.");

    /// <summary>Why the difference is surer than either beer.</summary>
    public static ChoiceExercise WhySurer { get; } =
        new ChoiceExercise("The difference between the beers is surer than the bitterness of either. Why?")
        {
            Start = "Which errors push both halves in the same direction? Answer with a letter in quotation marks.",
        }
            .Option("The formula is more exact for differences.", right: false,
                "The formula is no better; it is the same one twice. What happens to its error when one beer is subtracted from "
                    + "the other?")
            .Option("Much of the error is shared by both halves, and what is shared cancels in the difference.", right: true,
                "The assay, the volume and most of the formula are off for both halves alike. What remains comes from what the halves do "
                    + "not share: the time in the boil and each fermentation.")
            .Option("The scale is exact.", right: false, "The scale is the smallest of the doubts. Look at the longest bars of the chart.")
            .Option("Two errors of the same size always halve.", right: false,
                "Errors that the halves do not share would add up, and the difference would be less sure than either beer. So much of the "
                    + "error must be shared.");

    /// <summary>What a match of estimates allows one to say.</summary>
    public static ChoiceExercise WhatAMatchSays { get; } =
        new ChoiceExercise("The estimates for the two halves agree to within one IBU. What may the write-up say?")
        {
            Start = "What has been measured so far, and what was only estimated? Answer with a letter in quotation marks.",
        }
            .Option("The beers are equally bitter.", right: false,
                "Nobody has measured them. The estimates agree because you made them agree.")
            .Option("The difference in bitterness is less than one IBU.", right: false,
                "The difference between the estimates is. The interval for the true difference is several IBU wide: read it off "
                    + "the chart.")
            .Option("The beers were dosed to the same estimated bitterness; the lab will say how bitter they are.", right: true,
                "That is what was done. When the lab's return comes, the sentence can be made stronger, or has to be taken back.");

    private static double Grams(double minutes) => 100 * Target / Of(minutes).Value.Value;

    private static double Used(double minutes) => Of(minutes).Charges[0].Utilisation;

    private static BitternessEstimate Of(double minutes) =>
        BitternessEstimate.Of(Kettle, [HopCharge.Boil(Hops, Mass.FromGrams(100), minutes)]);
}
