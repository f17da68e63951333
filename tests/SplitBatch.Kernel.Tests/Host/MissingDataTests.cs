using SplitBatch.Kernel.Cells;
using SplitBatch.Trials.Scaffold;

namespace SplitBatch.Kernel.Host;

/// <summary>Cells on a trial that does not hold everything yet.</summary>
public sealed class MissingDataTests(HostFixture kernel) : IClassFixture<HostFixture>, IDisposable
{
    private readonly DirectoryInfo root = Directory.CreateTempSubdirectory("not-yet-");

    public void Dispose() => root.Delete(recursive: true);

    private string NewTrial(string name)
    {
        var path = Path.Combine(root.FullName, name);
        TrialScaffold.Write(new NewTrial(), path);
        return path.Replace('\\', '/');
    }

    [Fact]
    public async Task A_cell_that_needs_what_is_not_there_yet_says_so_and_is_no_error()
    {
        await kernel.Run($"var trial = Trial.Open(\"{NewTrial("one")}\");");
        var (result, outputs) = await kernel.Run("trial.Panel(\"main\").Scored");
        Assert.True(result.Succeeded);
        const string Reason =
            "This trial holds no serving plan for panel main yet: make it with splitbatch serve, or in a cell with "
            + "trial.Serve(\"main\"), which writes serving-main.csv (see notebook 1-design).";
        Assert.Equal(Reason, result.NotYet);
        Assert.Equal($"Not yet. {Reason}", HostFixture.Text(Assert.Single(outputs)));
        Assert.Contains("splitbatch-not-yet", ((DisplayOutput)outputs[0]).Data.Forms["text/html"], StringComparison.Ordinal);
    }

    [Fact]
    public async Task Cells_that_build_on_it_wait_and_others_go_on()
    {
        await kernel.Run($"var second = Trial.Open(\"{NewTrial("two")}\");");
        var first = await kernel.Run("var reading = second.Panel(\"main\").Reading; var also = reading.Answer;");
        Assert.NotNull(first.Result.NotYet);
        var next = await kernel.Run("var words = reading.ToString();\nwords.Length");
        Assert.Equal("Not yet: this cell builds on an earlier one. This trial holds no serving plan for panel main yet.",
            HostFixture.Text(Assert.Single(next.Outputs)));
        Assert.NotNull((await kernel.Run("$\"{words} and {also}\"")).Result.NotYet);
        Assert.Equal("3", await kernel.Value("1 + 2"));
        Assert.Equal("4", await kernel.Value("new[] { 1, 2 }.Select(also => also * 2).Last()"));
    }

    [Fact]
    public async Task Once_the_data_are_there_the_cells_run_again()
    {
        await kernel.Run($"var third = Trial.Open(\"{NewTrial("three")}\");");
        Assert.NotNull((await kernel.Run("var count = third.Panel().Scored.Counted;")).Result.NotYet);
        Assert.NotNull((await kernel.Run("count + 1")).Result.NotYet);
        Assert.Null(
            (await kernel.Run(
            "third = third.Seal().Serve(); var cup = third.Panel().Serving!.Sets[0].Cups[0]; third = third.AddBallot(\"main\", \"T01\", "
            + "cup.Code);")).Result.Error);
        Assert.Contains("its count is hidden", (await kernel.Run("var count = third.Panel().Scored.Counted;")).Result.NotYet,
            StringComparison.Ordinal);
        Assert.Null((await kernel.Run("third = third.Close();")).Result.Error);
        Assert.Null((await kernel.Run("var count = third.Panel().Scored.Counted;")).Result.NotYet);
        Assert.Equal("2", await kernel.Value("count + 1"));
    }

    [Fact]
    public async Task Another_exception_is_still_an_error()
    {
        var (result, _) = await kernel.Run("throw new InvalidOperationException(\"broken\");");
        Assert.Equal("InvalidOperationException", result.Error!.Name);
        Assert.Null(result.NotYet);
    }
}
