using System.Diagnostics;
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
    /// <summary>The most lines that an error shows.</summary>
    private const int MostLines = 60;

    public static CellResult Interrupted(bool leftBehind) => new(
        Plain("Interrupted", leftBehind
            ? "The cell was interrupted. It is in a call into a library that cannot be stopped from outside and goes on by itself "
                + "until that returns; nothing that it does is kept. Variables of earlier cells are kept. To end it at once, restart "
                + "the kernel."
            : "The cell was interrupted. Variables of earlier cells are kept."),
        Interrupted: true);

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

        return exception is null ? Plain("Error", failed.Message ?? "The cell failed.") : From(exception);
    }

    public static CellError From(Exception exception)
    {
        var lines = new List<string>();
        for (var e = exception; e is not null && lines.Count < MostLines; e = e.InnerException)
        {
            lines.Add((lines.Count == 0 ? "" : "caused by ") + $"{TypeName(e)}: {e.Message}");
            lines.AddRange(e is InsufficientExecutionStackException ? Innermost(e) : Frames(e).Take(MostLines));
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

    /// <summary>
    /// Where a stack was full. Its whole text has a line for each of a hundred thousand calls, and takes as long to make.
    /// </summary>
    private static IEnumerable<string> Innermost(Exception exception) =>
        new StackTrace(exception, fNeedFileInfo: false).GetFrames().Select(frame => frame.GetMethod()).OfType<MethodBase>()
            .Where(method => method.Module.Assembly.IsCollectible).Take(4)
            .Select(method => $"   at {method.Name}({string.Join(", ", method.GetParameters().Select(p => p.ParameterType.Name))})");

    private static string TypeName(Exception exception) => exception.GetType().Name;

    private static CellError Plain(string name, string message) => new(name, message, [$"{name}: {message}"]);

    [GeneratedRegex(@"^\s+at Submission#\d+\.<<Initialize>>.*?(:line (?<line>\d+))?$")]
    private static partial Regex CellFrame();

    [GeneratedRegex(@"Submission#\d+\.(?<what>.*) in cell:line (?<line>\d+)$")]
    private static partial Regex OtherCell();

    [GeneratedRegex(@" in [^:]*(?::[^:]*)?[/\\](?<file>[^/\\:]+):line ")]
    private static partial Regex Folder();
}
