using System.Net;
using System.Text.RegularExpressions;
using SplitBatch.Display.Browser;
using SplitBatch.Kernel.Notebooks;
using SplitBatch.Kernel.Pages;

namespace SplitBatch.Cli.Notebooks;

/// <summary>The pages of a run as a reader gets them: from a disk, by mail, from a server; in a browser without a network.</summary>
public sealed partial class PageTests(ExecutedNotebooks run) : IClassFixture<ExecutedNotebooks>, IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("pages-");

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public void A_page_takes_at_most_400_kilobytes_and_all_share_one_script()
    {
        var pages = Directory.GetFiles(run.Output, "*.html");
        Assert.Equal(7, pages.Length);
        Assert.All(pages, page => Assert.InRange(new FileInfo(page).Length, 500, 400_000));
        Assert.Equal(["charts.js"], Directory.GetFiles(run.Output, "*.js").Select(Path.GetFileName));
        Assert.InRange(new FileInfo(Path.Combine(run.Output, "charts.js")).Length, 3_000_000, 4_000_000);
    }

    [Theory]
    [MemberData(nameof(NotebookOutcomeTests.Names), MemberType = typeof(NotebookOutcomeTests))]
    public void A_page_allows_no_evaluated_text_and_no_script_that_stands_in_it(string name)
    {
        var policy = Policy().Match(Page(name)).Groups["scripts"].Value;
        Assert.Equal("script-src 'self' file:", policy);
        Assert.Equal(Data().Count(Page(name)) + 1, Script().Count(Page(name)));
    }

    [BrowserFact]
    public void On_a_disk_every_chart_answers_the_pointer()
    {
        var page = new Uri(Path.Combine(run.Output, "4-panel-statistics.html"));
        var charts = Data().Count(Page("4-panel-statistics"));
        Assert.True(charts >= 3);
        Assert.Equal(charts, Plot().Count(Chromium.DomAt(page, _folder.FullName)));
    }

    [BrowserFact]
    public void Sent_alone_a_page_still_shows_every_chart()
    {
        foreach (var name in NotebookOutcomeTests.Names)
        {
            var alone = Path.Combine(_folder.CreateSubdirectory("mail").FullName, name + ".html");
            File.Copy(Path.Combine(run.Output, name + ".html"), alone);
            var dom = Chromium.DomAt(new Uri(alone), _folder.FullName);
            Assert.Equal(0, Plot().Count(dom));
            Assert.Equal(Data().Count(dom), Chart().Count(dom));
        }
    }

    [BrowserFact]
    public async Task From_a_server_every_chart_answers_the_pointer()
    {
        using var server = new HttpListener();
        var port = FreePort();
        server.Prefixes.Add($"http://127.0.0.1:{port}/");
        server.Start();
        var serving = ServeAsync(server);
        var dom = await Task.Run(() => Chromium.DomAt(new Uri($"http://127.0.0.1:{port}/2-hop-charges.html"), _folder.FullName));
        server.Stop();
        await serving;
        Assert.Equal(Data().Count(Page("2-hop-charges")), Plot().Count(dom));
    }

    [BrowserFact]
    public void A_script_that_a_cell_put_out_runs_and_one_in_prose_does_not()
    {
        var notebook = Notebook.Parse("""
            {"nbformat":4,"nbformat_minor":5,"metadata":{},"cells":[
             {"cell_type":"markdown","id":"a","metadata":{},"source":["# Scripts\n\n<p id=\"prose\">as it was</p>\n<script>document.getElementById('prose').textContent='changed'</script>"]},
             {"cell_type":"code","id":"b","metadata":{},"execution_count":1,"source":["1"],"outputs":[{"output_type":"display_data","metadata":{},
              "data":{"text/html":["<p id=\"own\">as it was</p>\r\n<script>\r\ndocument.getElementById('own').textContent='changed'\r\n</script>"]}}]}]}
            """);
        var page = Path.Combine(_folder.FullName, "own.html");
        NotebookPage.Write(page, notebook, "Scripts");
        var dom = Chromium.DomAt(new Uri(page), Path.Combine(_folder.FullName, "profile"));
        Assert.Contains("<p id=\"own\">changed</p>", dom, StringComparison.Ordinal);
        Assert.Contains("<p id=\"prose\">as it was</p>", dom, StringComparison.Ordinal);
        Assert.False(File.Exists(Path.Combine(_folder.FullName, "charts.js")), "A page without charts needs no script beside it.");
    }

    private string Page(string name) => File.ReadAllText(Path.Combine(run.Output, name + ".html"));

    private async Task ServeAsync(HttpListener server)
    {
        try
        {
            while (true)
            {
                var asked = await server.GetContextAsync();
                var file = Path.Combine(run.Output, Path.GetFileName(asked.Request.Url!.LocalPath));
                asked.Response.StatusCode = File.Exists(file) ? 200 : 404;
                asked.Response.ContentType = file.EndsWith(".js", StringComparison.Ordinal)
                    ? "text/javascript; charset=utf-8"
                    : "text/html; charset=utf-8";
                if (File.Exists(file)) await asked.Response.OutputStream.WriteAsync(await File.ReadAllBytesAsync(file));
                asked.Response.Close();
            }
        }
        catch (Exception error) when (error is HttpListenerException or ObjectDisposedException)
        {
            // Stopped.
        }
    }

    private static int FreePort()
    {
        using var listener = new System.Net.Sockets.TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    [GeneratedRegex("http-equiv=\"Content-Security-Policy\" content=\"[^\"]*?(?<scripts>script-src [^;\"]*)")]
    private static partial Regex Policy();

    [GeneratedRegex("<script")]
    private static partial Regex Script();

    [GeneratedRegex("<script type=\"application/json\" data-chart-of=")]
    private static partial Regex Data();

    [GeneratedRegex("class=\"plot-container plotly\"")]
    private static partial Regex Plot();

    /// <summary>A chart with its picture in it.</summary>
    [GeneratedRegex("data-chart=\"[0-9a-f]+\"[^>]*>\\s*<div class=\"split-batch-page\"[^>]*><img [^>]*src=\"data:image/svg")]
    private static partial Regex Chart();
}
