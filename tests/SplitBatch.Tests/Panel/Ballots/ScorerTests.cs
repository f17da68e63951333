using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;
using SplitBatch.Panel.Liking;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;
using SplitBatch.Panel.Serving;

namespace SplitBatch.Panel.Ballots;

public class ScorerTests
{
    private static readonly ServingPlan Plan = ServingPlan.Balanced(Protocol.Triangle, tasters: 20, seed: 2026);

    private static string Right(ServedSet set) => set.Cups.First(cup => cup.Beer == set.Order.OddBeer).Code;

    private static string Wrong(ServedSet set) => set.Cups.First(cup => cup.Beer != set.Order.OddBeer).Code;

    private static Ballot Answer(ServedSet set, bool right) => new(set.Taster, right ? Right(set) : Wrong(set)) { Set = set.Number };

    private static List<Ballot> Panel(int right) => [.. Plan.Sets.Select((set, i) => Answer(set, i < right))];

    [Fact]
    public void Eleven_right_of_twenty_are_eleven_right_of_twenty()
    {
        var panel = Plan.Score(Panel(11));
        Assert.Equal((20, 20, 20, 11), (panel.Served, panel.Returned, panel.Counted, panel.Correct));
        Assert.Equal(11, panel.PerTaster.Sum(taster => taster.Correct));
        Assert.Empty(panel.Remarkable);
        Assert.Equal("triangle: 11 of 20 correct; 20 served, 20 returned, 0 not counted, 0 missing", panel.ToString());
    }

    [Fact]
    public void Ballots_in_another_sequence_give_the_same_count()
    {
        var ballots = Panel(7);
        ballots.Reverse();
        Assert.Equal(7, Plan.Score(ballots).Correct);
    }

    [Fact]
    public void A_missing_ballot_is_named_and_left_out_or_counted_as_wrong_as_the_plan_says()
    {
        var ballots = Panel(11);
        ballots.RemoveAt(0);
        var panel = Plan.Score(ballots);
        Assert.Equal((20, 19, 19, 10), (panel.Served, panel.Returned, panel.Counted, panel.Correct));
        Assert.Equal(1, Assert.Single(panel.Missing).Number);
        var harsh = Plan.Score(ballots, new BallotRules { Missing = BallotRule.CountAsWrong });
        Assert.Equal((20, 10), (harsh.Counted, harsh.Correct));
        Assert.Equal(20, harsh.PerTaster.Sum(taster => taster.Counted));
    }

    [Theory]
    [InlineData(DuplicateRule.First, 20, 11)]
    [InlineData(DuplicateRule.Last, 20, 10)]
    [InlineData(DuplicateRule.FirstIfEqual, 19, 10)]
    public void Of_two_ballots_for_one_set_the_plan_says_which_counts(DuplicateRule rule, int counted, int correct)
    {
        var ballots = Panel(11);
        ballots.Add(Answer(Plan.Sets[0], right: false));
        var panel = Plan.Score(ballots, new BallotRules { Duplicates = rule });
        Assert.Equal((21, counted, correct), (panel.Returned, panel.Counted, panel.Correct));
        Assert.Equal(2, panel.Issues[BallotIssue.Duplicate]);
        Assert.Contains("2 ballots with different answers for set 1", panel.Remarkable[0].Reasons, StringComparison.Ordinal);
    }

    [Fact]
    public void A_blank_ballot_does_not_crowd_out_the_answer_that_followed()
    {
        var ballots = Panel(11);
        ballots.Insert(0, new Ballot(Plan.Sets[0].Taster, "") { Set = 1 });
        var panel = Plan.Score(ballots);
        Assert.Equal((21, 20, 11), (panel.Returned, panel.Counted, panel.Correct));
    }

    [Fact]
    public void A_code_that_is_not_in_the_set_is_named_with_the_likely_slip()
    {
        var set = Plan.Sets[0];
        string code = Right(set), swapped = $"{code[1]}{code[0]}{code[2]}";
        var ballots = Panel(11);
        ballots[0] = ballots[0] with { Answer = swapped };
        var panel = Plan.Score(ballots);
        Assert.Equal((19, 10), (panel.Counted, panel.Correct));
        var excluded = Assert.Single(panel.Excluded);
        Assert.Equal(BallotIssue.UnknownCode, Assert.Single(excluded.Notes).Issue);
        Assert.Contains($"the code {swapped} is not in set 1", excluded.Reasons, StringComparison.Ordinal);
        Assert.Contains($"perhaps {code} was meant", excluded.Reasons, StringComparison.Ordinal);
        Assert.Equal((20, 10), Plan.Score(ballots, new BallotRules { NoUsableAnswer = BallotRule.CountAsWrong }) is var harsh
            ? (harsh.Counted, harsh.Correct)
            : default);
    }

