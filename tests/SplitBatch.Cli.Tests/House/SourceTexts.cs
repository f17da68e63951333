using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace SplitBatch.Cli.House;

/// <summary>Every sentence that a user can read, as the compiler's parser finds it in the sources and as the notebooks hold it.</summary>
internal static partial class SourceTexts
{
    /// <summary>The source files, by their path from <c>src</c>.</summary>
    public static IEnumerable<(string Path, SyntaxNode Root)> Sources() =>
        from file in Directory.EnumerateFiles(Repository.Path("src"), "*.cs", SearchOption.AllDirectories)
        let path = System.IO.Path.GetRelativePath(Repository.Path("src"), file).Replace('\\', '/')
        where !path.Contains("/obj/", StringComparison.Ordinal) && !path.Contains("/bin/", StringComparison.Ordinal)
        orderby path
        select (path, CSharpSyntaxTree.ParseText(File.ReadAllText(file)).GetRoot());

    /// <summary>The sentences of a room: of a folder of sources, or of the notebooks.</summary>
    public static IEnumerable<(string Room, string Text)> Sentences() =>
        Sources()
            .SelectMany(source => Of(source.Root).Select(text => (System.IO.Path.GetDirectoryName(source.Path)!.Replace('\\', '/'), text)))
            .Concat(Markdown())
            .Select(found => (found.Item1, Text: Spaces().Replace(found.Item2, " ").Trim()))
            .Where(found => IsSentence(found.Text));

    private static IEnumerable<string> Of(SyntaxNode root) =>
        from node in root.DescendantNodes()
        where IsText(node) && !IsPart(node) && !IsPlumbing(node)
        select Text(node);

    private static bool IsText(SyntaxNode node) => node switch
    {
        InterpolatedStringExpressionSyntax => true,
        LiteralExpressionSyntax literal => literal.IsKind(SyntaxKind.StringLiteralExpression),
        BinaryExpressionSyntax sum => sum.IsKind(SyntaxKind.AddExpression) && (IsText(Bare(sum.Left)) || IsText(Bare(sum.Right))),
        _ => false,
    };

    /// <summary>A piece of a longer text that is put together with +, which is collected as a whole.</summary>
    private static bool IsPart(SyntaxNode node)
    {
        var above = node.Parent;
        while (above is ParenthesizedExpressionSyntax || CallAround(above) is not null) above = (CallAround(above) ?? above!).Parent;
        return above is BinaryExpressionSyntax && IsText(above);
    }

    /// <summary>Attributes other than descriptions, and what a regular expression is made of.</summary>
    private static bool IsPlumbing(SyntaxNode node) =>
        node.Ancestors().OfType<AttributeSyntax>().FirstOrDefault() is { } attribute && attribute.Name.ToString() != "Description";

    private static string Text(SyntaxNode node) => Bare(node) switch
    {
        LiteralExpressionSyntax literal => literal.Token.ValueText,
        InterpolatedStringExpressionSyntax text =>
            string.Concat(
                text.Contents.Select(part => part is InterpolatedStringTextSyntax fixedText ? fixedText.TextToken.ValueText : "{…}")),
        BinaryExpressionSyntax sum when IsText(sum) => Text(sum.Left) + Text(sum.Right),
        _ => "{…}",
    };

    private static SyntaxNode Bare(SyntaxNode node) => node switch
    {
        ParenthesizedExpressionSyntax inner => Bare(inner.Expression),
        InvocationExpressionSyntax call when IsInvariant(call) => Bare(call.ArgumentList.Arguments[0].Expression),
        _ => node,
    };

    /// <summary>The call that writes a text's numbers the same everywhere, of which this is the argument; null for any other.</summary>
    private static InvocationExpressionSyntax? CallAround(SyntaxNode? argument) =>
        argument is ArgumentSyntax { Parent.Parent: InvocationExpressionSyntax call } && IsInvariant(call) ? call : null;

    private static bool IsInvariant(InvocationExpressionSyntax call) =>
        call.Expression.ToString() is "Invariant" or "FormattableString.Invariant";

    private static IEnumerable<(string, string)> Markdown() =>
        Directory.EnumerateFiles(Repository.Path("notebooks"), "*.ipynb").Order(StringComparer.Ordinal)
            .SelectMany(file => JsonNode.Parse(File.ReadAllText(file))!["cells"]!.AsArray())
            .Where(cell => (string?)cell!["cell_type"] == "markdown")
            .SelectMany(cell => string.Concat(cell!["source"]!.AsArray().Select(line => (string)line!)).Split('\n')
                .Select(line => ("notebooks", line)))
            .Concat(Directory.EnumerateFiles(Repository.Path("notebooks", "workshop", "source"), "*.md").Order(StringComparer.Ordinal)
                .SelectMany(file => Prose(File.ReadAllLines(file))).Select(line => ("notebooks/workshop", line)));

    private static IEnumerable<string> Prose(IEnumerable<string> lines)
    {
        var code = false;
        foreach (var line in lines)
        {
            if (line.StartsWith("```", StringComparison.Ordinal)) code = !code;
            else if (!code) yield return line;
        }
    }

    /// <summary>Three words or more, or a full stop at the end; styles, pages' frames and scripts are none.</summary>
    private static bool IsSentence(string text) =>
        !Code().IsMatch(text)
            && (Word().Count(Tag().Replace(text, " ")) >= 3 || (text.EndsWith('.') && Word().IsMatch(text) && text.Length > 3));

    [GeneratedRegex(@"(?<![\w<&.#-])[A-Za-zÀ-ž][A-Za-zÀ-ž'’-]*(?![\w=;-])")]
    private static partial Regex Word();

    [GeneratedRegex("<[^>]*>")]
    private static partial Regex Tag();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();

    [GeneratedRegex(@"[{};]\s*[a-z-]+:[^ ]|<!DOCTYPE|<svg|function\s*\(|=>|\bvar [a-z]+ ?=|^\s*[.#@][a-z][\w-]*[{ ]|xmlns|\\[bws]\b|"
        + @";\s*(?:padding|margin|font|color)")]
    private static partial Regex Code();
}
