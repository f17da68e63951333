namespace SplitBatch.Proof.TruthTable;

/// <summary>The short version of the truth table; the long one is published beside this project.</summary>
public class TruthTableTests
{
    private const int Trials = 400, Seed = 11;

    public static TheoryData<int> HonestCells => [.. PanelCell.All.Index().Where(cell => cell.Item.Practice.IsHonest()).Select(cell => cell.Index)];

    [Theory]
    [MemberData(nameof(HonestCells))]
    public void Honest_practice_keeps_its_promises(int index)
    {
        var cell = PanelCell.All[index];
        var tally = PanelTable.Run(Trials, Seed + index, [cell])[0];
        Assert.True(Promise.Kept(tally.FalseClaims, 0.05, Trials), $"{cell}: {tally.FalseClaims} of {Trials} claims are false");
        Assert.True(Promise.Kept(tally.LimitMisses, 0.05, Trials), $"{cell}: the limit misses {tally.LimitMisses} times of {Trials}");
        Assert.True(Promise.Kept(tally.SharesMiss, 0.05, Trials), $"{cell}: the interval misses {tally.SharesMiss} times of {Trials}");
    }

    [Fact]
    public void Intervals_of_dose_and_lab_hold_the_truth_95_times_in_100()
    {
        var brews = BrewTally.Run(2000, Seed);
        Assert.All(BrewTally.Promises, promise => Assert.True(Promise.Kept(brews.Bad(promise), 0.05, brews.Trials), $"{promise}: broken {brews.Bad(promise)} times of {brews.Trials}"));
    }
}