    [Fact]
    public void Who_knew_brewed_or_was_late_is_named_and_counted_as_the_plan_says()
    {
        var ballots = Panel(20);
        ballots[0] = ballots[0] with { KnewVariable = true };
        ballots[1] = ballots[1] with { IsBrewer = true };
        ballots[2] = ballots[2] with { IsLate = true };
        ballots[3] = ballots[3] with { When = new DateTimeOffset(2026, 3, 1, 21, 5, 0, TimeSpan.Zero) };
        var rules = new BallotRules { Closes = new DateTimeOffset(2026, 3, 1, 21, 0, 0, TimeSpan.Zero), Brewers = [Plan.Tasters[4]] };
        var panel = Plan.Score(ballots, rules);
        Assert.Equal((15, 15), (panel.Counted, panel.Correct));
        Assert.Equal((1, 2, 2),
            (panel.Issues[BallotIssue.KnewVariable], panel.Issues[BallotIssue.Brewer], panel.Issues[BallotIssue.Late]));
        var lenient = Plan.Score(ballots,
            rules with { KnewVariable = BallotRule.Count, Brewer = BallotRule.Count, Late = BallotRule.Count });
        Assert.Equal((20, 20, 5), (lenient.Counted, lenient.Correct, lenient.Remarkable.Count));
    }

    [Fact]
    public void Unknown_tasters_and_sets_are_named_and_kept()
    {
        var ballots = Panel(11);
        ballots.Add(new Ballot("Z99", "482") { Set = 1 });
        ballots.Add(new Ballot(Plan.Sets[0].Taster, "482") { Set = 2 });
        ballots.Add(new Ballot(Plan.Sets[0].Taster, "482") { Set = 77 });
        var panel = Plan.Score(ballots);
        Assert.Equal((23, 20, 11), (panel.Returned, panel.Counted, panel.Correct));
        Assert.Equal(
            ["the key has no taster \"Z99\"", $"set 2 was served to {Plan.Sets[1].Taster} in session 1", "the key has no set 77"],
            panel.Excluded.Select(ballot => ballot.Reasons));
    }

    [Fact]
    public void Ballots_of_another_protocol_are_kept_apart()
    {
        var ballots = Panel(11);
        ballots.Add(new Ballot(Plan.Sets[0].Taster, "482 537") { Set = 1, Protocol = "tetrad" });
        ballots.Add(new Ballot(Plan.Sets[0].Taster, "482") { Set = 1, Panel = "second" });
        ballots[5] = ballots[5] with { Panel = "main", Protocol = "Triangle test" };
        var panel = Plan.Score(ballots);
        Assert.Equal((20, 11, 2), (panel.Counted, panel.Correct, panel.Issues[BallotIssue.OtherPanel]));
        Assert.Contains("it answers the protocol tetrad, and this panel is triangle", panel.Excluded[0].Reasons, StringComparison.Ordinal);
    }

    [Fact]
    public void A_set_is_found_by_its_codes_where_the_ballot_names_none()
    {
        var plan = ServingPlan.Balanced(Protocol.Triangle, 6, seed: 4, replicates: 3);
        var ballots = plan.Sets.Select(set => new Ballot(set.Taster.ToLowerInvariant() + " ", Right(set)))
            .Append(new Ballot("T1", "no idea"));
        var panel = plan.Score(ballots);
        Assert.Equal((18, 18), (panel.Counted, panel.Correct));
        Assert.Equal(BallotIssue.UnknownSet, Assert.Single(Assert.Single(panel.Excluded).Notes).Issue);
        Assert.All(panel.PerTaster, taster => Assert.Equal((3, 3), (taster.Counted, taster.Correct)));
    }

    [Theory]
    [InlineData("tetrad")]
    [InlineData("two-out-of-five")]
    public void A_pair_is_right_in_either_sequence_and_with_any_mark_between(string name)
    {
        var plan = ServingPlan.Balanced(Protocol.Parse(name), 20, seed: 4);
        foreach (var set in plan.Sets)
        {
            var beer = set.Order.OddBeer ?? Side.B;
            string[] pair = [.. set.Cups.Where(cup => cup.Beer == beer).Select(cup => cup.Code)];
            string stranger = set.Cups.First(cup => cup.Beer != beer).Code;
            Assert.True(Is($"{pair[0]} and {pair[1]}"));
            Assert.True(Is($"{pair[1]}/{pair[0]}"));
            Assert.False(Is($"{pair[1]}, {stranger}"));
            bool Is(string answer) => plan.Score([new Ballot(set.Taster, answer)]).Correct == 1;
        }
        var unclear = plan.Score([new Ballot("T01", plan.Sets[0].Cups[0].Code)]);
        Assert.Contains("the answer names 1 code; write two codes out of", Assert.Single(unclear.Excluded).Reasons,
            StringComparison.Ordinal);
    }

