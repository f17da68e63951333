using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;
using SplitBatch.Panel.Serving;

namespace SplitBatch.Panel.Ballots;

/// <summary>What an answer on paper may look like, and what each rule makes of it: the edges that the docstrings promise.</summary>
public class BallotAnswersTests
{
    private static readonly ServingPlan Triangles = ServingPlan.Balanced(Protocol.Triangle, tasters: 12, seed: 7);

    private static string Right(ServedSet set) => set.CodedCups.First(cup => cup.Beer == set.Order.OddBeer).Code;

    private static string Wrong(ServedSet set) => set.CodedCups.First(cup => cup.Beer != set.Order.OddBeer).Code;

    /// <summary>Sorting four cups into two pairs may be written down whole; it is right when each half holds one beer.</summary>
    [Fact]
    public void All_four_codes_of_a_tetrad_are_two_pairs()
    {
        var plan = ServingPlan.Balanced(Protocol.Tetrad, 6, seed: 3);
        foreach (var set in plan.Sets)
        {
            string[] a = [.. set.CodedCups.Where(cup => cup.Beer == Side.A).Select(cup => cup.Code)],
                b = [.. set.CodedCups.Where(cup => cup.Beer == Side.B).Select(cup => cup.Code)];
            Assert.Equal((1, 1), Score($"{a[0]} {a[1]} / {b[0]} {b[1]}"));
            Assert.Equal((1, 1), Score($"{b[1]} {b[0]} / {a[0]} {a[1]}"));
            Assert.Equal((1, 0), Score($"{a[0]} {b[1]} / {b[0]} {a[1]}"));
            Assert.Equal((0, 0), Score($"{a[0]} {a[1]} {b[0]}"));

            (int Counted, int Correct) Score(string answer) =>
                plan.Score([new Ballot(set.Taster, answer)]) is var panel ? (panel.Counted, panel.Correct) : default;
        }
    }

    /// <summary>Five codes do not say which two are meant; the sheet asks for two.</summary>
    [Fact]
    public void All_five_codes_of_two_out_of_five_name_no_pair()
    {
        var set = ServingPlan.Balanced(Protocol.TwoOutOfFive, 4, seed: 3).Sets[0];
        var plan = ServingPlan.Balanced(Protocol.TwoOutOfFive, 4, seed: 3);
        var ballot = Assert.Single(plan.Score([new Ballot(set.Taster, string.Join(' ', set.CodedCups.Select(cup => cup.Code)))]).Ballots);
        Assert.Equal(Standing.Excluded, ballot.Standing);
        Assert.Contains("the answer names 5 codes; write two codes out of", ballot.Reasons, StringComparison.Ordinal);
    }

    [Fact]
    public void A_code_named_twice_is_no_pair_and_two_codes_are_no_odd_cup()
    {
        var plan = ServingPlan.Balanced(Protocol.Tetrad, 6, seed: 3);
        var code = plan.Sets[0].Cups[0].Code;
        Assert.Contains("the answer names a code twice", Reasons(plan, $"{code} {code}"), StringComparison.Ordinal);
        var set = Triangles.Sets[0];
        Assert.Contains("the answer names 2 codes; write one code out of", Reasons(Triangles, $"{set.Cups[0].Code} {set.Cups[1].Code}"),
            StringComparison.Ordinal);
        Assert.Contains("holds no code; write one code out of", Reasons(Triangles, "the left one"), StringComparison.Ordinal);

        static string Reasons(ServingPlan plan, string answer) =>
            Assert.Single(plan.Score([new Ballot(plan.Sets[0].Taster, answer) { Set = 1 }]).Excluded).Reasons;
    }

