using SplitBatch.Panel.Ballots;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Liking;
using SplitBatch.Panel.Protocols;
using SplitBatch.Panel.Serving;

namespace SplitBatch.Panel.Deciding;

public class BiasTests
{
    private static readonly ServingPlan Plan = ServingPlan.Balanced(Protocol.Triangle, tasters: 60, seed: 5);

    [Fact]
    public void Tasters_who_always_pick_the_first_cup_are_noticed()
    {
        var report = BiasReport.Of(Plan.Score(Plan.Sets.Select(set => Answer(set, set.CodedCups.First()))));
        var picks = report.Checks.Single(c => c is { Name: "position", Kind: BiasKind.WrongPicks });
        Assert.True(picks.BiasShown);
        Assert.Equal((40, 20.0), (picks.Groups[0].Count, picks.Groups[0].Expected));
        Assert.Equal(0, picks.Groups[1].Count);
        var right = report.Checks.Single(c => c.Name == "position of the odd cup");
        Assert.True(right.BiasShown);
        Assert.Equal([20, 0, 0], right.Groups.Select(g => g.Count));
        Assert.Contains("right answers by position of the odd cup: 1st 20 of 20, 2nd 0 of 20, 3rd 0 of 20; a bias is shown",
            report.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Tasters_who_always_pick_the_lowest_code_are_noticed()
    {
        var report =
            BiasReport.Of(Plan.Score(Plan.Sets.Select(set => Answer(set, set.CodedCups.MinBy(c => c.Code, StringComparer.Ordinal)!))));
        Assert.True(report.Checks.Single(c => c.Name.StartsWith("code", StringComparison.Ordinal)).BiasShown);
        Assert.DoesNotContain(report.Checks.Where(c => c.BiasShown), c => c.Name == "position");
    }

    [Fact]
    public void Tasters_who_find_only_one_of_the_beers_are_noticed()
    {
        var report =
            BiasReport.Of(
                Plan.Score(
                    Plan.Sets
                        .Select(set =>
                            Answer(set, set.CodedCups.First(c => (c.Beer == set.Order.OddBeer) == (set.Order.OddBeer == Side.B))))));
        var odd = report.Checks.Single(c => c.Name == "beer that was the odd one");
        Assert.True(odd.BiasShown);
        Assert.Equal([0, 30], odd.Groups.Select(g => g.Count));
    }

    /// <summary>
    /// Guessers have no bias, so each check may be wrong in about 5 % of panels and the whole report in no more than that.
    /// </summary>
    [Fact]
    public void Guessers_are_seldom_accused()
    {
        const int panels = 200;
        var random = new Random(11);
        int accused = 0, single = 0, checks = 0;
        for (var i = 0; i < panels; i++)
        {
            var report = BiasReport.Of(Plan.Score(Plan.Sets.Select(set => Answer(set, set.CodedCups.ElementAt(random.Next(3))))), seed: i,
                draws: 199);
            if (report.Checks.Any(c => c.BiasShown)) accused++;
            single += report.Checks.Count(c => c.PValue <= 0.05);
            checks += report.Checks.Count;
        }

        Assert.InRange(accused, 0, 0.05 * panels + (3 * Math.Sqrt(panels * 0.05 * 0.95)));
        Assert.InRange((double)single / checks, 0.01, 0.075);
    }

    /// <summary>Two groups: the random deals come to Fisher's exact test, two-sided by the size of the chi-square statistic.</summary>
    [Fact]
    public void Two_groups_come_to_the_exact_hypergeometric_chance()
    {
        var sets = Enumerable.Range(0, 30).Select(i => (i < 15 ? "A" : "B", i < 11 || i is >= 15 and < 19));
        var check = BiasCheck.OfRightAnswers("odd beer", sets, seed: 3, draws: 40_000);
        double exact = 0;
        for (var x = 0; x <= 15; x++)
        {
            if (Math.Abs(x - 7.5) >= 3.5 - 1e-9) exact += Math.Exp(Choose(15, x) + Choose(15, 15 - x) - Choose(30, 15));
        }

        Assert.Equal(exact, check.PValue, 4 * Math.Sqrt(exact / 40_000));
        Assert.Equal((11, 4), (check.Groups[0].Count, check.Groups[1].Count));

        static double Choose(int n, int k) => MathNet.Numerics.SpecialFunctions.BinomialLn(n, k);
    }

    [Fact]
    public void The_same_seed_gives_the_same_answer_and_further_groupings_can_be_added()
    {
        var scored = Plan.Score(Plan.Sets.Select((set, i) => Answer(set, set.CodedCups.ElementAt(i % 3))));
        var more = new Dictionary<string, Func<ServedSet, string>>
        {
            ["make of the glasses"] = set => set.Number % 2 == 0 ? "tall" : "stout",
        };
        BiasReport one = BiasReport.Of(scored, more), other = BiasReport.Of(scored, more);
        Assert.Equal(one.Checks.Select(c => c.PValue), other.Checks.Select(c => c.PValue));
        Assert.All(one.Checks, c => Assert.Equal(5, c.Seed));
        Assert.Contains(one.Checks, c => c.Name == "make of the glasses");
        Assert.Contains("which does not rule one out", one.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("duo-trio")]
    [InlineData("tetrad")]
    [InlineData("paired directional")]
    [InlineData("3-AFC")]
    [InlineData("two-out-of-five")]
    [InlineData("A-not-A")]
    [InlineData("same-different")]
    public void Every_protocol_has_the_checks_it_allows(string name)
    {
        var plan = ServingPlan.Balanced(Protocol.Parse(name), tasters: 24, seed: 9);
        var ballots = plan.Sets.Select(set => plan.Design.AnswersByCode
            ? new Ballot(set.Taster, string.Join(' ', set.CodedCups.Take(plan.Design.CodesInAnswer).Select(c => c.Code)))
            {
                Set = set.Number,
            }
            : new Ballot(set.Taster, name == "A-not-A" ? "A" : "same") { Set = set.Number });
        var report = BiasReport.Of(plan.Score(ballots), draws: 99);
        Assert.Contains(report.Checks, c => c.Name == "serving order");
    }

    private static Ballot Answer(ServedSet set, Cup cup) => new(set.Taster, cup.Code) { Set = set.Number };
}
