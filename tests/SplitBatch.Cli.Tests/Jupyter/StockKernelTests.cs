using System.Text.RegularExpressions;

namespace SplitBatch.Cli.Jupyter;

/// <summary>The library in the stock .NET notebook kernel, the real one. <c>.ci/run</c> installs it.</summary>
[Collection(JupyterTests.Name)]
public sealed partial class StockKernelTests(InstalledKernel kernel)
{
    private const string Name = "dotnet-interactive";

    public static TheoryData<string> Tests =>
        [.. TestName().Matches(File.ReadAllText(Repository.Path("tests", "jupyter", "test_stock.py"))).Select(m => m.Groups[1].Value)];

    private static string? Tool { get; } = new[] { Environment.GetEnvironmentVariable("SPLITBATCH_STOCK_KERNEL"), Installed.Program(Name) }.FirstOrDefault(File.Exists);

    [StockTheory]
    [MemberData(nameof(Tests))]
    public Task In_the_stock_kernel(string test) => kernel.AssertPassedAsync("test_stock", test, start =>
    {
        start.Environment["STOCK"] = Tool ?? throw new InvalidOperationException($"{Name} is not installed; .ci/run installs it.");
        start.Environment["LIBRARY"] = Path.Combine(Path.GetDirectoryName(CommandLine.Program)!, "SplitBatch.Display.dll");
    });

    [GeneratedRegex(@"^    def (test_\w+)", RegexOptions.Multiline)]
    private static partial Regex TestName();

    private sealed class StockTheoryAttribute : TheoryAttribute
    {
        public StockTheoryAttribute() => Skip = Installed.Reason(() => DebianJupyter.Missing
            ?? (Tool is null ? "The stock kernel is not installed: dotnet tool install --global Microsoft.dotnet-interactive --version 1.0.712001, or name it in SPLITBATCH_STOCK_KERNEL." : null));
    }
}
