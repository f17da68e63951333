using System.Diagnostics;
using System.Runtime.CompilerServices;

namespace SplitBatch.Proof.Sentences;

/// <summary>The short version of the judged sentences; the long one is published beside this project.</summary>
public class SentenceReaderTests
{
    private static readonly Lazy<string> Few = new(() => Print(trials: 20, first: 1));

    [SentenceFact]
    public void Every_sentence_of_random_trials_is_read_and_true()
    {
        var (code, said, told) = Read(Print(trials: 200, first: 1001));
        Assert.True(code == 0, told);
        Assert.Contains("200 trials", said, StringComparison.Ordinal);
        Assert.Contains("; 0 not read, 0 false.", said, StringComparison.Ordinal);
    }

    [SentenceTheory]
    [InlineData("a difference is shown", "no difference is shown, which does not mean that there is none", "difference")]
    [InlineData(" is ruled out in this task (", " is not ruled out in this task (", "not read")]
    [InlineData("guessing gives 1", "guessing gives 2", "answers_right")]
    public void A_sentence_that_is_false_or_new_is_told(string words, string others, string kind)
    {
        Assert.Contains(words, Few.Value, StringComparison.Ordinal);
        var (code, _, told) = Read(Few.Value.Replace(words, others, StringComparison.Ordinal));
        Assert.Equal(1, code);
        Assert.Contains(kind, told, StringComparison.Ordinal);
    }

    private static string Print(int trials, int first)
    {
        using var lines = new StringWriter();
        SentenceRun.Write(trials, first, captionsOfEach: 20, lines);
        return lines.ToString();
    }

    private static (int Code, string Said, string Told) Read(string lines, [CallerFilePath] string here = "")
    {
        var reader = Path.Combine(Path.GetDirectoryName(here)!, "..", "..", "reference", "sentences", "read_sentences.py");
        using var process =
            Process.Start(new ProcessStartInfo(Installed.DebianPython, [reader])
            {
                RedirectStandardInput = true,
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            })!;
        var (said, told) = (process.StandardOutput.ReadToEndAsync(), process.StandardError.ReadToEndAsync());
        process.StandardInput.Write(lines);
        process.StandardInput.Close();
        process.WaitForExit();
        return (process.ExitCode, said.Result, told.Result);
    }
}

/// <summary>
/// A test that needs Debian's Python with SciPy: skipped, with the reason, on a machine without; never skipped in continuous integration.
/// </summary>
internal sealed class SentenceFactAttribute : FactAttribute
{
    public SentenceFactAttribute() => Skip = Reason;

    internal static string? Reason => Installed.Reason(() =>
        Installed.Runs(Installed.DebianPython, "-c", "import numpy, scipy")
            ? null
            : "SciPy is not installed on this machine: apt-get install python3-scipy.");
}

/// <inheritdoc cref="SentenceFactAttribute"/>
internal sealed class SentenceTheoryAttribute : TheoryAttribute
{
    public SentenceTheoryAttribute() => Skip = SentenceFactAttribute.Reason;
}
