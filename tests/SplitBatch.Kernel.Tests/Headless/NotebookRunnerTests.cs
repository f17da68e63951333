using System.Text.Json.Nodes;
using SplitBatch.Kernel.Host;
using SplitBatch.Kernel.Notebooks;

namespace SplitBatch.Kernel.Headless;

public class NotebookRunnerTests(HostFixture kernel) : IClassFixture<HostFixture>
{
    [Fact]
    public async Task Outputs_are_kept_in_the_notebook_format()
    {
        var notebook = Notebook.Parse(NotebookText.Tiny);
        Assert.Null(await NotebookRunner.RunAsync(notebook, kernel.Host));
        Assert.Equal([1, 2, 3, 4], notebook.Cells.Where(c => c.Kind == CellKind.Code).Select(c => c.ExecutionCount));
        var sum = NotebookText.OutputsOf(notebook, 3);
        Assert.Equal("""{"name":"stdout","output_type":"stream","text":["amber: 24 tasters\n"]}""", sum[0]!.ToJsonString()
            .Replace("\\r", "", StringComparison.Ordinal));
        Assert.Equal("""{"data":{"text/plain":["7.199999999999999"]},"execution_count":2,"metadata":{},"output_type":"execute_result"}""",
            sum[1]!.ToJsonString());
        Assert.Contains("<table",
            string.Concat(NotebookText.OutputsOf(notebook, 6)[0]!["data"]!["text/html"]!.AsArray().Select(l => (string?)l)),
            StringComparison.Ordinal);
        Assert.IsType<JsonObject>(NotebookText.OutputsOf(notebook, 8)[0]!["data"]!["application/vnd.plotly.v1+json"]);
    }

    [Fact]
    public async Task What_is_not_output_is_left_as_it_was()
    {
        var notebook = Notebook.Parse(NotebookText.Tiny);
        await NotebookRunner.RunAsync(notebook, kernel.Host);
        var (before, after) = (JsonNode.Parse(NotebookText.Tiny)!, JsonNode.Parse(notebook.ToString())!);
        foreach (var cell in after["cells"]!.AsArray().Where(c => (string?)c!["cell_type"] == "code"))
        {
            cell!["outputs"] = new JsonArray();
            cell["execution_count"] = null;
        }

        Assert.Equal(before.ToJsonString(), after.ToJsonString());
    }

    [Fact]
    public async Task The_first_failing_cell_ends_the_run_and_earlier_outputs_are_kept()
    {
        var notebook = Notebook.Parse(NotebookText.Of(
            NotebookText.Markdown("# Broken"), NotebookText.Code("Console.Write(\"kept\");"),
                NotebookText.Code("// fails\nvar a = nothing;"), NotebookText.Code("1")));
        var failure = await NotebookRunner.RunAsync(notebook, kernel.Host);
        Assert.Equal(3, failure!.Cell);
        Assert.Equal(["// fails", "var a = nothing;"], failure.FirstLines);
        Assert.Equal("line 2, column 9: CS0103: The name 'nothing' does not exist in the current context", failure.Error.Message);
        Assert.Equal("kept", (string?)NotebookText.OutputsOf(notebook, 2)[0]!["text"]![0]);
        Assert.Equal("error", (string?)Assert.Single(NotebookText.OutputsOf(notebook, 3))!["output_type"]);
        Assert.Empty(NotebookText.OutputsOf(notebook, 4));
        Assert.Null(notebook.Cells[3].ExecutionCount);
    }

    [Fact]
    public async Task A_cell_over_its_limit_is_stopped_and_told()
    {
        var notebook = Notebook.Parse(NotebookText.Of(NotebookText.Code("while (true) { }")));
        var failure = await NotebookRunner.RunAsync(notebook, kernel.Host, TimeSpan.FromSeconds(0.5));
        Assert.Equal(new("TimedOut", "The cell ran longer than its limit of 0.5 s and was stopped.", failure!.Error.Traceback),
            failure.Error);
    }

    [Fact]
    public async Task An_updated_display_is_replaced_where_it_stands_and_clearing_clears()
    {
        var notebook = Notebook.Parse(NotebookText.Of(
            NotebookText.Code("var shown = display(\"one\");\nConsole.Write(\"x\");"),
            NotebookText.Code("shown.Update(\"two\");\nConsole.Write(\"gone\");\nClearOutput(wait: true);\nConsole.Write(\"stays\");")));
        Assert.Null(await NotebookRunner.RunAsync(notebook, kernel.Host));
        Assert.Equal("two", (string?)NotebookText.OutputsOf(notebook, 1)[0]!["data"]!["text/plain"]![0]);
        Assert.Equal("stays", (string?)Assert.Single(NotebookText.OutputsOf(notebook, 2))!["text"]![0]);
    }

    [Fact]
    public async Task Input_is_refused_with_a_hint()
    {
        var notebook = Notebook.Parse(NotebookText.Of(NotebookText.Code("await GetInputAsync(\"How many?\")")));
        var failure = await NotebookRunner.RunAsync(notebook, kernel.Host);
        Assert.Contains("in a headless run nobody is there to answer", failure!.Error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Outputs_of_an_earlier_run_are_replaced()
    {
        var notebook = Notebook.Parse(NotebookText.Tiny);
        await NotebookRunner.RunAsync(notebook, kernel.Host);
        var once = notebook.ToString();
        await NotebookRunner.RunAsync(notebook, kernel.Host);
        Assert.Equal(once, notebook.ToString());
    }
}
