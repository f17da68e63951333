using System.Globalization;
using System.Reflection;
using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Scripting;
using SplitBatch.Kernel.Cells;
using SplitBatch.Kernel.Engine;

namespace SplitBatch.Kernel.Host;

/// <summary>Words for what went wrong in a cell: for a person, and without folders of this machine.</summary>
internal static partial class CellErrors
{
    public static CellResult Interrupted() =>
        new(Plain("Interrupted", "The cell was interrupted. Variables of earlier cells are kept."), Interrupted: true);

    public static CellResult InterruptedAndStuck() =>
        new(Plain("Interrupted", "The cell was interrupted, but part of it could not be stopped; restart the kernel to go on."),
            Interrupted: true);

    public static CellResult Stuck() =>
        new(Plain("KernelStuck", "An earlier cell could not be stopped and still runs; restart the kernel to go on."));

    public static CellResult NoPackage(string why) =>
        new(new CellError("PackageError", why.Split('\n')[0], [.. $"PackageError: {why}".Split('\n')]));

    public static CellError From(CellOutcome failed, string code, IEnumerable<string>? known = null)
    {
        var exception = failed.Exception;
        while (exception is AggregateException { InnerExceptions.Count: 1 } or TargetInvocationException { InnerException: not null })
        {
            exception = exception.InnerException;
        }

        if ((exception as CompilationErrorException ?? exception?.InnerException as CompilationErrorException) is { } compilation)
        {
            return FromCompilation(compilation, code, known);
        }

        if (exception is null) return Plain("Error", failed.Message ?? "The cell failed.");
        var lines = new List<string>();
        for (var e = exception; e is not null; e = e.InnerException)
        {
            lines.Add((lines.Count == 0 ? "" : "caused by ") + $"{TypeName(e)}: {e.Message}");
            lines.AddRange(Frames(e));
        }

        return new CellError(TypeName(exception), exception.Message, lines);
    }

    private static CellError FromCompilation(CompilationErrorException compilation, string code, IEnumerable<string>? known)
    {
        var source = code.ReplaceLineEndings("\n").Split('\n');
        var errors = compilation.Diagnostics.Where(d => d.Severity == DiagnosticSeverity.Error).ToList();
        var lines = new List<string>();
        var hints = new HashSet<string>();
        foreach (var error in errors)
        {
            var at = error.Location.GetLineSpan().StartLinePosition;
            lines.Add(string.Create(
                CultureInfo.InvariantCulture,
                $"line {at.Line + 1}, column {at.Character + 1}: {error.Id}: {error.GetMessage(CultureInfo.InvariantCulture)}"));
            if (error.Location.IsInSource && at.Line < source.Length)
            {
                lines.Add("    " + source[at.Line]);
                lines.Add("    " + new string([.. source[at.Line].Take(at.Character).Select(c => c == '\t' ? '\t' : ' ')]) + "^");
            }

            if (CompilerHints.For(error.Id, error.GetMessage(CultureInfo.InvariantCulture), known) is { } hint && hints.Add(hint))
                lines.Add("  " + hint);
        }

        return new CellError("CompilationError", lines.Count > 0 ? lines[0] : compilation.Message, lines);
    }

    /// <summary>The frames of the cell and what it called; the engine's own frames below it are left out.</summary>
    private static IEnumerable<string> Frames(Exception exception)
    {
        foreach (var line in (exception.StackTrace ?? "").ReplaceLineEndings("\n").Split('\n'))
        {
            if (line.Length == 0 || line.StartsWith("---", StringComparison.Ordinal)) continue;
            if (line.Contains(" Microsoft.CodeAnalysis.Scripting.", StringComparison.Ordinal)) yield break;
            if (CellFrame().Match(line) is { Success: true } cell)
            {
                yield return cell.Groups["line"] is { Success: true } number ? $"   at the cell, line {number.Value}" : "   at the cell";
                yield break;
            }

            yield return OtherCell().Replace(Folder().Replace(line, " in ${file}:line "), "${what}, line ${line} of its cell");
        }
    }

    private static string TypeName(Exception exception) => exception.GetType().Name;

    private static CellError Plain(string name, string message) => new(name, message, [$"{name}: {message}"]);

    [GeneratedRegex(@"^\s+at Submission#\d+\.<<Initialize>>.*?(:line (?<line>\d+))?$")]
    private static partial Regex CellFrame();

    [GeneratedRegex(@"Submission#\d+\.(?<what>.*) in cell:line (?<line>\d+)$")]
    private static partial Regex OtherCell();

    [GeneratedRegex(@" in [^:]*(?::[^:]*)?[/\\](?<file>[^/\\:]+):line ")]
    private static partial Regex Folder();
}
