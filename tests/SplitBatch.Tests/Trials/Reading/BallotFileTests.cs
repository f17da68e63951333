using SplitBatch.Panel.Ballots;
using SplitBatch.Panel.Protocols;
using SplitBatch.Panel.Serving;
using SplitBatch.Trials.Files;

namespace SplitBatch.Trials.Reading;

public class BallotFileTests
{
    [Fact]
    public void A_file_typed_at_the_bar_is_read_row_by_row()
    {
        const string text = """
            taster,session,set,answer,when,confidence,knew variable,brewer,late,comment
            T01,1,1,482,2026-05-02 20:15,sure,,,,grassy
            T02,1,2,"517 638",2026-05-02 20:16,,yes,x,no,
            T03,1,3,,,,,,,
            """;
        FaultList faults = [];
        var ballots = BallotFile.Read(CsvTable.Read("ballots-main.csv", new StringReader(text), faults));
        Assert.Empty(faults);
        Assert.Equal(3, ballots.Count);
        Assert.Equal(new Ballot("T01", "482")
        {
            Session = 1,
            Set = 1,
            When = new(2026, 5, 2, 20, 15, 0, TimeSpan.Zero),
            Confidence = "sure",
            Comment = "grassy",
            Row = 2,
        }, ballots[0]);
        Assert.True(ballots[1] is { KnewVariable: true, IsBrewer: true, IsLate: false, Answer: "517 638" });
        Assert.Equal("", ballots[2].Answer);
    }

    [Fact]
    public void A_web_forms_own_headers_are_mapped_once()
    {
        const string text = "Timestamp;Your number;Which cup is the odd one?;Did you know what was changed?\n2026/05/02 "
            + "20:15:30;T01;482;Yes\n";
        var names = new Dictionary<string, string>
        {
            ["taster"] = "Your number", ["answer"] = "Which cup is the odd one?", ["when"] = "Timestamp",
            ["knew variable"] = "Did you know what was changed?",
        };
        FaultList faults = [];
        var ballot = Assert.Single(BallotFile.Read(CsvTable.Read("incoming/form.csv", new StringReader(text), faults, names: names)));
        Assert.Empty(faults);
        Assert.Equal(("T01", "482", true, 30), (ballot.Taster, ballot.Answer, ballot.KnewVariable, ballot.When!.Value.Second));
    }

    [Fact]
    public void What_cannot_be_read_is_named_and_the_ballot_is_kept()
    {
        const string text = "taster,set,answer,when,brewer,protocol\nT01,one,482,5/2/26 8 pm,maybe,triangle\n,2,517,,,tetrad\n";
        FaultList faults = [];
        var ballots = BallotFile.Read(CsvTable.Read("ballots-main.csv", new StringReader(text), faults));
        Assert.Equal(2, ballots.Count);
        Assert.True(ballots[0].IsBrewer);
        string all = string.Join('\n', faults);
        Assert.Contains("row 2, set = \"one\"", all, StringComparison.Ordinal);
        Assert.Contains("row 2, when = \"5/2/26 8 pm\"", all, StringComparison.Ordinal);
        Assert.Contains("row 2, brewer = \"maybe\"", all, StringComparison.Ordinal);
        Assert.Contains("row 3, taster: The value is missing", all, StringComparison.Ordinal);
        Assert.Contains("more than one protocol stand in one file: triangle 1, tetrad 1", all, StringComparison.Ordinal);
    }

    [Fact]
    public void Several_people_add_ballots_at_once_and_none_is_lost()
    {
        string path = Directory.CreateTempSubdirectory("splitbatch-ballots-").FullName;
        try
        {
            var folder = new TrialFolder(path);
            var plan = ServingPlan.Balanced(Protocol.Triangle, 60, seed: 3);
            Parallel.ForEach(plan.Sets, new ParallelOptions { MaxDegreeOfParallelism = 6 }, set =>
                BallotFile.Append(folder, "main",
                    plan.Enter(set.Taster, set.Cups[0].Code) with { Comment = "green, \"hoppy\"\nand dry" }));
            FaultList faults = [];
            var ballots = BallotFile.Read(
                CsvTable.Read("ballots-main.csv", new StringReader(folder.ReadText("ballots-main.csv", faults)!), faults));
            Assert.Empty(faults);
            var panel = plan.Score(ballots);
            Assert.Equal((60, 60, 0), (panel.Returned, panel.Counted, panel.Remarkable.Count));
            Assert.Equal("green, \"hoppy\" and dry", ballots[0].Comment);
        }
        finally
        {
            Directory.Delete(path, recursive: true);
        }
    }

    /// <summary>Two who begin a file at the same moment each make it whole; the name goes to one, and the other adds to that.</summary>
    [Fact]
    public void Of_two_files_that_want_one_name_exactly_one_gets_it()
    {
        using var folder = new TemporaryFolder();
        using var together = new Barrier(2);
        var won = new int[2];
        var writers = Enumerable.Range(0, 2).Select(who => new Thread(() =>
        {
            for (var round = 0; round < 2000; round++)
            {
                var draft = Path.Combine(folder.Path, $"draft-{who}");
                File.WriteAllText(draft, "row");
                together.SignalAndWait();
                try
                {
                    Disk.Here.Move(draft, Path.Combine(folder.Path, $"name-{round}"));
                    won[who]++;
                }
                catch (IOException)
                {
                    File.Delete(draft);
                }
            }
        })).ToList();
        writers.ForEach(writer => writer.Start());
        writers.ForEach(writer => writer.Join());
        Assert.Equal(2000, won.Sum());
    }

    [Fact]
    public void A_row_cut_short_spoils_no_other()
    {
        using var folder = new TemporaryFolder();
        folder.Write("ballots-main.csv", "taster,set,answer,comment\nT01,1,482,\nT02,2,51");
        BallotFile.Append(new TrialFolder(folder.Path), "main", new Ballot("T03", "638") { Set = 3 });
        Assert.Equal(["482", "51", "638"], Read("ballots-main.csv").Select(ballot => ballot.Answer));

        folder.Write("ballots-open.csv", "taster,set,answer,comment\nT01,1,482,\"gre");
        BallotFile.Append(new TrialFolder(folder.Path), "open", new Ballot("T03", "638"));
        Assert.Equal(2, Read("ballots-open.csv").Count);

        IReadOnlyList<Ballot> Read(string file) => BallotFile.Read(CsvTable.Read(file, new StringReader(folder.Read(file)), []));
    }

    [Fact]
    public void A_value_without_a_column_is_refused_before_anything_is_written() =>
        Assert.Contains("no column for this value", Assert.Throws<Files.LogException>(() =>
            BallotFile.Addition("ballots-main.csv", "taster,answer\n", new Ballot("T01", "482") { IsBrewer = true })).Message,
            StringComparison.Ordinal);
}
