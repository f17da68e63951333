using System.Text.Json.Nodes;
using SplitBatch.Trials.Files;
using SplitBatch.Panel.Ballots;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Trials.Seals;

public class DeclarationTests
{
    private static string Of(PanelPlan panel, UnitSystem units = UnitSystem.Metric) =>
        Declaration.Of(SomePlan.Of(panel), units).ToString();

    // 24 triangles: 13 needed at 5 %, 8 or fewer rule out 30 % at beta 5 % (ISO 4120, as in PanelPlanTests); a look after each of 24 errs
    // in 13.7 % (methods of looking early, checked by R).
    [Fact]
    public void It_says_what_the_panel_can_find_out_and_what_it_cannot()
    {
        var text = Of(new PanelPlan(Protocol.Triangle, 24) { Beta = 0.10 });
        Assert.Contains("24 tasters by the triangle protocol, one set each.", text, StringComparison.Ordinal);
        Assert.Contains("13 right answers or more show a difference: guessing gives so many in at most 5 % of panels. If 30 % of tasters "
            + "can tell,", text, StringComparison.Ordinal);
        Assert.Contains("(wanted: 80 %).", text, StringComparison.Ordinal);
        Assert.Contains("9 right answers or fewer rule out that 30 % can tell (risk 10 %). If nobody can,", text,
            StringComparison.Ordinal);
        Assert.Contains("whoever looked after each ballot and stopped at the first difference would find a false one in 14 % of panels.",
            text, StringComparison.Ordinal);
    }

    [Fact]
    public void It_names_the_cost_in_cups_and_beer_in_the_trials_units()
    {
        Assert.Contains("It takes, at 50 mL a cup: beer A: 36 cups, 1.80 L in the cups, 2.07 L with spare; beer B: 36 cups,",
            Of(new PanelPlan(Protocol.Triangle, 24)), StringComparison.Ordinal);
        Assert.Contains("at 1.75 fl oz a cup: beer A: 36 cups, 63 fl oz in the cups",
            Of(new PanelPlan(Protocol.Triangle, 24), UnitSystem.Us), StringComparison.Ordinal);
    }

    [Fact]
    public void It_says_which_panel_decides_and_how_the_others_are_read()
    {
        var text = Of(SomePlan.Main);
        Assert.Contains("The verdict rests on panel main. The panels are also read together, stratified by panel.", text,
            StringComparison.Ordinal);
        Assert.Contains("Panel main, which decides\n", text, StringComparison.Ordinal);
        Assert.Contains("Panel evening\n", text, StringComparison.Ordinal);
    }

    [Fact]
    public void It_says_how_doubtful_ballots_count_and_what_is_asked_beside()
    {
        var text = Of(SomePlan.Main);
        Assert.Contains("of two for one set the last counts; of tasters who knew the variable, counted; of the brewer, counted as wrong; "
            + "late, counted;", text, StringComparison.Ordinal);
        Assert.Contains("Brewers at the table: T03.", text, StringComparison.Ordinal);
        Assert.Contains("Asked beside: liking, preferred. Whatever else is asked is a lead and not a test.", text,
            StringComparison.Ordinal);
        Assert.Contains("They are asked which is the more fruity; half A is expected to be.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void It_says_what_is_fixed_about_a_lab_and_that_nothing_is()
    {
        var plan = SomePlan.Of(SomePlan.Main);
        Assert.Contains("Sealed with it, as trial.json says it of the lab: precision.", Declaration.Of(plan).ToString(),
            StringComparison.Ordinal);
        var none = Declaration.Of(plan with { Lab = new JsonObject { ["precision"] = new JsonArray() } }).ToString();
        Assert.Contains("Nothing is fixed about a lab.", none, StringComparison.Ordinal);
        Assert.DoesNotContain("Sealed with it", none, StringComparison.Ordinal);
    }

    [Fact]
    public void A_panel_too_small_for_anything_is_told_so()
    {
        var text = Of(new PanelPlan(Protocol.Triangle, 2) { Margin = 0.2 });
        Assert.Contains("No count of so few can show a difference.", text, StringComparison.Ordinal);
        Assert.Contains("It cannot rule out that 20 % can tell, whatever it answers: it is too small for that.", text,
            StringComparison.Ordinal);
    }

    [Fact]
    public void A_sequential_plan_says_its_true_rates()
    {
        var text = Of(new PanelPlan(Protocol.Triangle, 60) { Stopping = StoppingRule.Sequential });
        Assert.Contains("triangle, sequential to at most 60: a false difference", text, StringComparison.Ordinal);
        Assert.Contains("It stops at its two lines, or after 60 tasters.", text, StringComparison.Ordinal);
    }
}
