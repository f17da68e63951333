namespace SplitBatch.Cli.Jupyter;

/// <summary>
/// JupyterLab in a browser without a network: built from JupyterLab's own packages, served by Debian's server. What the browser
/// does is in <c>tests/browser/lab/notebook.mjs</c>.
/// </summary>
[Collection(JupyterTests.Name)]
public sealed class LabTests(InstalledKernel kernel)
{
    private const string Notebook = "notebooks/4-panel-statistics.ipynb";

    private static string Lab(string file) => Repository.Path("tests", "browser", "lab", file);

    [LabFact]
    public async Task A_notebook_of_the_project_runs_in_JupyterLab_and_a_copy_that_is_not_trusted_shows_its_charts()
    {
        var folder = Directory.CreateDirectory(Path.Combine(kernel.Folder, "lab")).FullName;
        var built = Path.Combine(kernel.Folder, "lab-built");
        var (code, said) = await kernel.RunAsync("node", [Lab("build.mjs"), built], folder, TimeSpan.FromMinutes(2));
        Assert.True(code == 0, said);
        await using var server = await NotebookServer.StartAsync(kernel, folder, [Lab("serve.py"), built], "ServerApp");
        var pictures = Seen.Pictures(folder);
        var (_, output) =
            await kernel.RunAsync("node", [Lab("notebook.mjs"), $"{server.Address}/lab", Notebook, BrowserTools.Chromium!, pictures],
                folder, TimeSpan.FromMinutes(15));
        Check(output, pictures);
    }

    private static void Check(string output, string pictures)
    {
        var found = Seen.By(output);
        Assert.StartsWith("4.", Text("version"), StringComparison.Ordinal);
        Assert.Equal("splitbatch", Text("kernel"));
        Assert.Empty(List("outside"));
        Assert.Empty(List("faults"));
        Assert.Empty(List("errors"));
        Assert.Equal((0, 1), (Number("unrun"), Number("library"))); // The chart library is fetched once, from the kernel's own folder.
        Assert.True(Number("figures") >= 3, output);
        Seen.AreDrawn(found.GetProperty("pictures"), Number("figures"));
        Assert.True(new FileInfo(Path.Combine(pictures, "lab.png")).Length > 20_000);

        // Words are told from their ground as well as the accessibility guidelines ask, by day and by night.
        Assert.All(new[] { "light", "dark" },
            ground => Assert.True(found.GetProperty(ground).GetProperty("contrast").GetDouble() >= 4.5,
                $"{ground}: {found.GetProperty(ground)}"));

        Assert.Equal("Gravity.FromSpecific", Text("completed"));
        Assert.Contains("Verdict", List("offered"));
        Assert.Contains(Text("help").Split('\n'),
            line => line.EndsWith("as printed on a packet: 5.6 for 5.6 %.", StringComparison.Ordinal));
        Assert.StartsWith("ArgumentException: This trial has no panel \"nobody\"; there are: main, evening.", Text("mistake"),
            StringComparison.Ordinal);
        Assert.Contains("at the cell, line 1", Text("mistake"), StringComparison.Ordinal);
        Assert.True(found.GetProperty("busy").GetBoolean());
        Assert.Contains("The cell was interrupted. Variables of earlier cells are kept.", Text("stopped"), StringComparison.Ordinal);
        Assert.Contains("still here: ", Text("after"), StringComparison.Ordinal);

        // A copy that is not trusted: no script runs, each chart is a picture, and no word of the drawing lies about.
        Assert.Equal((0, 0), (Number("trusted"), Number("scripts")));
        Seen.AreDrawn(found.GetProperty("stills"), Number("figures"));
        Assert.All(List("loose"), words => Assert.Equal("", words));

        string Text(string name) => found.GetProperty(name).GetString()!;
        int Number(string name) => found.GetProperty(name).GetInt32();
        List<string> List(string name) => [.. found.GetProperty(name).EnumerateArray().Select(o => o.GetString()!)];
    }
}
