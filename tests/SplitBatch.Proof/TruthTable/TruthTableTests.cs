using SplitBatch.Panel.Protocols;

namespace SplitBatch.Proof.TruthTable;

/// <summary>The short version of the truth table; the long one is published beside this project.</summary>
public class TruthTableTests
{
    private const int Trials = 300, Seed = 11;

    public static TheoryData<Practice> HonestPractices => [.. Enum.GetValues<Practice>().Where(practice => practice.IsHonest())];

    [Theory]
    [MemberData(nameof(HonestPractices))]
    public void Honest_practice_keeps_its_promises(Practice practice)
    {
        var cells =
            from sets in new[] { 12, 24, 60 } from truth in Truth.All select new PanelCell(truth, Protocol.Triangle, sets, practice);
        Assert.All(PanelTable.Run(Trials, Seed, cells), tally =>
        {
            Assert.True(Promise.Kept(tally.FalseClaims, 0.05, Trials), $"{tally.Cell}: {tally.FalseClaims} of {Trials} claims are false");
            Assert.True(Promise.Kept(tally.LimitMisses, 0.05, Trials),
                $"{tally.Cell}: the limit misses {tally.LimitMisses} times of {Trials}");
            // Nothing about an honest panel limits its verdict.
            if (practice == Practice.Honest) Assert.Equal(tally.FalseShare, tally.FalseAndPlainShare);
            Assert.True(Promise.Kept(tally.SharesMiss, 0.05, Trials),
                $"{tally.Cell}: the interval misses {tally.SharesMiss} times of {Trials}");
            Assert.True(Promise.Kept(tally.DistancesMiss, 0.05, Trials),
                $"{tally.Cell}: the interval of d-prime misses {tally.DistancesMiss} times of {Trials}");
        });
    }

    [Fact]
    public void Sloppy_practice_breaks_them_and_the_table_shows_it()
    {
        PanelTally Of(Truth truth, Practice practice, int trials) =>
            PanelTable.Run(trials, Seed, [new PanelCell(truth, Protocol.Triangle, 60, practice)])[0];
        var (none, margin) = (Truth.All[0], Truth.All[2]);
        var (oneOrder, peeking, repeats) =
            (Of(none, Practice.OneOrder, 100), Of(none, Practice.Peeking, 1000), Of(margin, Practice.RepeatsAsTasters, 200));
        Assert.False(Promise.Kept(oneOrder.FalseClaims, 0.05, 100));
        Assert.False(Promise.Kept(peeking.FalseClaims, 0.05, 1000));
        Assert.False(Promise.Kept(repeats.SharesMiss, 0.05, 200));
        Assert.Equal(0, oneOrder.FalseAndPlainShare); // The verdict says that the orders were not balanced.
    }

    [Fact]
    public void A_difference_that_is_bitterness_is_not_put_down_to_the_hops()
    {
        var rows = WholeTrial.Run(150, Seed, WholeCell.All.Where(cell => cell.Hops == 0));
        Assert.All(rows,
            row => Assert.True(Promise.Kept(row.Misled, 0.05, row.Trials),
                $"{row.Cell.Name}: {row.Misled} of {row.Trials} verdicts mislead"));
        var old = rows.Single(row => row.Cell.TrueAlphaShare < 1);
        Assert.True(old.Shown > 100, $"only {old.Shown} of {old.Trials} panels noticed the bitterness, so the test shows nothing");
    }

    [Fact]
    public void A_kept_promise_is_not_called_broken_and_a_broken_one_is()
    {
        Assert.True(Promise.Kept(500, 0.05, 10_000));
        Assert.True(Promise.Kept(Promise.Largest(0.05, 10_000), 0.05, 10_000));
        Assert.False(Promise.Kept(700, 0.05, 10_000));
    }

    [Fact]
    public void Intervals_of_dose_and_lab_hold_the_truth_95_times_in_100()
    {
        var brews = BrewTally.Run(2000, Seed);
        Assert.All(BrewTally.Promises,
            promise => Assert.True(Promise.Kept(brews.Bad(promise), 0.05, brews.Trials),
                $"{promise}: broken {brews.Bad(promise)} times of {brews.Trials}"));
    }
}
