using System.Text;
using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.Text;
using SplitBatch.Kernel.Cells;
using SplitBatch.Kernel.Engine;

namespace SplitBatch.Kernel.Host;

/// <content>Help while a cell is being written. Offsets are UTF-16 code units, as C# counts.</content>
public sealed partial class KernelHost
{
    private static readonly CSharpParseOptions Script = new(LanguageVersion.Latest, kind: SourceCodeKind.Script);

    /// <inheritdoc/>
    /// <exception cref="ArgumentOutOfRangeException">The cursor lies outside the code.</exception>
    public async Task<Completions> CompleteAsync(string code, int cursor, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(code);
        var at = ToLine(code, cursor);
        var start = cursor;
        while (start > 0 && (char.IsLetterOrDigit(code[start - 1]) || code[start - 1] == '_')) start--;
        var typed = code[start..cursor];
        await StartAsync(cancellation).ConfigureAwait(false);
        var found = await engine!.CompleteAsync(code, at, cancellation).ConfigureAwait(false);
        var items = found
            .Select(c => c with { Text = Plain(c.Text) })
            .Where(c => c.Text.StartsWith(typed, StringComparison.OrdinalIgnoreCase))
            .DistinctBy(c => c.Text)
            .OrderBy(c => !c.Text.StartsWith(typed, StringComparison.Ordinal))
            .ThenBy(c => c.Text, StringComparer.Ordinal)
            .ToList();
        return new Completions(start, cursor, items);
    }

    /// <inheritdoc/>
    /// <exception cref="ArgumentOutOfRangeException">The cursor lies outside the code.</exception>
    public async Task<MimeBundle?> InspectAsync(string code, int cursor, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(code);
        var at = ToLine(code, cursor);
        await StartAsync(cancellation).ConfigureAwait(false);
        var text = await engine!.HoverAsync(code, at, cancellation).ConfigureAwait(false);
        if (!string.IsNullOrWhiteSpace(text)) return WithExample(WithoutMarks(text), text);

        var found = await engine.SignaturesAsync(code, at, cancellation).ConfigureAwait(false);
        if (found.Count == 0) return null;
        var plain = string.Join("\n\n", found.Select(Describe));
        return WithExample(plain, string.Join("\n\n", found.Select(s => $"```csharp\n{s.Label}\n```\n{s.Documentation}".TrimEnd())));
    }

    /// <inheritdoc/>
    public Completeness IsComplete(string code)
    {
        ArgumentNullException.ThrowIfNull(code);
        var tree = SyntaxFactory.ParseSyntaxTree(code, Script);
        if (!SyntaxFactory.IsCompleteSubmission(tree)) return Completeness.Incomplete;
        return tree.GetDiagnostics().Any(d => d.Severity == DiagnosticSeverity.Error && d.Id != "CS8057") ? Completeness.Invalid
            : Completeness.Complete;
    }

    private static MimeBundle WithExample(string plain, string markdown) => Examples.For(plain) is { } code
        ? Described($"{plain}\n\nExample: {code}", $"{markdown}\n\nExample:\n```csharp\n{code}\n```")
        : Described(plain, markdown);

    private static MimeBundle Described(string plain, string markdown) =>
        new(new Dictionary<string, string> { ["text/plain"] = plain.ReplaceLineEndings("\n"), ["text/markdown"] = Paragraphs(markdown) });

    /// <summary>Markdown whose lines stay lines: outside of code, what one line break parts is one paragraph.</summary>
    private static string Paragraphs(string markdown)
    {
        var text = new StringBuilder();
        var code = false;
        foreach (var line in markdown.ReplaceLineEndings("\n").Split('\n'))
        {
            if (!code && line.Length == 0) continue;
            text.Append(text.Length == 0 ? "" : code ? "\n" : "\n\n").Append(line);
            code ^= line.StartsWith("```", StringComparison.Ordinal);
        }

        return text.ToString();
    }

    private static LinePosition ToLine(string code, int position)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(position);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(position, code.Length);
        return SourceText.From(code).Lines.GetLinePosition(position);
    }

    private static string Describe(CallSignature signature) =>
        string.Join('\n', new[] { signature.Label, WithoutMarks(signature.Documentation) }
            .Concat(signature.Parameters.Where(p => p.Documentation.Length > 0)
                .Select(p => $"  {p.Label}: {WithoutMarks(p.Documentation)}"))
            .Where(l => l.Length > 0));

    private static string Plain(string text) =>
        text.Contains('$', StringComparison.Ordinal) ? Snippet().Replace(text, "").TrimEnd('(', ')') : text;

    private static string WithoutMarks(string markdown) => Fence().Replace(markdown, "").Trim();

    [GeneratedRegex(@"\$\{?\d+(:[^}]*)?\}?")]
    private static partial Regex Snippet();

    [GeneratedRegex(@"^```.*$\n?|(?<=\W|^)[*_`]+|[*_`]+(?=\W|$)", RegexOptions.Multiline)]
    private static partial Regex Fence();
}