    /// <summary>One digit wrong or two digits swapped is a slip; more is not, and a slip that fits two cups names neither.</summary>
    [Fact]
    public void Only_a_slip_that_fits_one_cup_is_taken_for_that_cup()
    {
        ServingKeyRow[] rows = [.. ServingPlan.Balanced(Protocol.Triangle, 6, seed: 7).Key];
        string[] codes = ["482", "517", "936"];
        for (var i = 0; i < 3; i++) rows[i] = rows[i] with { Code = codes[i] };
        var plan = ServingKey.ToPlan(rows);
        var taster = plan.Sets[0].Taster;
        Assert.EndsWith("perhaps 482 was meant", Reasons("487"), StringComparison.Ordinal);
        Assert.EndsWith("perhaps 517 was meant", Reasons("571"), StringComparison.Ordinal);
        Assert.EndsWith("which holds 482, 517, 936", Reasons("475"), StringComparison.Ordinal);
        Assert.EndsWith("which holds 482, 517, 936", Reasons("48"), StringComparison.Ordinal);
        Assert.EndsWith("which holds 482, 517, 936", Reasons("4822"), StringComparison.Ordinal);
        rows[1] = rows[1] with { Code = "382" };
        plan = ServingKey.ToPlan(rows);
        Assert.EndsWith("which holds 482, 382, 936", Reasons("582"), StringComparison.Ordinal);

        string Reasons(string answer) => Assert.Single(plan.Score([new Ballot(taster, answer) { Set = 1 }]).Excluded).Reasons;
    }

    [Theory]
    [InlineData("A-not-A", "A", "a")]
    [InlineData("A-not-A", "A", "Yes")]
    [InlineData("A-not-A", "not A", "no")]
    [InlineData("A-not-A", "not A", "n/a")]
    [InlineData("A-not-A", "not A", "NOT A.")]
    [InlineData("same-different", "same", "S")]
    [InlineData("same-different", "different", "d")]
    [InlineData("same-different", "different", "Diff.")]
    public void A_word_is_read_in_its_usual_spellings_and_judged_by_what_was_served(string protocol, string word, string written)
    {
        var plan = ServingPlan.Balanced(Protocol.Parse(protocol), 8, seed: 4);
        foreach (var set in plan.Sets)
        {
            var served = protocol == "A-not-A"
                ? set.Order.Text == "A" ? "A" : "not A"
                : set.Order.Text is "AA" or "BB" ? "same" : "different";
            var ballot = Assert.Single(plan.Score([new Ballot(set.Taster, written)]).Ballots);
            Assert.Equal(word, ballot.Answer!.Word);
            Assert.Equal(word == served, ballot.IsCorrect);
        }
    }

    [Fact]
    public void Same_is_no_answer_to_A_not_A_and_yes_none_to_same_different()
    {
        Assert.Contains("write A or not A",
            Assert.Single(ServingPlan.Balanced(Protocol.ANotA, 4, 1).Score([new Ballot("T1", "same")]).Excluded).Reasons,
            StringComparison.Ordinal);
        Assert.Contains("write same or different",
            Assert.Single(ServingPlan.Balanced(Protocol.SameDifferent, 4, 1).Score([new Ballot("T1", "yes")]).Excluded).Reasons,
            StringComparison.Ordinal);
    }

    [Fact]
    public void A_ballot_handed_in_as_the_key_is_opened_is_in_time_and_one_minute_later_is_late()
    {
        var closes = new DateTimeOffset(2026, 3, 1, 21, 0, 0, TimeSpan.Zero);
        var rules = new BallotRules { Closes = closes };
        Assert.Equal(1, Triangles.Score([Of(closes)], rules).Counted);
        Assert.Equal(0, Triangles.Score([Of(closes.AddMinutes(1))], rules).Counted);
        Assert.Equal(1, Triangles.Score([Of(closes.AddMinutes(1))]).Counted);

        static Ballot Of(DateTimeOffset when) => new(Triangles.Sets[0].Taster, Right(Triangles.Sets[0])) { When = when };
    }

