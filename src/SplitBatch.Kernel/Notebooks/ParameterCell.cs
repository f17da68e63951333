using System.Globalization;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace SplitBatch.Kernel.Notebooks;

/// <summary>
/// The cell tagged <c>parameters</c>: the values a reader may change. Values given from outside go into a cell tagged
/// <c>injected-parameters</c> right after it, so that the notebook still shows both.
/// </summary>
public sealed class ParameterCell
{
    /// <summary>The tag of the cell that holds the parameters.</summary>
    public const string Tag = "parameters";

    /// <summary>The tag of the cell that replaces some of them.</summary>
    public const string InjectedTag = "injected-parameters";

    private static readonly CSharpParseOptions Script = new(LanguageVersion.Latest, kind: Microsoft.CodeAnalysis.SourceCodeKind.Script);

    private readonly Notebook notebook;
    private readonly NotebookCell cell;
    private readonly Dictionary<string, ExpressionSyntax?> declared;

    private ParameterCell(Notebook notebook, NotebookCell cell)
    {
        this.notebook = notebook;
        this.cell = cell;
        declared = SyntaxFactory.ParseSyntaxTree(cell.Source, Script).GetCompilationUnitRoot().Members
            .Select(m =>
                m switch { FieldDeclarationSyntax f =>
                f.Declaration, GlobalStatementSyntax { Statement: LocalDeclarationStatementSyntax s } => s.Declaration, _ => null })
            .OfType<VariableDeclarationSyntax>()
            .SelectMany(d => d.Variables)
            .GroupBy(v => v.Identifier.Text)
            .ToDictionary(g => g.Key, g => g.Last().Initializer?.Value);
    }

    /// <summary>The names of the parameters, in the order of the cell.</summary>
    public IReadOnlyCollection<string> Names => declared.Keys;

    /// <summary>The first cell tagged <c>parameters</c>, or null when the notebook has none.</summary>
    public static ParameterCell? Find(Notebook notebook)
    {
        ArgumentNullException.ThrowIfNull(notebook);
        return notebook.Cells.FirstOrDefault(c => c.Kind == CellKind.Code && c.Tags.Contains(Tag)) is { } cell
            ? new ParameterCell(notebook, cell) : null;
    }

    /// <summary>The text a parameter has in the notebook; null when it is not a plain text.</summary>
    public string? TextOf(string name) =>
        declared.GetValueOrDefault(name) is LiteralExpressionSyntax { RawKind: (int)SyntaxKind.StringLiteralExpression } literal
            ? literal.Token.ValueText : null;

    /// <summary>
    /// Puts values in place of the notebook's own; an earlier injected cell is replaced. Without values only that is removed.
    /// </summary>
    /// <param name="values">Name to value. A text is written without quotes, a number with a point, a truth value as true or false;
    /// anything else is a C# expression.</param>
    /// <exception cref="NotebookException">A name is not in the cell, or a value is not of the parameter's kind.</exception>
    public void Inject(IReadOnlyDictionary<string, string> values)
    {
        ArgumentNullException.ThrowIfNull(values);
        foreach (var earlier in notebook.Cells.Where(c => c.Tags.Contains(InjectedTag)).ToList()) notebook.Remove(earlier);
        if (values.Count == 0) return;
        var lines = values.Select(v => $"{v.Key} = {Literal(v.Key, v.Value)};");
        notebook.InsertAfter(cell, "// Given when the notebook was run\n" + string.Join('\n', lines), InjectedTag);
    }

    private string Literal(string name, string text)
    {
        if (!declared.TryGetValue(name, out var initial))
        {
            throw new NotebookException(
                $"There is no parameter \"{name}\"; the parameters cell has: "
                + $"{string.Join(", ", declared.Keys.Order(StringComparer.Ordinal))}.");
        }

        var kind = (initial is PrefixUnaryExpressionSyntax { Operand: var operand } ? operand : initial)?.Kind();
        return kind switch
        {
            SyntaxKind.StringLiteralExpression => SymbolDisplay.FormatLiteral(text, quote: true),
            SyntaxKind.TrueLiteralExpression or SyntaxKind.FalseLiteralExpression =>
                bool.TryParse(text, out var truth) ? (truth ? "true" : "false") : throw Refuse("true or false"),
            SyntaxKind.NumericLiteralExpression when initial!.ToString().AsSpan().ContainsAny(".eE") =>
                double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number)
                    ? (text.AsSpan().ContainsAny(".eE") ? text.Trim() : text.Trim() + ".0")
                    : throw Refuse("a number with a decimal point, such as 0.05"),
            SyntaxKind.NumericLiteralExpression => NumberOf(text) ?? throw Refuse("a whole number, such as 24"),
            _ => IsExpression(text) ? text : throw Refuse("a C# expression"),
        };

        NotebookException Refuse(string accepted) => new($"The parameter \"{name}\" cannot be \"{text}\"; accepted: {accepted}.");
    }

    private static string? NumberOf(string text) =>
        long.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite,
            CultureInfo.InvariantCulture, out _) ? text.Trim() : null;

    private static bool IsExpression(string text) =>
        !string.IsNullOrWhiteSpace(text) && !SyntaxFactory.ParseExpression(text, options: Script).ContainsDiagnostics;
}
