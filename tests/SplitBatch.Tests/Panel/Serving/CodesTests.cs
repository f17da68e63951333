using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Serving;

/// <summary>
/// Codes on cups: fresh, even, never alike on a tray, and none twice for one taster; and a key that breaks this is told where.
/// </summary>
public class CodesTests
{
    private static readonly ServingPlan Plan =
        ServingPlan.Balanced(Protocol.Triangle, 40, seed: 5, sessions: 2, servers: 1, replicates: 3);

    [Fact]
    public void A_code_is_fresh_in_its_session_while_there_are_enough()
    {
        foreach (var session in Plan.Sets.GroupBy(set => set.Session))
        {
            string[] codes = [.. session.SelectMany(set => set.CodedCups).Select(cup => cup.Code)];
            Assert.Equal(180, codes.Length);
            Assert.Equal(codes.Length, codes.Distinct().Count());
        }
    }

    [Fact]
    public void Codes_go_round_before_one_comes_back_and_no_taster_meets_one_twice()
    {
        var plan = ServingPlan.Balanced(Protocol.Triangle, 200, seed: 5, sessions: 10, servers: 1, replicates: 4);
        int[] uses = [.. plan.Sets.SelectMany(set => set.CodedCups).CountBy(cup => cup.Code).Select(pair => pair.Value)];
        Assert.Equal(2400, uses.Sum());
        Assert.InRange(uses.Max(), 1, (2400 / uses.Length) + 4);
        Assert.All(plan.Sets.GroupBy(set => set.Taster), own =>
        {
            string[] codes = [.. own.SelectMany(set => set.CodedCups).Select(cup => cup.Code)];
            Assert.Equal(codes.Length, codes.Distinct().Count());
        });
    }

    [Fact]
    public void First_digits_are_shared_out_evenly_to_both_beers_and_codes_of_a_tray_are_unlike()
    {
        foreach (var beer in Plan.Sets.SelectMany(set => set.CodedCups).GroupBy(cup => cup.Beer))
        {
            int[] digits = [.. beer.CountBy(cup => cup.Code[0]).Select(pair => pair.Value)];
            Assert.Equal(9, digits.Length);
            Assert.InRange(digits.Max() - digits.Min(), 0, 3);
        }

        foreach (var set in Plan.Sets)
        {
            string[] codes = [.. set.CodedCups.Select(cup => cup.Code)];
            Assert.Equal(3, codes.Select(code => code[0]).Distinct().Count());
            Assert.Equal(3, codes.Select(code => code[^1]).Distinct().Count());
            Assert.Equal(3, codes.Select(code => string.Concat(code.Order())).Distinct().Count());
        }
    }

    [Fact]
    public void A_key_is_read_in_the_order_of_its_sets_and_its_faults_say_where()
    {
        var rows = Plan.Key.ToList();
        Assert.Equal(Plan.Sets.Select(set => set.Number),
            ServingKey.ToPlan([.. rows.AsEnumerable().Reverse()], 5).Sets.Select(set => set.Number));
        var own = rows.Where(row => row.Taster == rows[0].Taster && row.Position == 1).Take(2).ToArray();
        rows[rows.IndexOf(own[1])] = own[1] with { Code = own[0].Code };
        var fault = Assert.Single(ServingKey.Check(rows, "key.csv"), fault => fault.Severity == Severity.Error);
        Assert.Equal($"{own[0].Taster} gets the code {own[0].Code} in more than one set of session 1.", fault.Problem);
        Assert.Equal(("key.csv", "code", own[0].Code, "each code once in a sitting"),
            (fault.File, fault.Column, fault.Value, fault.Accepted));
        rows[0] = rows[0] with { Position = 3 };
        Assert.Contains(ServingKey.Check(rows),
            fault => fault.Problem.StartsWith($"Set {rows[0].Set} is poured with positions missing or twice", StringComparison.Ordinal));
        Assert.Contains("triangel", Assert.Single(ServingKey.Check([.. Plan.Key.Select(row => row with { Protocol = "triangel" })])).Value,
            StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("012", "a leading zero is lost in a spreadsheet")]
    [InlineData("484", "a repeated digit is easy to remember")]
    [InlineData("470", "a round number is easy to remember")]
    [InlineData("246", "a run or equal steps are easy to remember")]
    [InlineData("916", "it reads as another number upside down")]
    [InlineData("482", null)]
    public void A_code_that_hints_is_told_why(string code, string? why) => Assert.Equal(why, CodePool.Objection(code));
}
