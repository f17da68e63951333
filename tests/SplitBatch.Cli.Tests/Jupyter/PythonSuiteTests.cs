using System.Text.RegularExpressions;

namespace SplitBatch.Cli.Jupyter;

/// <summary>The Python tests of <c>tests/jupyter</c>, each as one test here.</summary>
[Collection(JupyterTests.Name)]
public sealed partial class PythonSuiteTests(InstalledKernel kernel)
{
    /// <summary>All twelve tests of jupyter_kernel_test 0.4.5. One that is skipped, because its samples are missing, fails here.</summary>
    public static TheoryData<string> Offered =>
    [
        "test_kernel_info", "test_execute_stdout", "test_execute_stderr", "test_completion", "test_is_complete", "test_pager",
        "test_error", "test_execute_result", "test_display_data", "test_history", "test_inspect", "test_clear_output",
    ];

    public static TheoryData<string> Kernel => [.. NamesIn("test_kernel")];

    public static TheoryData<string> Lives => [.. NamesIn("test_lives")];

    public static TheoryData<string> Clients => [.. NamesIn("test_clients")];

    [JupyterTheory]
    [MemberData(nameof(Offered))]
    public Task The_kernel_passes_jupyter_kernel_test(string test) => kernel.AssertPassedAsync("test_protocol", test);

    [JupyterTheory]
    [MemberData(nameof(Kernel))]
    public Task The_installed_kernel(string test) => kernel.AssertPassedAsync("test_kernel", test);

    [JupyterTheory]
    [MemberData(nameof(Lives))]
    public Task The_life_of_a_kernel(string test) => kernel.AssertPassedAsync("test_lives", test);

    [JupyterTheory]
    [MemberData(nameof(Clients))]
    public Task A_notebook_client(string test) => kernel.AssertPassedAsync("test_clients", test);

    /// <summary>The short version of <c>interrupts.py</c>; <c>tests/reports</c> has the long one.</summary>
    [JupyterFact]
    public Task Cells_of_twenty_kinds_are_interrupted() =>
        kernel.AssertPassedAsync("test_interrupts", "test_no_kind_of_cell_takes_the_kernel_with_it");

    private static IEnumerable<string> NamesIn(string module) =>
        Name().Matches(File.ReadAllText(Repository.Path("tests", "jupyter", module + ".py"))).Select(m => m.Groups[1].Value);

    [GeneratedRegex(@"^    def (test_\w+)", RegexOptions.Multiline)]
    private static partial Regex Name();
}
