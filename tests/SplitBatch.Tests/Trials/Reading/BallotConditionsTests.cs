using SplitBatch.Panel.Ballots;
using SplitBatch.Panel.Serving;
using SplitBatch.Trials.Files;

namespace SplitBatch.Trials.Reading;

/// <summary>What goes wrong at a panel: each is named, kept, and counted as the plan in trial.json says.</summary>
public class BallotConditionsTests
{
    [Fact]
    public void Everything_that_goes_wrong_is_named_and_kept_and_left_out_by_default()
    {
        using var folder = new PanelFolder("triangle", 24);
        folder.Answer(right: 12, Trouble(folder));
        var panel = folder.Open().Panel();
        // 24 sets: T05 knew, T06 brewed, T07 came late, T08 wrote an unknown code, T09 wrote nothing, T10 is missing; T04 answered twice.
        Assert.Equal((24, 24, 18, 1), (panel.Scored.Served, panel.Scored.Returned, panel.Scored.Counted, panel.Scored.Missing.Count));
        Assert.Equal(6, panel.Scored.Excluded.Count);
        string[] expected = ["T05 is not counted: the taster knew the variable", "T06 is not counted: the taster brewed the beer",
            "T07 is not counted: handed in late",
            "T08 is not counted: the code 999 is not in set 8", "T09 is not counted: no answer was written",
            "Ballots not returned: 1 of 24", "T04 is not counted: 2 ballots with different answers for set 4"];
        Assert.All(expected, words => Assert.Contains(panel.Remarks, remark => remark.Contains(words, StringComparison.Ordinal)));
        Assert.Equal(24, panel.Ballots.Count);
        var faults = folder.Check();
        Assert.All(faults, fault => Assert.Equal(Severity.Warning, fault.Severity));
        Assert.Contains(faults,
            fault => fault.File == "ballots-main.csv" && fault.Row == 7
                && fault.Problem.Contains("T05, set 5: the taster knew the variable (not counted)", StringComparison.Ordinal));
        Assert.Contains(faults,
            fault => fault.Problem.StartsWith("No ballot came back for 1 of 24 sets (not counted): T10 (set 10).",
                StringComparison.Ordinal));
        Assert.Contains(panel.Departures, departure => departure is { What: "tasters", Planned: "24", Done: "18" });
    }

    [Fact]
    public void The_plan_can_say_otherwise_and_the_count_follows_it()
    {
        using var folder = new PanelFolder("triangle", 24, """
            "rules": { "duplicates": "last", "knew variable": "count", "brewer": "count", "late": "count", "no usable answer": "count as wrong", "missing": "count as wrong" }
            """);
        folder.Answer(right: 12, Trouble(folder));
        var panel = folder.Open().Panel();
        Assert.Equal(24, panel.Scored.Counted);
        // Of the twelve right ones T08, T09 and T10 are lost, and of T04's two answers the last one, which is wrong, counts.
        Assert.Equal(8, panel.Scored.Correct);
        Assert.Contains(panel.Remarks, remark => remark == "A ballot of T07 is counted, as the plan says: handed in late.");
        Assert.Contains(panel.Remarks, remark => remark == "Ballots not returned: 1 of 24, counted as wrong, as the plan says.");
    }

    [Fact]
    public void Late_is_told_from_the_hour_and_brewers_from_the_plan()
    {
        using var folder = new PanelFolder("triangle", 12,
            """ "rules": { "closes": "2026-05-02 19:10", "brewers": ["t03"], "tasters who knew": ["T 04"] } """);
        folder.Answer(right: 6);
        var issues = folder.Open().Panel().Scored.Issues;
        Assert.Equal((2, 1, 1), (issues[BallotIssue.Late], issues[BallotIssue.Brewer], issues[BallotIssue.KnewVariable]));
    }

