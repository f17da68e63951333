using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis.CSharp;

namespace SplitBatch.Proof.Mutants;

/// <summary>What each operator, call or word becomes by a slip.</summary>
internal static partial class Slips
{
    public static IReadOnlyDictionary<SyntaxKind, SyntaxKind> Operators { get; } = new Dictionary<SyntaxKind, SyntaxKind>
    {
        [SyntaxKind.LessThanExpression] = SyntaxKind.LessThanOrEqualExpression,
        [SyntaxKind.LessThanOrEqualExpression] = SyntaxKind.LessThanExpression,
        [SyntaxKind.GreaterThanExpression] = SyntaxKind.GreaterThanOrEqualExpression,
        [SyntaxKind.GreaterThanOrEqualExpression] = SyntaxKind.GreaterThanExpression,
        [SyntaxKind.EqualsExpression] = SyntaxKind.NotEqualsExpression, [SyntaxKind.NotEqualsExpression] = SyntaxKind.EqualsExpression,
        [SyntaxKind.LogicalAndExpression] = SyntaxKind.LogicalOrExpression,
        [SyntaxKind.LogicalOrExpression] = SyntaxKind.LogicalAndExpression,
        [SyntaxKind.AddExpression] = SyntaxKind.SubtractExpression, [SyntaxKind.SubtractExpression] = SyntaxKind.AddExpression,
        [SyntaxKind.MultiplyExpression] = SyntaxKind.DivideExpression, [SyntaxKind.DivideExpression] = SyntaxKind.MultiplyExpression,
    };

    public static IReadOnlyDictionary<string, string> Calls { get; } = new Dictionary<string, string>
    {
        ["Any"] = "All", ["All"] = "Any", ["OrderBy"] = "OrderByDescending", ["OrderByDescending"] = "OrderBy",
        ["ThenBy"] = "ThenByDescending", ["ThenByDescending"] = "ThenBy",
        ["First"] = "Last", ["FirstOrDefault"] = "LastOrDefault", ["Min"] = "Max", ["Max"] = "Min", ["Skip"] = "Take",
        ["SkipLast"] = "Skip",
    };

    private static readonly (string From, string To)[] Opposites =
    [
        ("not ", ""), ("no more", "more"), ("more", "less"), ("less", "more"), ("above", "below"), ("below", "above"), ("upper", "lower"),
        ("lower", "upper"), ("right", "wrong"), ("wrong", "right"),
        ("half A", "half B"), ("half B", "half A"), ("before", "after"), ("after", "before"), ("no ", "some "), ("one run", "two runs"),
        ("shown", "ruled out"), ("ruled out", "shown"), ("alike", "unlike"),
        ("up to", "at least"), ("at most", "at least"), ("different", "equal"), ("differ", "agree"), ("is ", "is not "),
        ("was ", "was not "), ("were ", "were not "), ("are ", "are not "), ("can ", "cannot "), ("and ", "or "), ("of ", "against "),
    ];

    /// <summary>
    /// Words that say something else: an opposite where one is known, else the longest word taken for another. Null where there is no
    /// word.
    /// </summary>
    public static string? OtherWords(string words)
    {
        if (!Word().IsMatch(words)) return null;
        foreach (var (from, to) in Opposites)
        {
            var at = Regex.Match(words, $@"\b{Regex.Escape(from)}");
            if (at.Success) return words[..at.Index] + to + words[(at.Index + from.Length)..];
        }

        var longest = Word().Matches(words).MaxBy(match => match.Length)!;
        return words[..longest.Index] + "otherwise" + words[(longest.Index + longest.Length)..];
    }

    [GeneratedRegex(@"\p{L}{2,}")]
    private static partial Regex Word();
}
