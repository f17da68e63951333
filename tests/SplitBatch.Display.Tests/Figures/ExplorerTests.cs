using System.Text.Json.Nodes;
using System.Xml.Linq;
using Plotly.NET;
using SplitBatch.Display.Charts;
using SplitBatch.Display.Tables;
using SplitBatch.Numbers;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Display.Figures;

/// <summary>Charts with sliders: at every position exactly the marks of that position are seen, by Plotly's own rules.</summary>
public class ExplorerTests
{
    private static readonly Dictionary<string, Explorer> All = new()
    {
        ["power"] = Protocol.Triangle.ExplorePower(tasters: 20),
        ["counts"] = Protocol.Triangle.ExploreCounts(tasters: 20),
        ["another"] = Protocol.DuoTrio.ExploreCounts(tasters: 33, discriminators: 0.25, alpha: 0.02),
        ["grows"] = Protocol.Triangle.ExploreManyPanels(tasters: 20, seed: 1),
    };

    public static TheoryData<string> Names => [.. All.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void The_still_form_is_the_first_position_and_says_itself(string name)
    {
        var explorer = All[name];
        Assert.Equal(explorer.At([.. explorer.Sliders.Select(slider => slider.Start)]).Where(mark => mark is not Note),
            explorer.Still.Marks);
        Assert.NotNull(XDocument.Parse(explorer.Still.ToSvg()).Root);
        Assert.NotNull(XDocument.Parse(explorer.Still.ToSvg(360)).Root);
        Assert.Contains(explorer.Sliders[0].Name, explorer.AltText, StringComparison.Ordinal);
        Assert.NotEmpty(explorer.Still.Numbers.Rows);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Wherever_the_sliders_stand_Plotly_shows_the_marks_of_that_place(string name)
    {
        var explorer = All[name];
        var figure = JsonNode.Parse(GenericChart.toFigureJson(explorer.ToPlotly()))!;
        var sliders = figure["layout"]!["sliders"]!.AsArray();
        Assert.Equal(explorer.Sliders.Select(slider => slider.Steps.Count), sliders.Select(slider => slider!["steps"]!.AsArray().Count));
        Assert.Equal(Seen(figure), Expected(explorer, [.. explorer.Sliders.Select(slider => slider.Start)]));

        var random = new SeededRandom(7);
        for (var move = 0; move < 40; move++)
        {
            // One slider after the other, as a reader moves them; the others stay where they were.
            var number = random.NextBelow(sliders.Count);
            var step = random.NextBelow(explorer.Sliders[number].Steps.Count);
            Apply(figure, sliders[number]!["steps"]![step]!["args"]!.AsArray());
            sliders[number]!["active"] = step;
            Assert.Equal(Expected(explorer, [.. sliders.Select(slider => (int)slider!["active"]!)]), Seen(figure));
        }
    }

    [Fact]
    public void The_power_that_is_read_off_is_the_exact_one()
    {
        var explorer = All["power"];
        var (tasters, share, error) = (explorer.Sliders[0].Steps.ToList().IndexOf("30"),
            explorer.Sliders[1].Steps.ToList().IndexOf("30 %"), explorer.Sliders[2].Steps.ToList().IndexOf("5 %"));
        var marks = explorer.At(tasters, share, error);

        // Check values, 4.4: n = 30, share of discriminators 30 %, alpha .05: power .709083, 15 right needed (ISO 4120, table A.1).
        Assert.Equal(0.709083, Assert.Single(Assert.Single(marks.OfType<Dots>()).Points).Y, 0.00006);
        Assert.Equal("15 of 30 needed; shown in 71 % of panels.", Assert.Single(marks.OfType<Note>()).Text);
        Assert.Equal(15 - 0.5, Assert.Single(All["counts"].At(tasters, share, error).OfType<Rule>()).Value);
    }

    [Fact]
    public void Values_that_were_asked_for_become_steps()
    {
        var explorer = All["another"];
        Assert.Equal(["33", "25 %", "2 %"], explorer.Sliders.Select(slider => slider.Steps[slider.Start]));
    }

    [Fact]
    public void What_cannot_be_moved_is_refused()
    {
        Assert.Throws<ArgumentException>(() => Protocol.PairedTwoSided.ExplorePower());
        Assert.Throws<NotApplicableException>(() => Protocol.ANotA.ExplorePower());
        Assert.Throws<ArgumentOutOfRangeException>(() => Protocol.Triangle.ExplorePower(tasters: 3));
        Assert.Throws<ArgumentOutOfRangeException>(() => Protocol.Triangle.ExplorePower(discriminators: 30));
        var still = All["grows"].Still;
        Assert.Throws<ArgumentException>(() => new Explorer(still, [], []) { Title = "t" });
        Assert.Throws<ArgumentException>(() => new Explorer(still, [new Slider("s", ["a"], 1)], []) { Title = "t" });
        Assert.Throws<ArgumentException>(
            () => new Explorer(still, [new Slider("s", ["a"], 0)], [new Layer(new Rule(0), 0, 0)]) { Title = "t" });
    }

    /// <summary>The numbers of the traces that the layers of a position make; marks of the whole axis are shapes and have none.</summary>
    private static List<int> Expected(Explorer explorer, int[] steps)
    {
        var traced = explorer.Layers.Where(layer => layer.Mark is not Rule { Along: Along.Y }).ToList();
        return [.. Enumerable.Range(0, traced.Count)
            .Where(i => traced[i].At.Zip(steps).All(pair => pair.First is null || pair.First == pair.Second))];
    }

    private static List<int> Seen(JsonNode figure)
    {
        var traces = figure["data"]!.AsArray();
        return [.. Enumerable.Range(0, traces.Count).Where(i => IsSeen(traces[i]!))];
    }

    private static bool IsSeen(JsonNode trace)
    {
        if (trace["visible"] is JsonValue visible && visible.TryGetValue<bool>(out var shown) && !shown) return false;
        if (trace["opacity"] is { } opacity && (double)opacity == 0) return false;
        var mode = (string?)trace["mode"] ?? "bar";
        if (mode.Contains("lines", StringComparison.Ordinal)) return Number(trace["line"]?["width"]) != 0;
        return mode == "text" ? (string?)trace["textfont"]?["color"] != "rgba(0,0,0,0)" : Number(trace["marker"]?["opacity"]) != 0;
    }

    private static double Number(JsonNode? value) => value is null ? 1 : (double)value;

    /// <summary>Plotly's <c>update</c> on the data: each attribute gets, trace by trace, the values of its list.</summary>
    private static void Apply(JsonNode figure, JsonArray args)
    {
        var traces = args[2]!.AsArray().Select(i => figure["data"]![(int)i!]!.AsObject()).ToList();
        foreach (var (path, values) in args[0]!.AsObject())
        {
            for (var i = 0; i < traces.Count; i++)
            {
                var parts = path.Split('.');
                var place = parts.Length == 1 ? traces[i] : (traces[i][parts[0]] ??= new JsonObject()).AsObject();
                place[parts[^1]] = values![i]!.DeepClone();
            }
        }
    }
}
