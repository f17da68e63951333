using SplitBatch.Bitterness;
using SplitBatch.Brewing;
using UnitsNet;

namespace SplitBatch.Teaching;

/// <summary>The exercises of the workshop's fourth notebook: two charges for one bitterness. The lots are invented.</summary>
public static class EqualBitterness
{
    /// <summary>What both halves aim at, in IBU.</summary>
    public const double Target = 30;

    private const double GramsPerOunce = 28.349523125;

    /// <summary>The kettle of one half.</summary>
    public static Kettle Kettle { get; } = Kettle.Metric(liters: 20, gravity: 1.050, boilMinutes: 60, evaporationLitersPerHour: 3);

    /// <summary>The lot of half A (invented).</summary>
    public static HopLot Cones { get; } = HopLot.Cones("cones", alphaPercent: 5.0);

    /// <summary>The lot of half B (invented).</summary>
    public static HopLot Pellets { get; } = HopLot.Pellets("pellets", alphaPercent: 8.0);

    /// <summary>Grams of cones for the target.</summary>
    public static NumberExercise GramsOfCones { get; } = new NumberExercise(
        "How many grams of cones, boiled for an hour, give 30 IBU by Tinseth's formula?", () => Grams(Cones), tolerance: 1.5)
    {
        Start = "One IBU is a milligram in a litre. How many milligrams do twenty litres need? How much alpha acid is that, if only the printed share of it is used? And how many grams of cones hold that much?",
        Because = "Milligrams wanted, divided by the share used, divided by the share of alpha acid. That is all that the formula's last step is.",
        Otherwise = ("So little leaves the beer below 30 IBU. Check each of the three steps.", "So much makes more than 30 IBU. Check each of the three steps."),
    }
        .When(Slip.OuncesForGrams, () => Grams(Cones) / GramsPerOunce, "The size is right for ounces. Asked are grams.")
        .When(Slip.NoUtilisation, () => Grams(Cones) * Used(Cones), "That would do if all alpha acid ended up in the beer. Most of it does not: divide by the share that is used.")
        .When(Slip.PowerOfTen, () => Grams(Cones) * 10, "There is a factor of ten too many. 5 % is 0.05.")
        .When(Slip.PowerOfTen, () => Grams(Cones) / 10, "There is a factor of ten missing. 5 % is 0.05.")
        .When(Slip.PowerOfTen, () => Grams(Cones) * 1000, "Those are milligrams. Asked are grams.")
        .When(Slip.UpsideDown, () => Grams(Cones) * Cones.Alpha.Fraction / Pellets.Alpha.Fraction, "That is reckoned with the alpha acid of the pellets. Look at the label of the cones.");

    /// <summary>Grams of pellets for the same bitterness.</summary>
    public static NumberExercise GramsOfPellets { get; } = new NumberExercise(
        "How many grams of pellets give the same bitterness?", () => Grams(Pellets), tolerance: 1)
    {
        Start = "The same three steps with the pellets' own numbers: their alpha acid, and the share of it that is used.",
        Because = "Fewer grams, because the pellets hold more alpha acid, and a few fewer still, because more of it is used. So the halves also differ in leaf: that is a confound to name.",
        Otherwise = ("So little leaves half B less bitter than half A.", "So much makes half B more bitter than half A."),
    }
        .When(Slip.UpsideDown, () => Grams(Cones) * Pellets.Alpha.Fraction / Cones.Alpha.Fraction, "The stronger lot needs fewer grams, and not more: turn the ratio round.")
        .When(Slip.SameUtilisation, () => Grams(Cones) * Cones.Alpha.Fraction / Pellets.Alpha.Fraction, "That matches the alpha acid. Compare how much of it is used in the two forms: it is not the same share.")
        .When(Slip.OuncesForGrams, () => Grams(Pellets) / GramsPerOunce, "The size is right for ounces. Asked are grams.")
        .When(Slip.OneForBoth, () => Grams(Cones), "That is the mass of the cones. The pellets hold more alpha acid in a gram.");

    /// <summary>Why the difference is surer than either beer.</summary>
    public static ChoiceExercise WhySurer { get; } = new ChoiceExercise("Each beer may be off by a dozen IBU, the difference between them by half of that. Why?")
    {
        Start = "Which errors hit both halves in the same direction? Answer with a letter in quotation marks.",
    }
        .Option("The formula is more exact for differences.", right: false, "The formula is no better; it is the same one twice. What happens to its error when one beer is subtracted from the other?")
        .Option("Most of the error is shared by both halves, and what is shared cancels in the difference.", right: true, "The formula, the volume and the boil are off for both halves alike. What is left comes from what the halves do not share: the form, the assays and each fermentation.")
        .Option("The scale is exact.", right: false, "The scale is the smallest of the doubts. Look at the longest bars of the chart.")
        .Option("Two errors of the same size always halve.", right: false, "Errors of their own would add up, and the difference would be less sure than either beer. So these errors cannot all be of their own.");

    /// <summary>What a match of estimates allows one to say.</summary>
    public static ChoiceExercise WhatAMatchSays { get; } = new ChoiceExercise("The estimates of the two halves agree to a fraction of an IBU. What may the write-up say?")
    {
        Start = "What was measured so far, and what was only estimated? Answer with a letter in quotation marks.",
    }
        .Option("The beers are equally bitter.", right: false, "Nobody has measured them. The estimates agree because you made them agree.")
        .Option("The difference in bitterness is less than one IBU.", right: false, "The difference between the estimates is. The interval of the true difference is several IBU wide: read it off the chart.")
        .Option("The beers were dosed to the same estimated bitterness; the lab will say how bitter they are.", right: true, "That is what was done. With the lab's return the sentence can become stronger, or has to be taken back.");

    private static double Grams(HopLot lot) => 100 * Target / Of(lot).Value.Value;

    private static double Used(HopLot lot) => Of(lot).Charges[0].Utilisation;

    private static BitternessEstimate Of(HopLot lot) => BitternessEstimate.Of(Kettle, [HopCharge.Boil(lot, Mass.FromGrams(100), Kettle.Boil.Minutes)]);
}
