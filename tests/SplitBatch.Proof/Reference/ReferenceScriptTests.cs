using System.Diagnostics;
using System.Runtime.CompilerServices;

namespace SplitBatch.Proof.Reference;

/// <summary>The quick ones of the reference scripts, run again: what the other tests read is what R and Python print.</summary>
public class ReferenceScriptTests
{
    [ReferenceTheory]
    [InlineData("panel/d-prime.R", "panel/ratings.R", "lab/critical-difference.R", "methods/methods_r.R")]
    [InlineData("panel/sfc64.py", "bitterness/kinetics.py")]
    public void Scripts_print_what_the_tests_read(params string[] scripts)
    {
        var (code, said) = Regenerate(scripts);
        Assert.True(code == 0, said);
        Assert.Equal(scripts.Select(script => $"{script}: as before"), said.Split('\n', StringSplitOptions.RemoveEmptyEntries));
    }

    [ReferenceTheory]
    [InlineData("panel/d-prime.R")]
    public void A_value_that_differs_is_told(string script)
    {
        using var copy = new ReferenceCopy();
        string csv = Path.Combine(copy.Path, Path.ChangeExtension(script, ".csv"));
        File.WriteAllText(csv, File.ReadAllText(csv).Replace("1.722926765", "1.722936765", StringComparison.Ordinal));
        var (code, said) = Regenerate([script], copy.Path);
        Assert.Equal(1, code);
        Assert.Contains("row 2: triangle,20,11,0.95,1.722936765", said, StringComparison.Ordinal);
    }

    private static (int Code, string Said) Regenerate(string[] scripts, string? folder = null)
    {
        var start = new ProcessStartInfo(Installed.DebianPython,
            [Path.Combine(folder ?? ReferenceCopy.Source, "regenerate.py"), .. scripts]) { RedirectStandardOutput = true };
        using var process = Process.Start(start)!;
        string said = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, said);
    }

    /// <summary>The scripts and their values in a scratch folder.</summary>
    private sealed class ReferenceCopy : IDisposable
    {
        private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("splitbatch-reference-");

        public ReferenceCopy()
        {
            foreach (string file in Directory.GetFiles(Source, "*", SearchOption.AllDirectories))
            {
                string to = System.IO.Path.Combine(Path, System.IO.Path.GetRelativePath(Source, file));
                Directory.CreateDirectory(System.IO.Path.GetDirectoryName(to)!);
                File.Copy(file, to);
            }
        }

        public static string Source { get; } = System.IO.Path
            .GetFullPath(System.IO.Path.Combine(System.IO.Path.GetDirectoryName(Here())!, "..", "..", "reference"));

        public string Path => folder.FullName;

        public void Dispose() => folder.Delete(recursive: true);

        private static string Here([CallerFilePath] string path = "") => path;
    }
}

/// <summary>
/// A test that needs R and Debian's Python with SciPy: skipped, with the reason, on a machine without; never skipped in continuous
/// integration.
/// </summary>
internal sealed class ReferenceTheoryAttribute : TheoryAttribute
{
    public ReferenceTheoryAttribute() => Skip = Installed.Reason(() =>
        !Installed.Runs("Rscript", "-e", "0") ? "R is not installed on this machine: apt-get install r-base-core."
        : !Installed.Runs(Installed.DebianPython, "-c", "import numpy, scipy")
            ? "SciPy is not installed on this machine: apt-get install python3-scipy."
            : null);
}
