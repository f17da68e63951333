using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Teaching;

/// <summary>
/// The exercises of the workshop's last notebook: a sentence no stronger and no weaker than the count. The counts are invented.
/// </summary>
public static class OneHonestSentence
{
    private const double Margin = 0.30;
    private const string Beers = "two beers";

    /// <summary>A panel that settles nothing.</summary>
    public static SentenceExercise SmallPanel { get; } = Of(tasters: 18, correct: 8);

    /// <summary>A panel that shows a difference.</summary>
    public static SentenceExercise ClearPanel { get; } = Of(tasters: 24, correct: 15);

    /// <summary>A panel that rules the margin out.</summary>
    public static SentenceExercise LargePanel { get; } = Of(tasters: 60, correct: 20);

    /// <summary>The three panels by name.</summary>
    public static IReadOnlyList<(string Name, PanelReading Reading)> Panels =>
        [("small", SmallPanel.Reading), ("clear", ClearPanel.Reading), ("large", LargePanel.Reading)];

    private static SentenceExercise Of(int tasters, int correct) =>
        new(Beers, () => PanelReading.Of(Protocol.Triangle, tasters, correct, Margin));
}
