using SplitBatch.Panel.Ballots;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Liking;
using SplitBatch.Panel.Protocols;
using SplitBatch.Panel.Serving;

namespace SplitBatch.Panel.Deciding;

public class ScoredPanelAnalysisTests
{
    [Fact]
    public void A_scored_triangle_leads_to_every_analysis()
    {
        var plan = ServingPlan.Balanced(Protocol.Triangle, tasters: 12, seed: 4, new ServingOptions { Replicates = 2 });
        var scored =
            plan.Score(
                plan.Sets
                    .Select((set, i) => new Ballot(set.Taster,
                        (i % 2 == 0 ? set.CodedCups.Single(c => c.Beer == set.Order.OddBeer)
                            : set.CodedCups.First(c => c.Beer != set.Order.OddBeer)).Code) { Set = set.Number }));
        Assert.Equal((24, 12), (scored.Test().Tasters, scored.Test().Correct));
        Assert.Equal((12, 24), (scored.Repeats().Tasters, scored.Repeats().Sets));
        Assert.Equal(12, scored.TasterCounts().Count);
        Assert.Equal(BayesReading.Of(Protocol.Triangle, 24, 12, 0.3).ChanceAboveMargin, scored.Bayes(0.3).ChanceAboveMargin);
        Assert.NotEmpty(scored.Bias().Checks);
        Assert.Equal((24, 12), (scored.AsPanelCount().Tasters, scored.AsPanelCount().Correct));
        Assert.Throws<ArgumentException>(() => scored.YesNo());
    }

    [Theory]
    [InlineData("A-not-A", "not A")]
    [InlineData("same-different", "different")]
    public void Tasters_who_always_say_different_have_as_many_hits_as_false_alarms(string name, string word)
    {
        var plan = ServingPlan.Balanced(Protocol.Parse(name), tasters: 20, seed: 8);
        var test = plan.Score(plan.Sets.Select(set => new Ballot(set.Taster, word) { Set = set.Number })).YesNo();
        Assert.Equal(20, test.Different + test.Alike);
        Assert.Equal((test.Different, test.Alike), (test.Hits, test.FalseAlarms));
        Assert.Equal(0, test.DPrime);
        Assert.Equal(1, test.PValue, 1e-12);
    }

    [Fact]
    public void Tasters_who_are_always_right_have_hits_and_no_false_alarms()
    {
        var plan = ServingPlan.Balanced(Protocol.ANotA, tasters: 20, seed: 8);
        var test =
            plan.Score(plan.Sets.Select(set => new Ballot(set.Taster, set.Order.Beers[0] == Side.A ? "A" : "not A") { Set = set.Number }))
                .YesNo();
        Assert.Equal((test.Different, 0), (test.Hits, test.FalseAlarms));
        Assert.True(test.DifferenceShown);
    }

    /// <summary>
    /// Eleven sets of A and nine of B or so come back unevenly: hits are "not A" said of B, false alarms "not A" said of A.
    /// </summary>
    [Fact]
    public void Hits_and_false_alarms_are_counted_each_among_their_own_sets()
    {
        var plan = ServingPlan.Balanced(Protocol.ANotA, tasters: 20, seed: 8);
        var ofA = plan.Sets.Where(set => set.Order.Beers[0] == Side.A).Take(7)
            .Select((set, i) => new Ballot(set.Taster, i < 2 ? "not A" : "A"));
        var ofB = plan.Sets.Where(set => set.Order.Beers[0] == Side.B).Take(5)
            .Select((set, i) => new Ballot(set.Taster, i < 4 ? "not A" : "A"));
        var scored = plan.Score([.. ofA, .. ofB]);
        var test = scored.YesNo();
        Assert.Equal((4, 5, 2, 7), (test.Hits, test.Different, test.FalseAlarms, test.Alike));
        Assert.Equal(12, scored.TasterCounts().Count);
        Assert.All(scored.TasterCounts(), taster => Assert.Equal(1, taster.Sets));
    }
}
