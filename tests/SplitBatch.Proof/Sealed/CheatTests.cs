using SplitBatch.Proof.TruthTable;

namespace SplitBatch.Proof.Sealed;

/// <summary>The short version of tests/reports/sealed.md.</summary>
public class CheatTests
{
    private const int Trials = 150;

    [Fact]
    public void No_false_claim_of_people_who_bend_a_sealed_plan_reaches_a_clean_headline()
    {
        var rows = CheatTable.Run(Trials, 11);
        Assert.All(rows,
            row => Assert.True(row.FalseAndClean == 0, $"{row.Cheat.InWords()}, {row.Truth}: {row.FalseAndClean} of {row.Cheated}"));
        Assert.All(rows,
            row => Assert.True(Promise.Kept(row.HonestAndFalse, 0.05, Trials),
                $"{row.Cheat.InWords()}, {row.Truth}: {row.HonestAndFalse} honest ones are false"));

        // The test means something only if there is much to hide: each cheat finds occasions, and would say what is false.
        foreach (var cheat in Enum.GetValues<Cheat>())
            Assert.True(rows.Where(row => row.Cheat == cheat).Sum(row => row.WantedAndFalse) > 3, cheat.InWords());
    }
}
