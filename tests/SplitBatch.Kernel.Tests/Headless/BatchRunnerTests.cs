using SplitBatch.Kernel.Notebooks;

namespace SplitBatch.Kernel.Headless;

public sealed class BatchRunnerTests : IDisposable
{
    private readonly BatchFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task A_folder_runs_in_the_order_of_its_numbers()
    {
        foreach (var name in new[] { "10-last.ipynb", "2-second.ipynb", "1-first.ipynb" }) folder.Add(name, NotebookText.Code("1"));
        File.WriteAllText(folder.At("notebooks", "notes.txt"), "not a notebook");
        var outcomes = await folder.Run();
        Assert.Equal(["1-first", "2-second", "10-last"], outcomes.Select(o => o.Name));
        foreach (var name in outcomes.Select(o => o.Name))
            Assert.True(File.Exists(folder.At("out", name + ".ipynb")) && File.Exists(folder.At("out", name + ".html")));
        Assert.True(File.Exists(folder.At("out", "index.html")));
    }

    [Fact]
    public async Task It_stops_at_the_first_notebook_that_fails_and_keeps_what_ran()
    {
        folder.Add("1.ipynb", NotebookText.Code("fine"));
        folder.Add("2.ipynb", NotebookText.Markdown("# Two"), NotebookText.Code("fine"), NotebookText.Code("fail"));
        folder.Add("3.ipynb", NotebookText.Markdown("# Three"), NotebookText.Code("fine"));
        var outcomes = await folder.Run();
        Assert.Equal([true, false], outcomes.Select(o => o.Succeeded));
        Assert.Equal(3, outcomes[1].Failure!.Cell);
        Assert.Equal("wrong in .", outcomes[1].Failure!.Error.Message);
        Assert.Equal("fine", (string?)NotebookText.OutputsOf(folder.Executed("2.ipynb"), 2)[0]!["text"]![0]);
        Assert.False(File.Exists(folder.At("out", "3.ipynb")));
        var index = await File.ReadAllTextAsync(folder.At("out", "index.html"));
        Assert.Contains("1 of 3 notebooks ran from start to end", index, StringComparison.Ordinal);
        Assert.Contains("Stopped at cell 3: wrong in .", index, StringComparison.Ordinal);
        Assert.Contains("Three <p class=\"note\">Not run", index, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Before_each_cell_what_there_is_is_written_as_if_the_cell_ended_the_program()
    {
        folder.Add("1.ipynb", NotebookText.Code("first"), NotebookText.Code("second"));
        Notebook? seen = null;
        var page = "";
        var host = new EchoHost
        {
            OnCell = code =>
            {
                if (code != "second") return;
                seen = folder.Executed("1.ipynb");
                page = File.ReadAllText(folder.At("out", "1.html"));
            },
        };
        await folder.Run(host: host);
        Assert.Equal("first", (string?)NotebookText.OutputsOf(seen!, 1)[0]!["text"]![0]);
        Assert.Equal("ProgramEnded", (string?)NotebookText.OutputsOf(seen!, 2)[0]!["ename"]);
        Assert.Contains("This notebook stopped at <a href=\"#stopped\">cell 2</a>", page, StringComparison.Ordinal);
        Assert.Equal("second", (string?)Assert.Single(NotebookText.OutputsOf(folder.Executed("1.ipynb"), 2))!["text"]![0]);
    }

    [Fact]
    public async Task A_notebook_that_cannot_be_read_is_an_outcome_with_the_reason()
    {
        await File.WriteAllTextAsync(folder.At("notebooks", "bad.ipynb"), "{");
        var outcome = Assert.Single(await folder.Run());
        Assert.StartsWith("The file is not valid JSON", outcome.Problem, StringComparison.Ordinal);
        Assert.False(outcome.Succeeded);
    }

    [Fact]
    public async Task A_trial_is_worked_on_as_a_copy_and_the_executed_notebook_names_the_copy()
    {
        var cells = new[] { NotebookText.Code("var trialFolder = \"../trials/amber\";", "parameters"), NotebookText.Code("{cwd}") };
        folder.Add("1.ipynb", cells);
        var outcomes = await folder.Run();
        Assert.True(Assert.Single(outcomes).Succeeded, outcomes[0].Problem);
        Assert.True(File.Exists(folder.At("out", "amber", "trial.json")));
        Assert.Equal(["trial.json"], Directory.EnumerateFiles(folder.At("trials", "amber")).Select(Path.GetFileName));
        var executed = folder.Executed("1.ipynb");
        Assert.Equal("trialFolder = \"amber\";", executed.Cells[1].Source.Split('\n')[1]);
        Assert.Equal(".", (string?)NotebookText.OutputsOf(executed, 3)[0]!["text"]![0]);
        Assert.DoesNotContain(folder.Root, executed.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain(folder.Root, await File.ReadAllTextAsync(folder.At("out", "1.html")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Runs_at_the_same_time_each_find_the_folder_of_their_own_notebook()
    {
        var others = Enumerable.Range(0, 5).Select(_ => new BatchFolder()).ToList();
        try
        {
            foreach (var other in others) other.Add("1.ipynb", [.. Enumerable.Range(0, 20).Select(_ => NotebookText.Code("{cwd}"))]);
            await Task.WhenAll(others.Select(other => Task.Run(() => other.Run())));
            Assert.All(others, other => Assert.All(Enumerable.Range(1, 20), cell =>
                Assert.Equal(".", (string?)NotebookText.OutputsOf(other.Executed("1.ipynb"), cell)[0]!["text"]![0])));
        }
        finally
        {
            others.ForEach(other => other.Dispose());
        }
    }

    [Fact]
    public async Task Another_trial_and_other_values_may_be_given()
    {
        Directory.CreateDirectory(folder.At("own"));
        await File.WriteAllTextAsync(folder.At("own", "trial.json"), "{}");
        folder.Add("1.ipynb", NotebookText.Code("var trialFolder = \"../nowhere\";\nvar tasters = 24;", "parameters"));
        folder.Add("2.ipynb", NotebookText.Code("1"));
        var outcomes = await folder.Run(new BatchRequest([folder.At("notebooks")], folder.Output)
        {
            Trial = folder.At("own"),
            Set = new Dictionary<string, string> { ["tasters"] = "36" },
        });
        Assert.Equal(2, outcomes.Count(o => o.Succeeded));
        Assert.Equal(["tasters = 36;", "trialFolder = \"own\";"], folder.Executed("1.ipynb").Cells[1].Source.Split('\n')[1..]);
    }

    [Fact]
    public async Task A_trial_folder_that_is_none_is_told_by_the_notebook_that_names_it()
    {
        folder.Add("1.ipynb", NotebookText.Code("var trialFolder = \"../nowhere\";", "parameters"));
        var outcome = Assert.Single(await folder.Run());
        Assert.Contains("names the trial folder \"../nowhere\", which holds no trial.json", outcome.Problem, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Wrong_calls_are_refused_before_anything_runs()
    {
        folder.Add("1.ipynb", NotebookText.Code("var tasters = 24;", "parameters"));
        await Refused(new([folder.At("nowhere")], folder.Output), "There is no file or folder");
        await Refused(new([folder.At("trials", "amber", "trial.json")], folder.Output),
            "is not a notebook; a notebook's name ends in .ipynb");
        await Refused(new([folder.At("trials")], folder.Output), "holds no notebook");
        await Refused(new([folder.At("notebooks")], folder.At("notebooks")), "would be overwritten");
        await Refused(new([folder.At("notebooks")], folder.Output) { Set = new Dictionary<string, string> { ["taster"] = "3" } },
            "No notebook has a parameter \"taster\". Parameters: tasters.");
        await Refused(new([folder.At("notebooks")], folder.Output) { Set = new Dictionary<string, string> { ["tasters"] = "many" } },
            "cannot be \"many\"");
        await Refused(new([folder.At("notebooks")], folder.Output) { Trial = folder.At("trials", "amber") },
            "no notebook has a parameter \"trialFolder\"");
        Assert.False(File.Exists(folder.At("out", "1.ipynb")));
    }

    [Fact]
    public async Task Running_twice_into_the_same_folder_gives_the_same_files()
    {
        folder.Add("1.ipynb", NotebookText.Code("var trialFolder = \"../trials/amber\";", "parameters"), NotebookText.Code("1"));
        await folder.Run();
        var first = Directory.EnumerateFiles(folder.Output, "*", SearchOption.AllDirectories).ToDictionary(f => f, File.ReadAllText);
        await folder.Run();
        Assert.Equal(first, Directory.EnumerateFiles(folder.Output, "*", SearchOption.AllDirectories)
            .ToDictionary(f => f, File.ReadAllText));
    }

    [Fact]
    public async Task Progress_tells_each_notebook_and_cell_in_order()
    {
        folder.Add("1.ipynb", NotebookText.Code("first"), NotebookText.Code("second"));
        var steps = new List<BatchProgress>();
        await folder.Run(progress: steps.Add);
        Assert.Collection(
            steps,
            s => Assert.Equal(new NotebookStarted(1, 1, "1", 2), s),
            s => Assert.Equal(new CellStarted(1, 1, "1", 1, 2, "first"), s),
            s => Assert.Equal(new CellStarted(1, 1, "1", 2, 2, "second"), s),
            s => Assert.True(Assert.IsType<NotebookEnded>(s).Outcome.Succeeded));
    }

    private async Task Refused(BatchRequest request, string reason)
    {
        var error = await Assert.ThrowsAsync<NotebookException>(() => folder.Run(request));
        Assert.Contains(reason, error.Message, StringComparison.Ordinal);
    }
}