    [Fact]
    public void Equal_duplicates_count_once_and_a_pair_is_equal_in_either_sequence()
    {
        var plan = ServingPlan.Balanced(Protocol.Tetrad, 6, seed: 3);
        var set = plan.Sets[0];
        string[] pair = [.. set.CodedCups.Where(cup => cup.Beer == Side.A).Select(cup => cup.Code)];
        var rules = new BallotRules { Duplicates = DuplicateRule.FirstIfEqual };
        var panel = plan.Score([new Ballot(set.Taster, $"{pair[0]} {pair[1]}"), new Ballot(set.Taster, $"{pair[1]} {pair[0]}")], rules);
        Assert.Equal((2, 1, 1), (panel.Returned, panel.Counted, panel.Correct));
        Assert.Equal([Standing.Counted, Standing.Excluded], panel.Ballots.Select(ballot => ballot.Standing));
        Assert.Contains("2 ballots with the same answer for set 1, this one is used", panel.Ballots[0].Reasons, StringComparison.Ordinal);
        Assert.Contains("another one is used", panel.Ballots[1].Reasons, StringComparison.Ordinal);
    }

    [Fact]
    public void A_late_ballot_that_stands_last_does_not_take_the_place_of_the_one_in_time()
    {
        var set = Triangles.Sets[0];
        Ballot[] ballots = [new(set.Taster, Right(set)), new(set.Taster, Wrong(set)) { IsLate = true }];
        var panel = Triangles.Score(ballots, new BallotRules { Duplicates = DuplicateRule.Last });
        Assert.Equal((1, 1), (panel.Counted, panel.Correct));
        ballots[0] = ballots[0] with { IsBrewer = true };
        var none = Triangles.Score(ballots);
        Assert.Equal(0, none.Counted);
        Assert.All(none.Ballots, ballot => Assert.Contains("none is used", ballot.Reasons, StringComparison.Ordinal));
        Assert.DoesNotContain(set, none.Missing);
    }

    [Fact]
    public void A_right_answer_that_counts_as_wrong_is_not_correct_and_being_left_out_outweighs_it()
    {
        var set = Triangles.Sets[0];
        var wrong = new BallotRules { KnewVariable = BallotRule.CountAsWrong, Brewer = BallotRule.CountAsWrong,
            Late = BallotRule.Exclude };
        var knew = new Ballot(set.Taster, Right(set)) { KnewVariable = true };
        var panel = Triangles.Score([knew], wrong);
        Assert.Equal((1, 0), (panel.Counted, panel.Correct));
        Assert.Equal(Standing.CountedAsWrong, panel.Ballots[0].Standing);
        Assert.Equal(0, Triangles.Score([knew with { IsLate = true }], wrong).Counted);
        // Left out first, counted as wrong by a later note: still left out.
        Assert.Equal(0, Triangles.Score([knew with { IsBrewer = true }], wrong with { KnewVariable = BallotRule.Exclude }).Counted);
        Assert.Equal(0,
            Triangles.Score([new Ballot(set.Taster, Right(set))],
                new BallotRules { TastersWhoKnew = [set.Taster.ToLowerInvariant()] }).Counted);
    }

    [Fact]
    public void A_sitting_that_the_taster_was_not_at_is_named()
    {
        var plan = ServingPlan.Balanced(Protocol.Triangle, 12, seed: 2, sessions: 2);
        var set = plan.Sets.First(s => s.Session == 1);
        var ballot = new Ballot(set.Taster, Right(set));
        Assert.Equal(1, plan.Score([ballot with { Session = 1 }]).Correct);
        var lost = Assert.Single(plan.Score([ballot with { Session = 2 }]).Excluded);
        Assert.Equal($"{set.Taster} was not served in session 2", lost.Reasons);
        Assert.Equal(BallotIssue.UnknownSet, Assert.Single(lost.Notes).Issue);
    }

