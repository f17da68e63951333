using System.Net;
using System.Text;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;

namespace SplitBatch.Kernel.Pages;

/// <summary>C# with its words marked for colour.</summary>
internal static class CodeHtml
{
    private static readonly CSharpParseOptions Script = new(LanguageVersion.Latest, kind: SourceCodeKind.Script);

    public static string Of(string code)
    {
        var html = new StringBuilder();
        foreach (var token in SyntaxFactory.ParseTokens(code, options: Script))
        {
            Trivia(html, token.LeadingTrivia);
            Add(html, token.Text, Kind(token));
            Trivia(html, token.TrailingTrivia);
        }

        return html.ToString();
    }

    private static void Trivia(StringBuilder html, SyntaxTriviaList list)
    {
        foreach (var trivia in list)
        {
            var kind = trivia.Kind();
            var isComment =
                kind is SyntaxKind.SingleLineCommentTrivia or SyntaxKind.MultiLineCommentTrivia
                    or SyntaxKind.SingleLineDocumentationCommentTrivia;
            Add(html, trivia.ToFullString(), isComment ? "c" : trivia.IsDirective ? "d" : null);
        }
    }

    private static string? Kind(SyntaxToken token) => token.Kind() switch
    {
        SyntaxKind.NumericLiteralToken => "n",
        SyntaxKind.StringLiteralToken or SyntaxKind.CharacterLiteralToken or SyntaxKind.SingleLineRawStringLiteralToken
            or SyntaxKind.MultiLineRawStringLiteralToken or SyntaxKind.InterpolatedStringToken => "s",
        SyntaxKind.IdentifierToken when token.Text is "var" or "await" or "record" or "dynamic" => "k",
        var kind when SyntaxFacts.IsKeywordKind(kind) => "k",
        _ => null,
    };

    private static void Add(StringBuilder html, string text, string? kind)
    {
        if (text.Length == 0) return;
        var encoded = WebUtility.HtmlEncode(text);
        if (kind is null) html.Append(encoded);
        else html.Append("<span class=\"").Append(kind).Append("\">").Append(encoded).Append("</span>");
    }
}
