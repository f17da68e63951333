using System.Diagnostics;
using SplitBatch.Cli.Jupyter;

namespace SplitBatch.Cli.Packages;

/// <summary>The library from its packages: in a script, in a plain project, in the stock .NET notebook.</summary>
[Collection(PackageTests.Name)]
public sealed class ExampleTests(PackedPackages packages)
{
    [Fact]
    public async Task A_script_of_one_file_counts_a_panel_and_draws_it()
    {
        var folder = packages.Example("script");
        var said = await packages.RunAsync(folder, "dotnet", "run", "app.cs");
        Assert.Contains("13 right of 24 (triangle): a difference is shown at 5 %", said, StringComparison.Ordinal);
        Assert.StartsWith("<svg", File.ReadAllText(Path.Combine(folder, "count.svg")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_plain_project_matches_two_charges() =>
        Assert.Contains("Tinseth", await packages.RunAsync(packages.Example("plain"), "dotnet", "run"), StringComparison.Ordinal);
}

/// <summary>The packages in the stock .NET notebook kernel, the real one.</summary>
[Collection(PackageTests.Name)]
public sealed class StockNotebookTests(PackedPackages packages)
{
    [StockFact]
    public async Task The_stock_notebook_loads_the_packages_by_one_line_each()
    {
        var start = new ProcessStartInfo(Installed.DebianPython, ["-B", "-m", "unittest", "-v", "test_packages"])
        {
            WorkingDirectory = Repository.Path("tests", "jupyter"),
        };
        packages.Enter(start);
        start.Environment["STOCK"] = StockKernel.Tool;
        Assert.Contains("Ran 4 tests", await PackedPackages.EndAsync(start), StringComparison.Ordinal);
    }
}
