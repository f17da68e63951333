using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis.Completion;
using Microsoft.CodeAnalysis.QuickInfo;
using Microsoft.CodeAnalysis.Scripting;
using Microsoft.CodeAnalysis.Tags;
using Microsoft.CodeAnalysis.Text;
using Microsoft.DotNet.Interactive.Commands;
using Microsoft.DotNet.Interactive.CSharp;
using SplitBatch.Kernel.Cells;

namespace SplitBatch.Kernel.Engine;

/// <summary>Answers questions about a cell that is being written. A running cell does not hold them up, nor they it.</summary>
/// <param name="last">Tells the cell before it.</param>
internal sealed partial class CellHelp(Func<Script?> last) : IDisposable
{
    private static readonly ImmutableArray<string> Kinds =
    [
        WellKnownTags.Class, WellKnownTags.Constant, WellKnownTags.Delegate, WellKnownTags.Enum, WellKnownTags.EnumMember,
        WellKnownTags.Event, WellKnownTags.ExtensionMethod, WellKnownTags.Field, WellKnownTags.Interface, WellKnownTags.Intrinsic,
        WellKnownTags.Keyword, WellKnownTags.Label, WellKnownTags.Local, WellKnownTags.Method, WellKnownTags.Module,
        WellKnownTags.Namespace, WellKnownTags.Operator, WellKnownTags.Parameter, WellKnownTags.Property, WellKnownTags.RangeVariable,
        WellKnownTags.Reference, WellKnownTags.Structure, WellKnownTags.TypeParameter, WellKnownTags.Snippet,
    ];

    private static readonly ImmutableArray<string> Types = [WellKnownTags.Class, WellKnownTags.Structure, WellKnownTags.Enum,
        WellKnownTags.Interface];

    private readonly HelpDocument documents = new();

    /// <summary>What could stand at the cursor, whatever stands before it already.</summary>
    public async Task<IReadOnlyList<Completion>> CompleteAsync(string code, int cursor, CancellationToken cancellation)
    {
        var document = await documents.OfAsync(code, last(), cancellation).ConfigureAwait(false);
        var found = await CompletionService.GetService(document)!
            .GetCompletionsAsync(document, cursor, cancellationToken: cancellation).ConfigureAwait(false);

        // What would change the text elsewhere, as by a using, cannot be asked for here.
        var items = found.ItemsList.Where(i => !i.IsComplexTextEdit
            && !i.FilterText.StartsWith(DeclaredMember.Hidden, StringComparison.Ordinal)
            && !(i.Tags.Any(Types.Contains) && OfferedNames.Hides(i.FilterText)));
        return [.. items.Select(i => new Completion(i.FilterText, Kinds.FirstOrDefault(i.Tags.Contains) ?? ""))];
    }

    /// <summary>What stands at the cursor, as Markdown; null or blank where nothing is known.</summary>
    public async Task<string?> HoverAsync(string code, int cursor, CancellationToken cancellation)
    {
        var document = await documents.OfAsync(code, last(), cancellation).ConfigureAwait(false);
        var found = await QuickInfoService.GetService(document)!.GetQuickInfoAsync(document, cursor, cancellation).ConfigureAwait(false);
        return found?.ToMarkdownString();
    }

    /// <summary>The ways to make the call within whose parentheses the cursor stands.</summary>
    public async Task<IReadOnlyList<CallSignature>> SignaturesAsync(string code, int cursor, CancellationToken cancellation)
    {
        var document = await documents.OfAsync(code, last(), cancellation).ConfigureAwait(false);
        var at = SourceText.From(code).Lines.GetLinePosition(cursor);
        var request = new RequestSignatureHelp(code, new Microsoft.DotNet.Interactive.LinePosition(at.Line, at.Character));
        var found = await EngineParts.SignaturesAsync(null, document, request, cancellation).ConfigureAwait(false);
        return found is null ? [] : [.. found.Signatures.Select(s => new CallSignature(
            s.Label,
            Unbroken(s.Documentation?.Value),
            [.. s.Parameters.Select(p => (p.Label, Unbroken(p.Documentation?.Value)))]))];
    }

    /// <summary>A paragraph for the summary and for each parameter, though the source broke its lines wherever they were full.</summary>
    private static string Unbroken(string? text) =>
        FullLine().Replace((text ?? "").ReplaceLineEndings("\n"), " ");

    [GeneratedRegex(@" *\n(?![\w.]+: )(?=\S) *")]
    private static partial Regex FullLine();

    /// <inheritdoc/>
    public void Dispose() => documents.Dispose();
}
