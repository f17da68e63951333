using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Serving;

public class ServingKeyTests
{
    public static TheoryData<string> Protocols => [.. Protocol.All.Select(protocol => protocol.Name)];

    [Theory]
    [MemberData(nameof(Protocols))]
    public void A_plan_goes_into_its_key_and_comes_back_the_same(string name)
    {
        var plan = ServingPlan.Balanced(Protocol.Parse(name), 19, seed: 8, sessions: 2, servers: 2, replicates: 2, panel: "cellar");
        Assert.Empty(ServingKey.Check(plan.Key));
        var back = ServingKey.ToPlan([.. plan.Key.Reverse()], seed: 8);
        Assert.Equal(plan.Key, back.Key);
        Assert.Equal(plan.ToString(), back.ToString());
        Assert.Equal("cellar", back.Panel);
    }

    [Fact]
    public void An_unbalanced_plan_is_named_and_kept()
    {
        var rows = ServingPlan.Balanced(Protocol.Triangle, 24, seed: 1).Key;
        var only = rows.GroupBy(row => row.Set).Where(set => string.Concat(set.Select(row => row.Beer)) is "ABB" or "BAB")
            .SelectMany(set => set).ToArray();
        var fault = Assert.Single(ServingKey.Check(only, "serving-main.csv"));
        Assert.Equal(Severity.Warning, fault.Severity);
        Assert.Contains("not balanced: ABB 4, AAB 0", fault.ToString().Replace("BAB 4, BBA 0, ", "", StringComparison.Ordinal),
            StringComparison.Ordinal);
        Assert.False(ServingKey.ToPlan(only).Balance.IsBalanced);
    }

    [Fact]
    public void Two_protocols_in_one_key_are_refused()
    {
        ServingKeyRow[] rows = [.. ServingPlan.Balanced(Protocol.Triangle, 6, 1).Key, .. ServingPlan.Balanced(Protocol.Tetrad, 6, 1).Key];
        var fault = Assert.Single(ServingKey.Check(rows));
        Assert.Contains("more than one protocol: triangle, tetrad", fault.Problem, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => ServingKey.ToPlan(rows));
    }

    [Fact]
    public void Every_fault_of_a_key_is_found_at_once()
    {
        var rows = ServingPlan.Balanced(Protocol.Triangle, 6, 1).Key.ToArray();
        rows[0] = rows[0] with { Beer = rows[1].Beer };
        rows[1] = rows[1] with { Beer = rows[0].Beer };
        rows[2] = rows[2] with { Beer = rows[0].Beer };
        rows[4] = rows[4] with { Code = rows[3].Code };
        rows[6] = rows[6] with { Taster = "T99" };
        rows[9] = rows[9] with { Position = 3 };
        rows[12] = rows[12] with { Code = "111" };
        string all = string.Join('\n', ServingKey.Check(rows));
        Assert.Matches("Set 1 is poured (AAA|BBB), which is not a triangle order", all);
        Assert.Contains("stands on 2 cups of set 2", all, StringComparison.Ordinal);
        Assert.Contains("Set 3 is split", all, StringComparison.Ordinal);
        Assert.Contains("Set 4 is poured with positions missing or twice", all, StringComparison.Ordinal);
        Assert.Contains("\"111\": The code may hint", all, StringComparison.Ordinal);
    }

    [Fact]
    public void An_empty_key_says_so() => Assert.Contains("empty", Assert.Single(ServingKey.Check([])).Problem, StringComparison.Ordinal);
}
