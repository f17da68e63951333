using System.Text.Json.Nodes;
using SplitBatch.Kernel.Cells;
using SplitBatch.Kernel.Notebooks;
using SplitBatch.Kernel.Pages;
using SplitBatch.Trials;
using SplitBatch.Trials.Files;

namespace SplitBatch.Proof.Fuzz;

/// <summary>What long runs found, and what is too large or too deep to be found by spoiling small files.</summary>
public sealed class FindTests : IDisposable
{
    private readonly DirectoryInfo scratch = Directory.CreateTempSubdirectory("splitbatch-finds-");

    public void Dispose() => scratch.Delete(recursive: true);

    /// <summary>Found among 30,000 notebooks: a page of such outputs ended with the runtime's own complaint.</summary>
    [Theory]
    [InlineData("""{"output_type":"stream","name":"stdout","text":{"a":1}}""")]
    [InlineData("""{"output_type":"stream","name":["stdout"],"text":[["a"],null,7]}""")]
    [InlineData("""{"output_type":"display_data","metadata":{},"data":{"text/plain":{"a":1},"text/html":[{}]}}""")]
    [InlineData("""{"output_type":{"a":1},"data":{}}""")]
    [InlineData("""{"output_type":"error","ename":{},"evalue":[],"traceback":{"t":1}}""")]
    public void A_page_shows_outputs_of_any_shape_or_the_notebook_is_refused(string output)
    {
        string file = Path.Combine(scratch.FullName, "odd.ipynb");
        string cell = $$"""{"cell_type":"code","id":"a","metadata":{},"source":"1","execution_count":1,"outputs":[{{output}}]}""";
        File.WriteAllText(file, $$"""{"nbformat":4,"nbformat_minor":5,"metadata":{},"cells":[{{cell}}]}""");
        try
        {
            Assert.EndsWith("</html>\n", NotebookPage.Html(Notebook.Load(file), "odd"), StringComparison.Ordinal);
        }
        catch (NotebookException refused)
        {
            Assert.Null(Find.RuntimeWordsIn(refused.Message));
        }
    }

    /// <summary>
    /// Found among the first notebooks: a form that says it is JSON and is not made a notebook that could not be read again.
    /// </summary>
    [Theory]
    [InlineData("{\"a\":")]
    [InlineData("")]
    [InlineData("NaN")]
    public void A_form_that_says_it_is_JSON_and_is_not_is_kept_as_text(string form)
    {
        var kept = new MimeBundle(new Dictionary<string, string> { ["application/json"] = form, ["text/plain"] = "x" }).Forms;
        Assert.Equal(form, JsonNode.Parse(kept["application/json"])!.GetValue<string>());
        Assert.Equal("x", kept["text/plain"]);
    }

    /// <summary>
    /// Found seven times among 20,000 trial folders: charges that the kettle cannot take, and a scale that is none, were let in and ended
    /// the verdict.
    /// </summary>
    [Theory]
    [InlineData("charges.csv", "boil,60", "boil,70", "charges.csv, row 3, time", "70 min in the boil, but the boil lasts 60 min")]
    [InlineData("charges.csv", "cones,43.5", "cones,4350", "charges.csv, row 3, amount", "accepted: up to 20.0 g/L")]
    [InlineData("trial.json", "\"scale [g]\": 0.5", "\"scale [g]\": 5246", "trial.json, scale", "outside (0, 1000] g")]
    public void What_the_kettle_cannot_take_is_a_fault_of_its_row(string name, string was, string now, string where, string problem)
    {
        string trial = CopyOfADemoTrial(), file = Path.Combine(trial, name), text = File.ReadAllText(file);
        Assert.Contains(was, text, StringComparison.Ordinal);
        File.WriteAllText(file, text.Replace(was, now, StringComparison.Ordinal));
        string fault = Trial.Check(trial, new DateOnly(2026, 6, 1)).First(fault => fault.Severity == Severity.Error).ToString();
        Assert.Contains(where, fault, StringComparison.Ordinal);
        Assert.Contains(problem, fault, StringComparison.Ordinal);
        Assert.Throws<TrialFolderException>(() => Trial.Open(trial));
    }

    [Theory]
    [InlineData("batch-log.csv")]
    [InlineData("trial.json")]
    [InlineData("ballots-main.csv")]
    public void A_file_of_a_hundred_megabytes_is_refused_by_its_size_and_not_read(string name)
    {
        string trial = CopyOfADemoTrial();
        using (var file = new FileStream(Path.Combine(trial, name), FileMode.Open)) file.SetLength(100_000_000);
        long before = GC.GetAllocatedBytesForCurrentThread();
        var fault = Trial.Check(trial, new DateOnly(2026, 6, 1)).First(fault => fault.File == name);
        Assert.Contains("100,000,000 bytes", fault.ToString(), StringComparison.Ordinal);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 50_000_000);
    }

    [Fact]
    public void A_file_that_is_nothing_but_brackets_is_no_JSON_and_ends_no_process()
    {
        string trial = CopyOfADemoTrial();
        File.WriteAllText(Path.Combine(trial, "trial.json"), new string('[', 5_000_000));
        Assert.Contains("cannot be read as JSON", Trial.Check(trial, new DateOnly(2026, 6, 1))[0].ToString(), StringComparison.Ordinal);
        string notebook = Path.Combine(scratch.FullName, "deep.ipynb");
        File.WriteAllText(notebook, new string('[', 5_000_000));
        Assert.Contains("not a notebook", Assert.Throws<NotebookException>(() => Notebook.Load(notebook)).Message,
            StringComparison.Ordinal);
    }

    [Fact]
    public void Rows_that_supersede_each_other_in_a_circle_are_told_apart_from_corrections()
    {
        string log = Path.Combine(CopyOfADemoTrial(), "batch-log.csv");
        var lines = File.ReadAllLines(log).ToList();
        int header = lines.FindIndex(line => line.StartsWith("id,", StringComparison.Ordinal));
        string Row(string id, string supersedes)
        {
            var cells = lines[header + 1].Split(',');
            (cells[0], cells[^3], cells[^2]) = (id, supersedes, "a circle");
            return string.Join(',', cells);
        }

        File.AppendAllText(log, Row("C1", "C2") + "\n" + Row("C2", "C1") + "\n");
        var faults = Trial.Check(Path.GetDirectoryName(log)!, new DateOnly(2026, 6, 1)).Where(fault => fault.File == "batch-log.csv")
            .Select(fault => fault.ToString());
        Assert.Contains(faults, fault => fault.Contains("There is no earlier row C2 to supersede", StringComparison.Ordinal));
    }

    private string CopyOfADemoTrial()
    {
        string source = Directory.GetDirectories(Path.Combine(FuzzRun.Root, "data-demo")).Order(StringComparer.Ordinal).First();
        return new TrialFolder(source).CopyTo(Path.Combine(scratch.FullName, "trial")).Path;
    }
}
