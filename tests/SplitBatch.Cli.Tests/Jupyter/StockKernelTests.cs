using System.Text.RegularExpressions;

namespace SplitBatch.Cli.Jupyter;

/// <summary>The library in the stock .NET notebook kernel, the real one. <c>.ci/run</c> installs it.</summary>
[Collection(JupyterTests.Name)]
public sealed partial class StockKernelTests(InstalledKernel kernel)
{
    public static TheoryData<string> Tests =>
        [.. TestName().Matches(File.ReadAllText(Repository.Path("tests", "jupyter", "test_stock.py"))).Select(m => m.Groups[1].Value)];

    [StockTheory]
    [MemberData(nameof(Tests))]
    public Task In_the_stock_kernel(string test) => kernel.AssertPassedAsync("test_stock", test, start =>
    {
        start.Environment["STOCK"] = StockKernel.Tool;
        start.Environment["LIBRARY"] = Path.Combine(Path.GetDirectoryName(CommandLine.Program)!, "SplitBatch.Display.dll");
    });

    [GeneratedRegex(@"^    def (test_\w+)", RegexOptions.Multiline)]
    private static partial Regex TestName();
}

/// <summary>The stock .NET notebook kernel on this machine.</summary>
internal static class StockKernel
{
    private const string Name = "dotnet-interactive";

    private static readonly string? Found =
        new[] { Environment.GetEnvironmentVariable("SPLITBATCH_STOCK_KERNEL"), Installed.Program(Name) }.FirstOrDefault(File.Exists);

    /// <summary>The program.</summary>
    public static string Tool => Found ?? throw new InvalidOperationException($"{Name} is not installed; .ci/run installs it.");

    /// <summary>Why tests with it cannot be run here; null when they can.</summary>
    public static string? Missing => DebianJupyter.Missing
        ?? (Found is null
            ? "The stock kernel is not installed: dotnet tool install --global Microsoft.dotnet-interactive --version 1.0.712001, or name "
                + "it in SPLITBATCH_STOCK_KERNEL."
            : null);
}

/// <summary>
/// A test that needs the stock kernel: skipped, with the reason, on a machine without it; never skipped in continuous integration.
/// </summary>
internal sealed class StockFactAttribute : FactAttribute
{
    public StockFactAttribute() => Skip = Installed.Reason(() => StockKernel.Missing);
}

/// <summary>As <see cref="StockFactAttribute"/>, for tests with data.</summary>
internal sealed class StockTheoryAttribute : TheoryAttribute
{
    public StockTheoryAttribute() => Skip = Installed.Reason(() => StockKernel.Missing);
}
