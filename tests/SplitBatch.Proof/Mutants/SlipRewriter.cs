using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using static Microsoft.CodeAnalysis.CSharp.SyntaxFactory;

namespace SplitBatch.Proof.Mutants;

/// <summary>Writes every slip of one file into its text, each behind a switch of its own, so that one build holds them all.</summary>
/// <param name="model">What the file's expressions mean.</param>
/// <param name="file">The file within the room.</param>
/// <param name="next">The number of the next slip.</param>
/// <param name="left">Places at which a slip does not compile, by position.</param>
internal sealed class SlipRewriter(SemanticModel model, string file, int next, IReadOnlySet<int> left) : CSharpSyntaxRewriter
{
    public List<Mutant> Mutants { get; } = [];

    public override SyntaxNode? VisitBinaryExpression(BinaryExpressionSyntax node)
    {
        var inner = (BinaryExpressionSyntax)base.VisitBinaryExpression(node)!;
        if (!Slips.Operators.TryGetValue(node.Kind(), out var other) || Names(node) || !IsPlain(node)) return inner;
        var changed = BinaryExpression(other, inner.Left, inner.Right);
        return Id(node, Kind(node.Kind()), node.OperatorToken.Text, changed.OperatorToken.Text) is { } id
            ? Choice(id, changed, inner)
            : inner;
    }

    public override SyntaxNode? VisitPrefixUnaryExpression(PrefixUnaryExpressionSyntax node)
    {
        var inner = (PrefixUnaryExpressionSyntax)base.VisitPrefixUnaryExpression(node)!;
        if (!node.IsKind(SyntaxKind.LogicalNotExpression) || Names(node)) return inner;
        return Id(node, "condition", node.ToString(), node.Operand.ToString()) is { } id ? Choice(id, inner.Operand, inner) : inner;
    }

    public override SyntaxNode? VisitIsPatternExpression(IsPatternExpressionSyntax node)
    {
        var inner = (IsPatternExpressionSyntax)base.VisitIsPatternExpression(node)!;
        return Names(node) || Id(node, "condition", node.ToString(), "the contrary") is not { } id ? inner : Choice(id, Not(inner), inner);
    }

    public override SyntaxNode? VisitConditionalExpression(ConditionalExpressionSyntax node)
    {
        var inner = (ConditionalExpressionSyntax)base.VisitConditionalExpression(node)!;
        if (Names(node.Condition))
        {
            var (kept, from, to) = Uses(node.WhenFalse, node.Condition)
                ? (inner.WhenTrue, node.WhenTrue, "true")
                : (inner.WhenFalse, node.WhenFalse, "false");
            return Uses(from, node.Condition) || Names(from) || Id(node, "choice", node.Condition.ToString(), to) is not { } one
                ? inner
                : Choice(one, kept, inner);
        }

        return Id(node, "choice", node.Condition.ToString(), "the contrary") is { } id
            ? inner.WithCondition(Choice(id, Not(inner.Condition), inner.Condition))
            : inner;
    }

    public override SyntaxNode? VisitIfStatement(IfStatementSyntax node)
    {
        var inner = (IfStatementSyntax)base.VisitIfStatement(node)!;
        return Names(node.Condition) || Id(node, "condition", node.Condition.ToString(), "the contrary") is not { } id
            ? inner
            : inner.WithCondition(Choice(id, Not(inner.Condition), inner.Condition));
    }

    public override SyntaxNode? VisitSwitchExpressionArm(SwitchExpressionArmSyntax node)
    {
        var inner = (SwitchExpressionArmSyntax)base.VisitSwitchExpressionArm(node)!;
        var isLast = ((SwitchExpressionSyntax)node.Parent!).Arms.Last() == node;
        if (isLast || (node.Pattern is DiscardPatternSyntax && node.WhenClause is null)
            || Id(node, "phrase or outcome", node.Pattern.ToString(), "passed over") is not { } id) return inner;
        var on = Not(Is(id));
        return inner.WithWhenClause(
            WhenClause(inner.WhenClause is { } when
                ? BinaryExpression(SyntaxKind.LogicalAndExpression, on, ParenthesizedExpression(when.Condition))
                : on)).NormalizeWhitespace();
    }

    public override SyntaxNode? VisitYieldStatement(YieldStatementSyntax node)
    {
        var inner = (YieldStatementSyntax)base.VisitYieldStatement(node)!;
        return node.IsKind(SyntaxKind.YieldReturnStatement) && Id(node, "finding", node.Expression!.ToString(), "left out") is { } id
            ? IfStatement(Not(Is(id)), Block(inner))
            : inner;
    }

    public override SyntaxNode? VisitInvocationExpression(InvocationExpressionSyntax node)
    {
        var inner = (InvocationExpressionSyntax)base.VisitInvocationExpression(node)!;
        if (node.Expression is not MemberAccessExpressionSyntax { Name: IdentifierNameSyntax name }
            || !Slips.Calls.TryGetValue(name.Identifier.Text, out var other) || Names(node)) return inner;
        if (other is "All" && node.ArgumentList.Arguments.Count == 0) return inner;
        var changed = inner.WithExpression(((MemberAccessExpressionSyntax)inner.Expression).WithName(IdentifierName(other)));
        return Id(node, "call", name.Identifier.Text, other) is { } id ? Choice(id, changed, inner) : inner;
    }