    [Theory]
    [InlineData("""{ "late": "ignore" }""", "rules.late", "exclude, count, count as wrong")]
    [InlineData("""{ "missing": "count" }""", "rules.missing", "exclude, count as wrong")]
    [InlineData("""{ "closes": "2.5.2026 22:00" }""", "rules.closes", "year-month-day hour:minute")]
    [InlineData("""{ "lat": "count" }""", "rules.lat", "late")]
    public void A_rule_that_cannot_be_read_is_named(string rules, string column, string accepted)
    {
        using var folder = new PanelFolder("triangle", 12, $"\"rules\": {rules}");
        var error = Assert.Throws<TrialFolderException>(folder.Open);
        Assert.Contains(error.Faults,
            fault => fault.Column == $"panels[0].{column}" && fault.Accepted!.Contains(accepted, StringComparison.Ordinal));
    }

    [Fact]
    public void Ballots_of_two_protocols_in_one_file_are_told_apart_and_none_is_lost()
    {
        using var folder = new PanelFolder("triangle", 12);
        folder.Write("ballots-main.csv", "taster,set,answer,protocol\n" + string.Concat(folder.Plan.Sets.Select(set =>
            $"{set.Taster},{set.Number},{folder.AnswerTo(set, true)},{(set.Number <= 8 ? "triangle" : "duo-trio")}\n")));
        var panel = folder.Open().Panel();
        Assert.Equal((8, 12), (panel.Scored.Counted, panel.Ballots.Count));
        Assert.Contains(panel.Remarks,
            remark => remark.Contains("it answers the protocol duo-trio, and this panel is triangle", StringComparison.Ordinal));
        Assert.Contains(folder.Check(),
            fault => fault.Problem.StartsWith("Ballots of more than one protocol stand in one file: triangle 8, duo-trio 4.",
                StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("\"tasters\": 12", "\"tasters\": 0", "tasters", "between 1 and 100000")]
    [InlineData("\"alpha\": 0.05", "\"alpha\": 1.2", "alpha", "between 0 and 1")]
    [InlineData("\"margin\": 0.3", "\"margin\": 30", "margin", "between 0 and 1")]
    [InlineData("\"beta\": 0.05", "\"beta\": 0", "beta", null)]
    public void Numbers_that_cannot_be_are_refused_with_what_is_accepted(string old, string by, string column, string? accepted)
    {
        using var folder = new PanelFolder("triangle", 12);
        folder.Replace("trial.json", old, by);
        var fault = Assert.Single(Assert.Throws<TrialFolderException>(folder.Open).Faults);
        Assert.Equal($"panels[0].{column}", fault.Column);
        Assert.Contains(accepted ?? "above 0", fault.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void An_unbalanced_key_is_named_kept_and_stands_among_the_limits()
    {
        using var folder = new PanelFolder("triangle", 12);
        var first = folder.Plan.Sets[0].Order;
        folder.Write("serving-main.csv", "protocol,taster,set,position,code,beer\n" + string.Concat(folder.Plan.Sets.SelectMany(set =>
            set.Cups.Select((cup, i) => $"triangle,{set.Taster},{set.Number},{cup.Position},{cup.Code},{first.Beers[i]}\n"))));
        folder.Write("ballots-main.csv",
            "taster,answer\n" + string.Concat(folder.Plan.Sets.Select(set => $"{set.Taster},{set.Cups[0].Code}\n")));
        Assert.Contains(folder.Check(),
            fault => fault.Problem.Contains("A taster's liking for a position can then pass for a difference", StringComparison.Ordinal));
        Assert.Contains(folder.Open().Verdict().Limitations,
            claim => claim.Sentence.Contains("Serving orders: planned each equally often, done not balanced", StringComparison.Ordinal));
    }

    private static Func<ServedSet, string, string?> Trouble(PanelFolder folder) => (set, row) => set.Number switch
    {
        4 => row + "\n" + row.Replace(folder.AnswerTo(set, true), folder.AnswerTo(set, false), StringComparison.Ordinal),
        5 => row.Replace(",,,,", ",yes,,,", StringComparison.Ordinal),
        6 => row.Replace(",,,,", ",,yes,,", StringComparison.Ordinal),
        7 => row.Replace(",,,,", ",,,yes,", StringComparison.Ordinal),
        8 => $"{set.Taster},{set.Number},999,2026-05-02 19:08,,,,",
        9 => $"{set.Taster},{set.Number},,2026-05-02 19:09,,,,",
        10 => null,
        _ => row,
    };
}
