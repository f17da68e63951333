using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;

namespace SplitBatch.Kernel.Host;

/// <summary>
/// A cell as it is compiled. What scripts are not allowed and notebooks take for granted is left blank, so that all else keeps its place:
/// the word <c>using</c> before a variable, the frame of a static class around extension methods, and the line <c>#!time</c>.
/// </summary>
/// <param name="Code">The text.</param>
/// <param name="Owned">Variables to be disposed of at the end of the cell, in order.</param>
/// <param name="IsTimed">Whether the cell asks how long it takes.</param>
internal sealed partial record CellText(string Code, IReadOnlyList<string> Owned, bool IsTimed)
{
    private static readonly CSharpParseOptions Script = new(LanguageVersion.Latest, kind: SourceCodeKind.Script);

    /// <summary>Reads a cell as it was written.</summary>
    public static CellText Of(string code)
    {
        var text = Time().Replace(code, line => new string(' ', line.Length));
        var timed = !ReferenceEquals(text, code) && text != code;
        if (!text.Contains("using ", StringComparison.Ordinal) && !text.Contains("this ", StringComparison.Ordinal))
            return new(text, [], timed);
        var tokens = SyntaxFactory.ParseTokens(text, options: Script).ToList();
        var owned = new List<string>();
        var blank = text.ToCharArray();
        var depth = 0;
        for (var i = 0; i < tokens.Count; i++)
        {
            if (depth == 0 && StartsStatement(tokens, i))
            {
                if (OwnedBy(tokens, i) is { } name) owned.Add(name);
                if (OwnedBy(tokens, i) is not null) Blank(blank, tokens, i, tokens[i].IsKind(SyntaxKind.UsingKeyword) ? i : i + 1);
                if (ExtensionFrame(tokens, i) is { } frame)
                {
                    Blank(blank, tokens, i, frame.Open);
                    Blank(blank, tokens, frame.Close, frame.Close);
                    i = frame.Close;
                    continue;
                }
            }

            depth += Change(tokens[i]);
        }

        return new(new string(blank), owned, timed);
    }

    private static bool StartsStatement(List<SyntaxToken> tokens, int at) =>
        at == 0 || tokens[at - 1].Kind() is SyntaxKind.SemicolonToken or SyntaxKind.CloseBraceToken;

    /// <summary>The variable of a using declaration that begins here: a type, a name and an equals sign. An alias has no type.</summary>
    private static string? OwnedBy(List<SyntaxToken> tokens, int at)
    {
        if (tokens[at].Text == "await") at++;
        if (at >= tokens.Count || !tokens[at].IsKind(SyntaxKind.UsingKeyword)) return null;
        var sign =
            tokens.FindIndex(at,
                token => token.Kind() is SyntaxKind.EqualsToken or SyntaxKind.SemicolonToken or SyntaxKind.OpenParenToken);
        return sign > at + 2 && tokens[sign].IsKind(SyntaxKind.EqualsToken) && tokens[at + 1].Kind() is not SyntaxKind.StaticKeyword
            ? tokens[sign - 1].ValueText
            : null;
    }

    /// <summary>The braces of a static class with extension methods that begins here.</summary>
    private static (int Open, int Close)? ExtensionFrame(List<SyntaxToken> tokens, int at)
    {
        var word = at;
        while (word < tokens.Count && tokens[word].Text is "public" or "internal" or "static" or "partial") word++;
        var isStatic = tokens.Skip(at).Take(word - at).Any(token => token.IsKind(SyntaxKind.StaticKeyword));
        if (!isStatic || word + 2 >= tokens.Count || !tokens[word].IsKind(SyntaxKind.ClassKeyword)) return null;
        var open = word + 2;
        if (!tokens[open].IsKind(SyntaxKind.OpenBraceToken)) return null;
        var (close, depth, extends) = (open, 0, false);
        for (; close < tokens.Count; close++)
        {
            depth += Change(tokens[close]);
            extends |= depth == 2 && tokens[close].IsKind(SyntaxKind.ThisKeyword) && tokens[close - 1].IsKind(SyntaxKind.OpenParenToken);
            if (depth == 0) return extends ? (open, close) : null;
        }

        return null;
    }

    private static int Change(SyntaxToken token) => token.Kind() switch
    {
        SyntaxKind.OpenBraceToken or SyntaxKind.OpenParenToken or SyntaxKind.OpenBracketToken => 1,
        SyntaxKind.CloseBraceToken or SyntaxKind.CloseParenToken or SyntaxKind.CloseBracketToken => -1,
        _ => 0,
    };

    private static void Blank(char[] text, List<SyntaxToken> tokens, int first, int last)
    {
        for (var at = tokens[first].SpanStart; at < tokens[last].Span.End; at++) text[at] = text[at] is '\r' or '\n' ? text[at] : ' ';
    }

    [GeneratedRegex(@"^[ \t]*#!time[ \t]*(?=\r?$)", RegexOptions.Multiline)]
    private static partial Regex Time();
}
