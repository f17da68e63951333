using System.Diagnostics;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;
using SplitBatch.Panel.Protocols;
using SplitBatch.Panel.Serving;
using SplitBatch.Trials.Files;

namespace SplitBatch.Trials;

public sealed class LiveTallyTests : IDisposable
{
    private readonly TemporaryFolder parent = new();

    public void Dispose() => parent.Dispose();

    [Fact]
    public void Before_the_first_ballot_there_is_a_tally_and_no_verdict()
    {
        var tally = Class(24).Tally();
        Assert.Equal((24, 0, 24), (tally.Served, tally.Answered, tally.StillOut));
        Assert.Null(tally.Verdict);
        Assert.StartsWith("No ballot is in yet; 24 are still out, so there is no verdict yet.", tally.ToString(),
            StringComparison.Ordinal);
    }

    [Fact]
    public void A_verdict_comes_with_the_last_ballot_and_not_before()
    {
        var trial = Class(24);
        var sets = trial.Panel("main").Serving!.Sets;
        foreach (var set in sets.SkipLast(1)) trial.Enter(set.Taster, BallotWriter.AnswerOf(set));
        var early = trial.Tally();
        Assert.Equal((23, 1), (early.Answered, early.StillOut));
        Assert.Null(early.Verdict);
        Assert.StartsWith("23 of 24 ballots are in; 1 is still out, so there is no verdict yet. The count is hidden until then:",
            early.ToString(), StringComparison.Ordinal);
        Assert.Equal(sets[^1].Taster, Assert.Single(early.Tasters, taster => taster.Answered < taster.Sets).Taster);

        var last = trial.Enter(sets[^1].Taster, BallotWriter.AnswerOf(sets[^1]));
        Assert.True(last.IsComplete);
        Assert.Equal(PanelReading.Of(Protocol.Triangle, 24, 8, 0.30, 0.05, 0.10).Answer, last.Verdict!.Answer);
        Assert.StartsWith("All 24 ballots are in. 24 blind sets were tasted by the triangle protocol, each by another person, and 8 "
            + "answers were right", last.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void The_price_of_stopping_early_is_named()
    {
        var looks = Class(24).Tally().IfStoppedEarly!;
        Assert.Equal(24, looks.Looks.Count);
        Assert.InRange(looks.TrueAlpha, 0.10, 0.30);
    }

    [Fact]
    public void A_web_forms_export_is_counted_together_with_what_is_typed()
    {
        var trial = Class(24);
        var sets = trial.Panel("main").Serving!.Sets;
        var description = trial.Folder.PathOf(TrialFolder.DescriptionFile);
        File.WriteAllText(description, File.ReadAllText(description).Replace(
            "\"name\": \"main\"", "\"name\": \"main\", \"ballots\": { \"file\": \"incoming/form.csv\", \"columns\": { \"taster\": "
                + "\"Who\", \"answer\": \"Odd cup\" } }", StringComparison.Ordinal));
        File.WriteAllText(trial.Folder.PathOf("incoming/form.csv"), $"Who,Odd cup\n{sets[0].Taster},{BallotWriter.AnswerOf(sets[0])}\n");
        trial = Trial.Open(trial.Folder.Path);
        Assert.Equal(1, trial.Tally().Answered);
        Assert.Equal(2, trial.Enter(sets[1].Taster, BallotWriter.AnswerOf(sets[1])).Answered);
        Assert.Equal(["ballots-main.csv", "incoming/form.csv"], trial.Tally().Panel.BallotFiles);
    }

    [Fact]
    public void A_sequential_panel_goes_on_between_its_lines_and_is_over_at_one()
    {
        var trial = Class(60, sequential: true);
        var sets = trial.Panel("main").Serving!.Sets;
        var tally = trial.Enter(sets[0].Taster, Right(sets[0]));
        Assert.Null(tally.Verdict);
        Assert.Null(tally.IfStoppedEarly);
        Assert.Equal("1 of 60 ballots are in: pour on.", tally.ToString());

        foreach (var set in sets.Skip(1).TakeWhile(_ => tally.Verdict is null)) tally = trial.Enter(set.Taster, Right(set));
        Assert.Equal(PanelAnswer.DifferenceShown, tally.Verdict!.Answer);
        Assert.Equal(Trial.Open(trial.Folder.Path).Panel("main").Sequential!.Tasters, tally.Answered);
        Assert.InRange(tally.Answered, 3, 20);
        Assert.StartsWith($"The panel is over after {tally.Answered} of 60 ballots. {tally.Answered} blind sets were tasted one after "
            + $"another by the triangle protocol, each by another person, and {tally.Answered} answers were right", tally.ToString(),
            StringComparison.Ordinal);
    }

    [Fact]
    public void Either_way_of_adding_a_ballot_refuses_what_nobody_could_have_handed_in()
    {
        var trial = Class(24);
        Assert.Contains("Nothing was written", Assert.Throws<ArgumentException>(() => trial.AddBallot("main", "T01", "000")).Message,
            StringComparison.Ordinal);
        var set = trial.Panel("main").Serving!.Sets[0];
        Assert.Single(trial.AddBallot("main", set.Taster, Right(set)).Panel("main").Ballots);
    }

    [Theory]
    [InlineData("T99", "453", "no taster")]
    [InlineData("T01", "000", "000")]
    public void A_ballot_that_nobody_could_have_handed_in_is_refused_and_not_written(string taster, string answer, string word)
    {
        var trial = Class(24);
        var refusal = Assert.Throws<ArgumentException>(() => trial.Enter(taster, answer));
        Assert.Contains(word, refusal.Message, StringComparison.Ordinal);
        Assert.Contains("Nothing was written", refusal.Message, StringComparison.Ordinal);
        Assert.False(trial.Folder.Holds("ballots-main.csv"));
    }

    [Fact]
    public void A_blank_answer_is_kept_and_told()
    {
        var tally = Class(24).Enter("T01", "");
        Assert.Equal((1, 23), (tally.Answered, tally.StillOut));
        Assert.Contains("T01", Assert.Single(tally.ToLookAt), StringComparison.Ordinal);
    }

    [Fact]
    public void A_row_that_a_spreadsheet_saved_half_keeps_nobody_from_counting_the_others()
    {
        var trial = Class(24);
        var sets = trial.Panel("main").Serving!.Sets;
        trial.Enter(sets[0].Taster, BallotWriter.AnswerOf(sets[0]));
        File.AppendAllText(trial.Folder.PathOf("ballots-main.csv"), sets[1].Taster + ",1,2,4");
        var tally = trial.Tally();
        Assert.Contains(sets[1].Taster, Assert.Single(tally.ToLookAt), StringComparison.Ordinal);

        var healed = trial.Enter(sets[1].Taster, BallotWriter.AnswerOf(sets[1]));
        Assert.Equal(2, healed.Answered);
        Assert.All(healed.ToLookAt, line => Assert.Contains(sets[1].Taster, line, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Several_programs_enter_ballots_while_another_counts_and_no_count_is_torn()
    {
        const int Writers = 4, Each = 30, AtATime = 5;
        var trial = Class(Writers * Each);
        var writers = Enumerable.Range(0, Writers).Select(i => BallotWriter.Start(trial.Folder.Path, i * Each, Each)).ToList();
        var ends =
            writers.Select(writer => (Out: writer.StandardOutput.ReadToEndAsync(), Error: writer.StandardError.ReadToEndAsync())).ToList();
        List<int> seen = [0];
        var clock = Stopwatch.StartNew();
        for (var handedOut = 0; handedOut < Each; handedOut += AtATime)
        {
            foreach (var writer in writers) await writer.StandardInput.WriteAsync(new string('\n', AtATime));
            do seen.Add(Count()); while (seen[^1] == seen[^2] && clock.Elapsed < TimeSpan.FromMinutes(3));
        }

        while (writers.Exists(writer => !writer.HasExited) && clock.Elapsed < TimeSpan.FromMinutes(3)) seen.Add(Count());

        foreach (var (writer, end) in writers.Zip(ends))
        {
            Assert.True(writer.WaitForExit(TimeSpan.FromSeconds(60)));
            Assert.Equal("", await end.Error);
            Assert.Equal(Each, (await end.Out).Split('\n', StringSplitOptions.RemoveEmptyEntries).Length);
            Assert.Equal(0, writer.ExitCode);
            writer.Dispose();
        }

        Assert.Equal(seen.Order(), seen);
        Assert.True(seen.Distinct().Count() > Each / AtATime,
            $"the reader saw only {string.Join(", ", seen.Distinct())}, so the test showed little");
        var all = trial.Tally();
        Assert.Equal((Writers * Each, true), (all.Answered, all.IsComplete));
        Assert.Equal((Writers * Each, Writers * Each / 3), (all.Panel.Scored.Counted, all.Panel.Scored.Correct));
        Assert.Equal(Writers * Each, all.Panel.Ballots.Select(ballot => ballot.Taster).Distinct().Count());

        int Count()
        {
            var tally = trial.Tally();
            Assert.Empty(tally.ToLookAt);
            Assert.Equal(Writers * Each, tally.Answered + tally.StillOut);
            Assert.Equal(tally.Panel.Ballots.Count, tally.Answered);
            return tally.Answered;
        }
    }

    private static string Right(ServedSet set) => set.Cups.GroupBy(cup => cup.Beer).Single(beer => beer.Count() == 1).Single().Code;

    /// <summary>The example as a class's own trial: another number of tasters, a key, and no ballot.</summary>
    private Trial Class(int tasters, bool sequential = false)
    {
        var folder = new TrialFolder(Examples.Folder("amber-cone-or-pellet")).CopyTo(parent.PathOf("class"));
        File.Delete(folder.PathOf("ballots-main.csv"));
        File.Delete(folder.PathOf("serving-main.csv"));
        File.Delete(folder.PathOf("seal-1.json"));
        File.Delete(folder.PathOf("panel-log.csv"));
        var description = folder.PathOf(TrialFolder.DescriptionFile);
        File.WriteAllText(description,
            File.ReadAllText(description).Replace("\"tasters\": 24", $"\"tasters\": {tasters}", StringComparison.Ordinal));
        if (sequential)
            File.WriteAllText(description,
                File.ReadAllText(description).Replace("\"stopping\": \"fixed\"", "\"stopping\": \"sequential\"",
                    StringComparison.Ordinal));
        return Trial.Open(folder.Path).Seal().Serve();
    }
}