    [Fact]
    public void What_was_done_is_told_with_the_first_day_and_only_tasters_who_count()
    {
        var zone = TimeSpan.Zero;
        Ballot[] ballots =
        [
            new(Triangles.Sets[0].Taster, Right(Triangles.Sets[0])) { When = new DateTimeOffset(2026, 3, 2, 20, 0, 0, zone) },
            new(Triangles.Sets[1].Taster, Wrong(Triangles.Sets[1])) { When = new DateTimeOffset(2026, 3, 1, 20, 0, 0, zone) },
            new(Triangles.Sets[2].Taster, Right(Triangles.Sets[2])) { IsBrewer = true },
        ];
        var practice = Triangles.Score(ballots).Practice;
        Assert.Equal((2, 2), (practice.Tasters, practice.Sets));
        Assert.Equal(new DateOnly(2026, 3, 1), practice.Served);
        Assert.Null(Triangles.Score([new Ballot(Triangles.Sets[0].Taster, Right(Triangles.Sets[0]))]).Practice.Served);
    }

    [Fact]
    public void A_missing_set_that_counts_as_wrong_is_its_own_tasters()
    {
        var plan = ServingPlan.Balanced(Protocol.Triangle, 4, seed: 2, replicates: 2);
        var ballots = plan.Sets.Skip(1).Select(set => new Ballot(set.Taster, Right(set)) { Set = set.Number }).ToArray();
        var first = plan.Sets[0].Taster;
        var left = plan.Score(ballots).PerTaster.Single(taster => taster.Taster == first);
        Assert.Equal((2, 1, 1), (left.Served, left.Counted, left.Correct));
        Assert.Equal($"{first}: 1 of 1 (2 served)", left.ToString());
        var harsh = plan.Score(ballots, new BallotRules { Missing = BallotRule.CountAsWrong }).PerTaster;
        Assert.Equal((2, 2, 1), harsh.Single(taster => taster.Taster == first) is var own
            ? (own.Served, own.Counted, own.Correct)
            : default);
        Assert.All(harsh.Where(taster => taster.Taster != first),
            taster => Assert.Equal((2, 2, 2), (taster.Served, taster.Counted, taster.Correct)));
    }

    [Fact]
    public void A_ballot_without_a_usable_answer_cannot_be_counted_as_it_stands() =>
        Assert.Contains("without a usable answer",
            Assert.Throws<ArgumentException>(() => Triangles.Score([], new BallotRules { NoUsableAnswer = BallotRule.Count })).Message,
            StringComparison.Ordinal);

    [Fact]
    public void A_ballot_entered_in_a_cell_takes_the_name_and_the_sitting_from_the_key()
    {
        var plan = ServingPlan.Balanced(Protocol.Triangle, 12, seed: 2, sessions: 2);
        var set = plan.Sets.First(s => s.Session == 2);
        var ballot = plan.Enter(set.Taster.ToLowerInvariant(), Wrong(set));
        Assert.Equal((set.Taster, (int?)set.Number, (int?)2), (ballot.Taster, ballot.Set, ballot.Session));
        Assert.Throws<ArgumentException>(() => plan.Enter(" ", Wrong(set)));
    }

    [Fact]
    public void Words_are_tabled_under_same_and_different_and_a_word_counted_as_wrong_is_blank()
    {
        var plan = ServingPlan.Balanced(Protocol.SameDifferent, 8, seed: 4);
        var ballots = plan.Sets.Select((set, i) => new Ballot(set.Taster, i == 0 ? "maybe" : "same"));
        var panel = plan.Score(ballots, new BallotRules { NoUsableAnswer = BallotRule.CountAsWrong });
        Assert.Equal(8, panel.Answers.Values.Sum());
        Assert.Equal(1, panel.Answers.Where(pair => pair.Key.Said == "").Sum(pair => pair.Value));
        Assert.Equal(4, panel.Answers.Where(pair => pair.Key.Served == "same").Sum(pair => pair.Value));
        Assert.Equal(4, panel.Answers.Where(pair => pair.Key.Served == "different").Sum(pair => pair.Value));
        Assert.Empty(Triangles.Score([]).Answers);
    }
}
