using SplitBatch.Trials.Files;
using SplitBatch.Panel.Ballots;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Trials.Seals;

public class PlanDifferenceTests
{
    private static readonly TrialPlan Plan = SomePlan.Of(SomePlan.Main);

    [Fact]
    public void A_plan_does_not_differ_from_itself() => Assert.Empty(PlanDifference.Between(Plan, SomePlan.Of(SomePlan.Main with { })));

    [Fact]
    public void A_difference_names_entry_panel_and_both_values()
    {
        var difference = Assert.Single(PlanDifference.Between(Plan, SomePlan.Of(SomePlan.Main with { Margin = 0.3 })));
        Assert.Equal(new PlanDifference("margin", "main", "0.25", "0.3"), difference);
        Assert.Equal("margin of panel main: 0.25 was sealed, 0.3 stands there now", difference.ToString());
        Assert.True(difference.Concerns("Main"));
        Assert.False(difference.Concerns("evening"));
    }

    [Fact]
    public void What_belongs_to_the_whole_trial_concerns_every_panel()
    {
        var difference = Assert.Single(PlanDifference.Between(Plan, Plan with { Variable = "yeast" }));
        Assert.Equal("variable: fermentation temperature was sealed, yeast stands there now", difference.ToString());
        Assert.True(difference.Concerns("evening"));
    }

    [Fact]
    public void A_panel_that_is_gone_or_new_is_one_difference()
    {
        Assert.Equal(new PlanDifference("the panel itself", "evening", "declared", null),
            Assert.Single(PlanDifference.Between(Plan, Plan with { Panels = [SomePlan.Main] })));
        var more = Plan with { Panels = [.. Plan.Panels, new PanelPlan(Protocol.Triangle, 12) { Name = "late" }] };
        Assert.Equal(new PlanDifference("the panel itself", "late", null, "declared"), Assert.Single(PlanDifference.Between(Plan, more)));
    }

    [Fact]
    public void The_order_of_panels_is_no_difference_and_the_deciding_one_is()
    {
        Assert.Empty(PlanDifference.Between(Plan, Plan with { Panels = [.. Plan.Panels.Reverse()] }));
        Assert.Equal("panel that decides: main was sealed, evening stands there now",
            Assert.Single(PlanDifference.Between(Plan, Plan with { Deciding = "evening" })).ToString());
    }
}
