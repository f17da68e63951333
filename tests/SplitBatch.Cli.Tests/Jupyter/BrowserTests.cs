namespace SplitBatch.Cli.Jupyter;

/// <summary>
/// Classic Notebook in a browser without a network. What the browser does is in <c>tests/browser/classic-notebook.mjs</c>.
/// </summary>
[Collection(JupyterTests.Name)]
public sealed class BrowserTests(InstalledKernel kernel)
{
    private const string Notebook = "4-panel-statistics.ipynb";
    private static readonly string Script = Repository.Path("tests", "browser", "classic-notebook.mjs");

    [BrowserFact]
    public async Task A_notebook_of_the_project_runs_in_classic_Notebook_with_charts_completion_and_interrupt()
    {
        var folder = Directory.CreateDirectory(Path.Combine(kernel.Folder, "browser")).FullName;
        await using var server = await NotebookServer.StartAsync(kernel, folder, ["-m", "notebook"], "NotebookApp");
        var pictures = Seen.Pictures(folder);
        var (_, output) =
            await kernel.RunAsync("node", [Script, $"{server.Address}/notebooks/notebooks/{Notebook}", BrowserTools.Chromium!, pictures],
                folder, TimeSpan.FromMinutes(5));
        Check(output, pictures);
    }

    private static void Check(string output, string pictures)
    {
        var found = Seen.By(output);
        var line = found.GetRawText();
        Assert.Equal("splitbatch", Text("kernel"));
        Assert.Empty(found.GetProperty("outside").EnumerateArray());
        Assert.Empty(found.GetProperty("errors").EnumerateArray());
        Assert.True(Number("charts") >= 3 && Number("charts") == Number("figures"), line);
        Assert.Equal((1, 0), (Number("library"), Number("copies"))); // Fetched once from the kernel's own folder, and in no cell.
        Seen.AreDrawn(found.GetProperty("pictures"), Number("charts"));
        Assert.True(new FileInfo(Path.Combine(pictures, "notebook.png")).Length > 20_000);
        Assert.Equal("Gravity.FromSpecific", Text("completed"));
        Assert.Contains("Verdict", found.GetProperty("offered").EnumerateArray().Select(o => o.GetString()!.Trim()));
        Assert.True(found.GetProperty("busy").GetBoolean());
        Assert.Contains("The cell was interrupted. Variables of earlier cells are kept.", Text("stopped"), StringComparison.Ordinal);
        Assert.Contains("still here: ", Text("after"), StringComparison.Ordinal);

        string Text(string name) => found.GetProperty(name).GetString()!;
        int Number(string name) => found.GetProperty(name).GetInt32();
    }
}