    [Fact]
    public void Words_are_read_for_A_not_A_and_same_different()
    {
        var own = ServingPlan.Balanced(Protocol.ANotA, 10, seed: 4);
        Assert.Equal(10, own.Score(own.Sets.Select(set => new Ballot(set.Taster, set.Order.Text == "A" ? "A" : "not-A"))).Correct);
        Assert.Equal(5, own.Score(own.Sets.Select(set => new Ballot(set.Taster, "Not A"))).Correct);
        var pairs = ServingPlan.Balanced(Protocol.SameDifferent, 12, seed: 4);
        Assert.Equal(12, pairs.Score(pairs.Sets.Select(set => new Ballot(set.Taster, set.Order.IsMixed ? "Different" : "same"))).Correct);
        Assert.Contains("write same or different", Assert.Single(pairs.Score([new Ballot("T01", "maybe")]).Excluded).Reasons,
            StringComparison.Ordinal);
    }

    [Fact]
    public void A_matching_cup_is_judged_by_the_reference_and_a_stronger_one_by_the_expected_beer()
    {
        var duo = ServingPlan.Balanced(Protocol.DuoTrio, 12, seed: 4);
        Assert.Equal(12,
            duo.Score(
                duo.Sets.Select(set => new Ballot(set.Taster, set.CodedCups.First(cup => cup.Beer == set.Order.Reference).Code))).Correct);
        var paired = ServingPlan.Balanced(Protocol.PairedDirectional, 12, seed: 4, new ServingOptions { Expected = Side.A });
        Assert.Equal(12,
            paired.Score(paired.Sets.Select(set => new Ballot(set.Taster, set.CodedCups.First(cup => cup.Beer == Side.A).Code))).Correct);
    }

    [Fact]
    public void Rules_that_count_what_cannot_be_counted_are_refused() =>
        Assert.Throws<ArgumentException>(() => Plan.Score([], new BallotRules { Missing = BallotRule.Count }));

    [Fact]
    public void No_ballots_at_all_are_twenty_missing()
    {
        var panel = Plan.Score([]);
        Assert.Equal((20, 0, 0, 0, 20), (panel.Served, panel.Returned, panel.Counted, panel.Correct, panel.Missing.Count));
    }

    [Fact]
    public void A_ballot_entered_in_a_cell_is_checked_at_once()
    {
        var set = Plan.Sets[6];
        var ballot = Plan.Enter(set.Taster, Right(set));
        Assert.Equal((7, 1, Right(set)), (ballot.Set, ballot.Session, ballot.Answer));
        Assert.Contains("the code 999 is not in set 7", Assert.Throws<ArgumentException>(() => Plan.Enter(set.Taster, "999")).Message,
            StringComparison.Ordinal);
        Assert.Contains("no taster", Assert.Throws<ArgumentException>(() => Plan.Enter("T77", "999")).Message, StringComparison.Ordinal);
        Assert.Equal("", Plan.Enter(set.Taster, "").Answer);
    }

    [Fact]
    public void The_count_goes_straight_into_the_test_and_the_comparison_with_the_plan()
    {
        var panel = Plan.Score(Panel(11));
        Assert.True(panel.Test(alpha: 0.05).DifferenceShown);
        Assert.Equal((20, 20, 2026), (panel.Practice.Tasters, panel.Practice.Sets, panel.Practice.Seed));
    }

    [Fact]
    public void Words_are_tabled_by_what_was_served()
    {
        var own = ServingPlan.Balanced(Protocol.ANotA, 10, seed: 4);
        var panel = own.Score(own.Sets.Select((set, i) => new Ballot(set.Taster, i < 4 ? "A" : "not A")));
        Assert.Equal(10, panel.Answers.Values.Sum());
        Assert.Equal(4, panel.Answers.Where(pair => pair.Key.Said == "A").Sum(pair => pair.Value));
        Assert.Equal(5, panel.Answers.Where(pair => pair.Key.Served == "B").Sum(pair => pair.Value));
    }

    [Fact]
    public void Remarkable_ballots_are_reported_with_their_rows()
    {
        var ballots = Panel(11);
        ballots[3] = ballots[3] with { IsBrewer = true, Row = 5 };
        ballots.RemoveAt(19);
        var faults = Plan.Score(ballots).Faults("ballots-main.csv");
        Assert.Equal($"ballots-main.csv, row 5: {ballots[3].Taster}, set 4: the taster brewed the beer (not counted).",
            faults[0].ToString());
        Assert.Contains("no ballot came back", faults[1].Problem, StringComparison.Ordinal);
    }
}
