using SplitBatch.Trials.Files;
using System.Text;
using SplitBatch.Panel.Ballots;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Trials.Seals;

public sealed class SealChainTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void Seals_are_bound_to_each_other()
    {
        Put(Put(null));
        var chain = Chain();
        Assert.Equal([1, 2], chain.Seals.Select(seal => seal.Number));
        Assert.Empty(chain.Breaks);
        Assert.Equal(chain.Seals[1], chain.Latest);
        Assert.Equal((null, 0), (SealChain.None.Latest, SealChain.None.Seals.Count));
    }

    [Fact]
    public void A_seal_that_was_changed_after_the_next_was_made_is_named()
    {
        Put(Put(null));
        Edit("seal-1.json", "0.25", "0.3");
        Assert.Matches("^seal-1.json was changed after seal-2.json was made: its fingerprint is ([0-9a-f]{4} ?){5}, and seal-2.json holds "
            + "([0-9a-f]{4} ?){5}\\.$", Assert.Single(Chain().Breaks));
    }

    [Fact]
    public void A_gap_is_named()
    {
        Put(Put(null));
        File.Delete(folder.PathOf("seal-1.json"));
        Assert.Equal("seal-1.json is missing: seals are numbered without a gap.", Assert.Single(Chain().Breaks));
    }

    [Fact]
    public void Amendments_before_the_first_ballot_are_allowed_and_changes_after_it_are_not()
    {
        var wider = SomePlan.Of(SomePlan.Main with { Margin = 0.3 });
        var looser = SomePlan.Of(SomePlan.Main with { Margin = 0.3, Alpha = 0.3 });
        var third = Put(Put(Put(null), wider), looser, ("main", 8));
        Assert.Equal(3, third.Number);
        var history = PanelHistory.Of(Chain(), "main", [new Ballot("T01", "453")],
            SomePlan.Of(SomePlan.Main with { Margin = 0.3, Alpha = 0.3, Beta = 0.2 }));
        Assert.Equal(2, history.InForce!.Number);
        Assert.Equal("margin of panel main: 0.25 was changed to 0.3 on 2026-04-20 17:05 UTC, because: reason 2",
            Assert.Single(history.Amendments).ToString());
        Assert.Equal(
            ["alpha of panel main: 0.04 was changed to 0.3 on 2026-04-20 18:05 UTC, because: reason 3",
                "beta of panel main: 0.08 was changed to 0.2 at a time that nobody recorded"],
            history.Changes.Select(change => change.ToString()));
        Assert.Empty(history.Pending);
    }

    [Fact]
    public void Before_the_first_ballot_a_difference_waits()
    {
        Put(null);
        var history = PanelHistory.Of(Chain(), "main", [], SomePlan.Of(SomePlan.Main with { Alpha = 0.3 }));
        Assert.Empty(history.Changes);
        Assert.Equal("alpha", Assert.Single(history.Pending).Entry);
    }

    [Fact]
    public void A_change_of_another_panel_is_none_of_this_one()
    {
        Put(null);
        var now = SomePlan.Of(SomePlan.Main) with
        {
            Panels = [SomePlan.Main, new PanelPlan(Protocol.Triangle, 30) { Name = "evening", Stopping = StoppingRule.Sequential }],
        };
        Assert.Empty(PanelHistory.Of(Chain(), "main", [new Ballot("T01", "453")], now).Changes);
        Assert.Equal("tasters of panel evening",
            Assert.Single(PanelHistory.Of(Chain(), "evening", [new Ballot("T01", "453")], now).Changes).What);
    }

    [Fact]
    public void A_plan_that_was_sealed_when_ballots_were_in_was_not_sealed_beforehand()
    {
        Put(null, null, ("main", 3));
        Assert.Null(PanelHistory.Of(Chain(), "main", [new Ballot("T01", "453")], SomePlan.Of(SomePlan.Main)).InForce);
        Assert.Equal(1, PanelHistory.Of(Chain(), "evening", [new Ballot("T01", "453")], SomePlan.Of(SomePlan.Main)).InForce!.Number);
    }

    // Sealed 16:05 UTC, 18:05 by the clock of the place. Ballots mostly bear the place's clock without saying so.
    [Theory]
    [InlineData("2026-04-20 19:00", 0, true)]
    [InlineData("2026-04-20 17:00", 0, true)]
    [InlineData("2026-04-20 15:00", 0, false)]
    [InlineData("2026-04-20 17:00", 2, false)]
    [InlineData("2026-04-20 19:00", 2, true)]
    public void A_ballots_own_time_counts_against_the_seal_only_where_it_leaves_no_doubt(string time, int offset, bool inTime)
    {
        Put(null);
        var ballot = new Ballot("T01", "453")
        {
            When = new DateTimeOffset(DateTime.Parse(time, System.Globalization.CultureInfo.InvariantCulture), TimeSpan.FromHours(offset)),
        };
        Assert.Equal(inTime, PanelHistory.Of(Chain(), "main", [ballot], SomePlan.Of(SomePlan.Main)).InForce is not null);
    }

    private SealChain Chain()
    {
        var faults = new FaultList();
        var chain = SealChain.Read(new TrialFolder(folder.Path), faults);
        Assert.Empty(faults);
        return chain;
    }

    private Seal Put(Seal? before, TrialPlan? plan = null, params (string, int)[] ballots)
    {
        var number = (before?.Number ?? 0) + 1;
        var bytes = SealText.Write(SomePlan.Seal(number, plan, before?.Fingerprint, before is null ? null : $"reason {number}", ballots));
        File.WriteAllBytes(folder.PathOf($"seal-{number}.json"), bytes);
        return SealText.Read($"seal-{number}.json", bytes, [])!;
    }

    private void Edit(string file, string old, string by) =>
        File.WriteAllText(folder.PathOf(file), folder.Read(file).Replace(old, by, StringComparison.Ordinal), new UTF8Encoding(false));
}
