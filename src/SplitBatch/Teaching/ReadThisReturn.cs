using SplitBatch.Lab;

namespace SplitBatch.Teaching;

/// <summary>The exercises of the workshop's fifth notebook: what a lab's return can tell. The return is invented.</summary>
public static class ReadThisReturn
{
    private const double LimitOfTheLab = 1.7;

    /// <summary>The replicates of half A, in BU (invented).</summary>
    public static Replicates A { get; } = new("A", [22.6, 23.2]);

    /// <summary>The replicates of half B, in BU (invented).</summary>
    public static Replicates B { get; } = new("B", [24.1, 24.5]);

    /// <summary>What the return says of the method: a repeatability limit at 95 %, in BU (invented).</summary>
    public static Precision Repeatability { get; } = Precision.Limit95(LimitOfTheLab, PrecisionCondition.Repeatability);

    /// <summary>How far the means lie apart.</summary>
    public static NumberExercise Difference { get; } = new NumberExercise(
        "How far apart are the two beers, by the means of their results, in BU?", () => Math.Abs(Compared().Difference), tolerance: 0.04)
    {
        Start = "Two results for each beer: take the mean of each, then the distance.",
        Because =
            "A number like this looks like a difference between beers. Whether it is more than the method's own scatter is the next "
                + "question.",
        Otherwise = ("The means lie further apart. Take both results of each beer.",
            "The means do not lie as far apart. Take both results of each beer."),
    }
        .When(Slip.UpsideDown, () => -Math.Abs(Compared().Difference),
            "The size is right. The question is how far apart they are, whichever is larger.")
        .When(Slip.SinglesForMeans, () => B.Values[0] - A.Values[0],
            "Those are the first results alone. The second results were paid for as well.");

    /// <summary>How far apart two such means of one beer may lie.</summary>
    public static NumberExercise CriticalDifference { get; } = new NumberExercise(
        "Two means of two results each, of the same beer: within how many BU do they lie in 95 cases out of 100?",
        () => Compared().CriticalDifference!.Value, tolerance: 0.04)
    {
        Start = "The limit on the return is for two single results. For two means, ISO 5725-6 takes it times the root of (1/(2 n) + 1/(2 "
            + "n)), with n results in each mean.",
        Because =
            "Means of two scatter less than single results, by the root of two and not by two. This is what the difference has to beat.",
        Otherwise = ("Two such means of one beer lie further apart than that in more than five cases out of a hundred.",
            "Means of two results lie closer together than that."),
    }
        .When(Slip.SinglesForMeans, () => LimitOfTheLab,
            "That is the limit for two single results. You have means of two, which scatter less.")
        .When(Slip.DeviationForLimit, () => LimitOfTheLab * Precision.LimitFactor * Math.Sqrt(0.5),
            "You took the lab's figure for a standard deviation. It says that it is a limit at 95 %, so the factor 2.8 is in it already.")
        .When(Slip.DeviationForLimit, () => LimitOfTheLab * Precision.LimitFactor,
            "You took the lab's figure for a standard deviation. It says that it is a limit at 95 %, so the factor 2.8 is in it already.")
        .When(Slip.LimitForDeviation, () => LimitOfTheLab / Precision.LimitFactor * Math.Sqrt(0.5),
            "That is a standard deviation. The question is the limit at 95 %, so there is nothing to divide by 2.8.")
        .When(Slip.LimitForDeviation, () => LimitOfTheLab / Precision.LimitFactor,
            "That is the standard deviation of a single result. The question is the limit at 95 % for two means.")
        .When(Slip.NoRoot, () => LimitOfTheLab / 2,
            "The scatter of a mean shrinks with the root of the number of results, and not with the number.");

    /// <summary>What the difference allows one to say.</summary>
    public static ChoiceExercise WhatItSays { get; } = new ChoiceExercise("What does this return say about the two beers?")
    {
        Start = "Lay the difference beside the critical difference. Answer with a letter in quotation marks.",
    }
        .Option("Nothing: 1.7 is larger than the difference.", right: false,
            "1.7 is for single results. Which limit belongs to means of two?")
        .Option("The beers differ in bitterness, so the panel will notice.", right: false,
            "The first half may stand. Taste is the panel's question: a lab can tell apart what nobody tastes.")
        .Option("The difference is below 2 BU, so it is negligible.", right: false,
            "Negligible for whom? The lab's precision says whether a difference is there, and a margin declared beforehand says whether "
                + "it matters.")
        .Option("The beers differ in bitterness as this method measures it; whether people taste it is another matter.",
            () => Compared().Judgement == Judgement.Exceeds,
            "The difference is larger than what the method does to the same beer. That is a statement about the beers' bitterness in the "
                + "lab, and not yet about taste.");

    /// <summary>What a bare figure of five per cent allows one to say.</summary>
    public static ChoiceExercise BareFigure { get; } =
        new ChoiceExercise("Another lab sends the same numbers and says only: \"precision 5 %\". What now?")
        {
            Start = "Let the tool read the figure in every way: LabComparison.Compare(StatedPrecision.Percent(5), a, b). Answer with a "
                + "letter in quotation marks.",
        }
            .Option("The answer hangs on what the figure means: ask the lab whether it is a standard deviation or a limit, and for one "
                + "lab or for several.",
                () => LabComparison.Compare(StatedPrecision.Percent(5), A, B).Judgement == Judgement.DependsOnReading,
                "Until the lab has answered, the write-up says that it depends, and under which reading it would be what.")
            .Option("5 % of 24 is 1.2, and the difference is larger, so the beers differ.", right: false,
                "That takes the 5 % for a limit between two results. The lab may have meant a standard deviation, and then the limit is "
                    + "nearly three times as wide.")
            .Option("Times 2.8 it is more than 3, so the beers do not differ.", right: false,
                "That takes the 5 % for a standard deviation of single results, which it may not be. And a difference within the scatter "
                    + "does not make beers the same.");

    private static LabComparison Compared() => LabComparison.Compare(Repeatability, A, B);
}
