using System.Runtime.CompilerServices;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using SplitBatch.Kernel.Engine;

namespace SplitBatch.Kernel.Host;

/// <summary>What the completion key offers of the library in an empty cell.</summary>
public sealed partial class OfferedNamesTests(HostFixture kernel) : IClassFixture<HostFixture>
{
    [Fact]
    public async Task An_empty_cell_offers_what_a_cell_begins_with_and_no_result_types()
    {
        var offered = (await kernel.Host.CompleteAsync("", 0)).Items.Select(item => item.Text).ToHashSet();
        Assert.Superset(new HashSet<string> { "Trial", "Protocol", "Kettle", "HopLot", "DifferenceTest", "LabComparison", "Power",
            "HopForm" }, offered);
        Assert.DoesNotContain("BiasGroup", offered);
        Assert.DoesNotContain("BiasCharts", offered);
        var ours = StartSetting.Library.Where(type => !type.IsNested).Select(type => type.Name.Split('`')[0]).Distinct().ToList();
        Assert.InRange(ours.Count(offered.Contains), 100, 155); // Of some 470 public types.
    }

    [Fact]
    public async Task What_the_curated_notebooks_name_is_offered()
    {
        var offered = (await kernel.Host.CompleteAsync("", 0)).Items.Select(item => item.Text).ToHashSet();
        var ours = StartSetting.Library.Where(type => !type.IsNested).Select(type => type.Name).ToHashSet();
        var named = Directory.EnumerateFiles(NotebooksFolder(), "*.ipynb", SearchOption.AllDirectories)
            .SelectMany(file => JsonNode.Parse(File.ReadAllText(file))!["cells"]!.AsArray())
            .Where(cell => (string?)cell!["cell_type"] == "code")
            .SelectMany(cell => Name().Matches(string.Concat(cell!["source"]!.AsArray().Select(line => (string)line!)).Split("//")[0]))
            .Select(match => match.Value).Where(ours.Contains).ToHashSet();
        Assert.True(named.Count > 20);
        Assert.Empty(named.Except(offered));
    }

    private static string NotebooksFolder([CallerFilePath] string here = "") =>
        Path.Combine(Path.GetDirectoryName(here)!, "..", "..", "..", "notebooks");

    [GeneratedRegex("""(?<![.\w"])[A-Z]\w+(?=[.(])""")]
    private static partial Regex Name();
}