    public override SyntaxNode? VisitInterpolatedStringText(InterpolatedStringTextSyntax node) =>
        Slips.OtherWords(node.TextToken.ValueText) is { } other && !IsConstant(node)
            && Id(node, "words", node.TextToken.ValueText, other) is { } id
            ? Interpolation(Words(id, node.TextToken.ValueText, other)) : node;

    public override SyntaxNode? VisitLiteralExpression(LiteralExpressionSyntax node)
    {
        if (IsConstant(node)) return node;
        if (node.IsKind(SyntaxKind.StringLiteralExpression) && Slips.OtherWords(node.Token.ValueText) is { } other)
        {
            return Id(node, "words", node.Token.ValueText, other) is { } id ? Words(id, node.Token.ValueText, other) : node;
        }

        if (!node.IsKind(SyntaxKind.NumericLiteralExpression) || node.Token.Value is not (int or double)) return node;
        ExpressionSyntax changed = node.Token.Value is int whole
            ? LiteralExpression(SyntaxKind.NumericLiteralExpression, Literal(whole + 1))
            : LiteralExpression(SyntaxKind.NumericLiteralExpression, Literal((double)node.Token.Value! * 1.5));
        return Id(node, "number", node.ToString(), changed.ToString()) is { } number ? Choice(number, changed, node) : node;
    }

    private int? Id(SyntaxNode node, string kind, string from, string to)
    {
        if (left.Contains(node.SpanStart)) return null;
        var mutant = new Mutant(next++, file, node.GetLocation().GetLineSpan().StartLinePosition.Line + 1, node.SpanStart, kind, from, to);
        Mutants.Add(mutant);
        return mutant.Id;
    }

    private static InvocationExpressionSyntax Is(int id) =>
        (InvocationExpressionSyntax)ParseExpression($"global::SplitBatch.Evidence.Mutant.Is({id})");

    private static ExpressionSyntax Words(int id, string words, string others) =>
        // In brackets, or the colons would end a hole.
        ParseExpression($"(global::SplitBatch.Evidence.Mutant.Words({id}, {Literal(words)}, {Literal(others)}))");

    private static PrefixUnaryExpressionSyntax Not(ExpressionSyntax one) =>
        PrefixUnaryExpression(SyntaxKind.LogicalNotExpression, ParenthesizedExpression(one));

    private static ParenthesizedExpressionSyntax Choice(int id, ExpressionSyntax changed, ExpressionSyntax kept) =>
        ParenthesizedExpression(ConditionalExpression(Is(id), ParenthesizedExpression(changed), ParenthesizedExpression(kept)))
            .NormalizeWhitespace();

    private static string Kind(SyntaxKind kind) => kind switch
    {
        SyntaxKind.LogicalAndExpression or SyntaxKind.LogicalOrExpression => "and, or",
        SyntaxKind.AddExpression or SyntaxKind.SubtractExpression or SyntaxKind.MultiplyExpression or SyntaxKind.DivideExpression =>
            "arithmetic",
        _ => "comparison",
    };

    /// <summary>Whether an expression gives names to what it finds, which later text uses.</summary>
    private static bool Names(SyntaxNode node) => node.DescendantNodesAndSelf().Any(one => one is SingleVariableDesignationSyntax);

    private static bool Uses(SyntaxNode node, SyntaxNode naming)
    {
        var names = naming.DescendantNodes().OfType<SingleVariableDesignationSyntax>().Select(one => one.Identifier.Text).ToHashSet();
        return node.DescendantNodesAndSelf().OfType<IdentifierNameSyntax>().Any(name => names.Contains(name.Identifier.Text));
    }

    /// <summary>Arithmetic of numbers only: texts and sentences are joined by plus as well.</summary>
    private bool IsPlain(BinaryExpressionSyntax node) =>
        Kind(node.Kind()) != "arithmetic"
            || model.GetTypeInfo(node).Type?.SpecialType is SpecialType.System_Int32 or SpecialType.System_Double;

    /// <summary>Whether the compiler wants a constant there: in patterns, attributes, constants and defaults.</summary>
    private static bool IsConstant(SyntaxNode node) =>
        node.Ancestors()
            .TakeWhile(one => one is not (StatementSyntax or SwitchExpressionArmSyntax)
                || one is LocalDeclarationStatementSyntax).Any(one =>
                    one is PatternSyntax or AttributeSyntax or CaseSwitchLabelSyntax or ParameterSyntax or EnumMemberDeclarationSyntax
                    || (one is FieldDeclarationSyntax field && field.Modifiers.Any(SyntaxKind.ConstKeyword))
                    || (one is LocalDeclarationStatementSyntax { IsConst: true }));
}
