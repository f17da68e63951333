using System.Net;
using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.DotNet.Interactive.Formatting;
using SplitBatch.Display.Charts;
using SplitBatch.Display.Figures;
using SplitBatch.Display.Notebooks;
using SplitBatch.Display.Tables;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Display.Browser;

/// <summary>Sliders on a page opened from disk, moved by the mouse, without a network.</summary>
public partial class SliderTests
{
    /// <summary>
    /// Presses the mouse on a slider's rail at a share of its length, then lists what stands written in the plot and can be seen.
    /// </summary>
    private const string Mouse = """
        function press(plot,number,share){var rail=plot.querySelectorAll('.slider-rail-touch-rect')[number],box=rail.getBoundingClientRect();
        var at={bubbles:true,cancelable:true,view:window,clientX:box.left+share*box.width,clientY:box.top+box.height/2};
        rail.dispatchEvent(new MouseEvent('mousedown',at));rail.dispatchEvent(new MouseEvent('mouseup',at));window.dispatchEvent(new MouseEvent('mouseup',at))}
        function words(plot){return Array.prototype.filter.call(plot.querySelectorAll('.textpoint text'),function(t){var s=getComputedStyle(t);
        return s.fillOpacity!=='0'&&s.fill!=='rgba(0, 0, 0, 0)'&&getComputedStyle(t.closest('.trace')).opacity!=='0'}).map(function(t){return t.textContent}).filter(function(t){return t})}
        function bars(plot){return Array.prototype.map.call(plot.querySelectorAll('.barlayer .trace'),function(t){return getComputedStyle(t).opacity!=='0'?t.querySelectorAll('path').length:0}).reduce(function(a,b){return a+b},0)}
        window.addEventListener('load',function(){setTimeout(function(){var plot=document.querySelector('.js-plotly-plot'),seen=[];
        seen.push({words:words(plot),bars:bars(plot)});
        var moves=MOVES;(function next(i){if(i===moves.length){var p=document.createElement('pre');p.id='seen';p.textContent=JSON.stringify(seen);document.body.appendChild(p);return}
        press(plot,moves[i][0],moves[i][1]);setTimeout(function(){seen.push({words:words(plot),bars:bars(plot)});next(i+1)},600)})(0)},800)})
        """;

    [BrowserFact]
    public void Each_slider_changes_what_is_read_off_and_leaves_the_others_where_they_were()
    {
        var seen = Move(Protocol.Triangle.ExplorePower(tasters: 20), "[[0,1],[1,0],[2,0],[1,1]]");
        Assert.Equal(
            [
                Says(20, 0.30, 0.05),
                Says(100, 0.30, 0.05),
                Says(100, 0, 0.05),
                Says(100, 0, 0.01),
                Says(100, 0.70, 0.01),
            ],
            seen.Select(state => Assert.Single(state.Words)));
    }

    [BrowserFact]
    public void The_distribution_and_the_critical_count_move_with_the_sliders()
    {
        var seen = Move(Protocol.Triangle.ExploreCounts(tasters: 20), "[[0,0],[0,1],[2,1]]");
        Assert.Equal([OrMore(20, 0.05), OrMore(8, 0.05), OrMore(100, 0.05), OrMore(100, 0.10)],
            seen.Select(state => state.Words.Single(word => word.EndsWith("or more", StringComparison.Ordinal))));
        Assert.Equal([Says(20, 0.30, 0.05), Says(8, 0.30, 0.05), Says(100, 0.30, 0.05), Says(100, 0.30, 0.10)],
            seen.Select(state => state.Words.Single(word => word.Contains("needed", StringComparison.Ordinal))));
        Assert.True(seen[1].Bars < seen[0].Bars && seen[0].Bars < seen[2].Bars, string.Join(", ", seen.Select(state => state.Bars)));
        Assert.Equal(seen[2].Bars, seen[3].Bars);
    }

    [BrowserFact]
    public void Without_scripts_the_first_position_is_a_picture_with_its_numbers()
    {
        NotebookDisplay.Register();
        var html = Formatter.ToDisplayString(Protocol.Triangle.ExplorePower(tasters: 20), "text/html");
        var still = Script().Replace(html, "");
        Assert.Contains("src=\"data:image/svg+xml;base64,", still, StringComparison.Ordinal);
        Assert.Contains("20 tasters show a difference in 53 % of panels", still, StringComparison.Ordinal);
        Assert.Contains("<table", still, StringComparison.Ordinal);
        Assert.InRange(html.Length, 1, 400_000);
    }

    /// <summary>A headless browser whose time is virtual draws no frames; what waits for one waits for the clock instead.</summary>
    private const string Frames = "window.requestAnimationFrame=function(f){return "
        + "setTimeout(function(){f(performance.now())},16)};window.cancelAnimationFrame=clearTimeout;";

    private static string Says(int tasters, double share, double alpha)
    {
        var critical = Power.CriticalCount(Protocol.Triangle, tasters, alpha);
        var power = Printed.Percent(Power.Of(Protocol.Triangle, tasters, alpha, share));
        return share == 0 ? $"{critical} of {tasters} needed; guessers get there in {power} of panels."
            : $"{critical} of {tasters} needed; shown in {power} of panels.";
    }

    private static string OrMore(int tasters, double alpha) => $"{Power.CriticalCount(Protocol.Triangle, tasters, alpha)} or more";

    private static List<State> Move(Explorer explorer, string moves)
    {
        NotebookDisplay.Register();
        var body = Formatter.ToDisplayString(explorer, "text/html");
        var page = $"<!DOCTYPE html><html lang=\"en\"><head><meta "
            + $"charset=\"utf-8\"><title>t</title><script>{Frames}</script><script>"
            + $"{NotebookDisplay.ChartScript}</script></head><body><main>{body}</main><script>"
            + $"{Mouse.Replace("MOVES", moves, StringComparison.Ordinal)}</script></body></html>";
        var dom = Chromium.Dom(page, 1000, 20_000);
        var result = Seen().Match(dom);
        Assert.True(result.Success, "the sliders could not be moved");
        return JsonSerializer.Deserialize<List<State>>(WebUtility.HtmlDecode(result.Groups[1].Value), JsonSerializerOptions.Web)!;
    }

    private sealed record State(List<string> Words, int Bars);

    [GeneratedRegex("<pre id=\"seen\">(.*?)</pre>", RegexOptions.Singleline)]
    private static partial Regex Seen();

    [GeneratedRegex("<script>.*?</script>", RegexOptions.Singleline)]
    private static partial Regex Script();
}
