using System.Collections.Immutable;
using System.Text;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace SplitBatch.Kernel.Engine;

/// <summary>One thing that a cell made, as text that declares it without doing anything.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Signature">What tells functions of one name apart; null for all else.</param>
/// <param name="IsType">Whether it is a type.</param>
/// <param name="Text">The declaration.</param>
/// <param name="Uses">Types of cells that it names, each with its cell.</param>
internal sealed record DeclaredMember(
    string Name, string? Signature, bool IsType, string Text, ImmutableArray<(string Cell, string Type)> Uses)
{
    private static readonly SymbolDisplayFormat Whole = SymbolDisplayFormat.FullyQualifiedFormat
        .AddMiscellaneousOptions(SymbolDisplayMiscellaneousOptions.IncludeNullableReferenceTypeModifier);

    private static readonly SymbolDisplayFormat WholeParameter = Whole.WithParameterOptions(
        SymbolDisplayParameterOptions.IncludeType | SymbolDisplayParameterOptions.IncludeName
        | SymbolDisplayParameterOptions.IncludeDefaultValue | SymbolDisplayParameterOptions.IncludeModifiers);

    /// <summary>Reads it off a symbol of the cell; null where it can only be found by its own text.</summary>
    public static DeclaredMember? Of(ISymbol member) => member switch
    {
        IFieldSymbol field => new(field.Name, null, false, Comment(field) + Field(field), [.. UsedBy(field.Type)]),
        IMethodSymbol { MethodKind: MethodKind.Ordinary } method when Source(method) is MethodDeclarationSyntax node =>
            new(method.Name, Signed(method), false, Comment(method) + WithoutBody(node), [.. UsedBy(method)]),
        INamedTypeSymbol type => new(type.MetadataName, null, true, Sources(type), []),
        IPropertySymbol or IEventSymbol when Source(member) is { } node => new(member.Name, null, false, Comment(member) + node, []),
        _ => null,
    };

    private static string Signed(IMethodSymbol method)
    {
        var types = method.Parameters.Select(p => (p.RefKind == RefKind.None ? "" : "ref ") + p.Type.ToDisplayString(Whole));
        return $"{method.Arity}({string.Join(',', types)})";
    }

    private static string WithoutBody(MethodDeclarationSyntax method) => method
        .WithBody(null).WithExpressionBody(SyntaxFactory.ArrowExpressionClause(SyntaxFactory.ParseExpression("throw null!")))
        .WithSemicolonToken(SyntaxFactory.Token(SyntaxKind.SemicolonToken)).WithoutTrivia().NormalizeWhitespace().ToString();

    private static string Sources(INamedTypeSymbol type) =>
        string.Concat(type.DeclaringSyntaxReferences.Select(part => Comment(part.GetSyntax()) + part.GetSyntax() + "\n"));

    private static SyntaxNode? Source(ISymbol symbol) => symbol.DeclaringSyntaxReferences.FirstOrDefault()?.GetSyntax();

    private static string Comment(ISymbol symbol) =>
        Source(symbol)?.FirstAncestorOrSelf<MemberDeclarationSyntax>() is { } node ? Comment(node) : "";

    private static string Comment(SyntaxNode node) => string.Concat(
        node.GetLeadingTrivia().Where(t => t.GetStructure() is DocumentationCommentTriviaSyntax).Select(t => t.ToFullString()));

    private static string Field(IFieldSymbol field)
    {
        var name = SyntaxFacts.GetKeywordKind(field.Name) == SyntaxKind.None ? field.Name : "@" + field.Name;
        if (field.HasConstantValue && Constant(field) is { } constant)
            return $"const {field.Type.ToDisplayString(Whole)} {name} = {constant};";
        var helpers = new StringBuilder();
        var value = Value(field.Type, field.Name, helpers);
        return value is null ? $"{field.Type.ToDisplayString(Whole)} {name};" : $"{helpers}var {name} = {value};";
    }

    private static string? Constant(IFieldSymbol field)
    {
        if (field.Type.TypeKind == TypeKind.Enum)
        {
            var type = field.Type.ToDisplayString(Whole);
            var named = field.Type.GetMembers().OfType<IFieldSymbol>().FirstOrDefault(m => Equals(m.ConstantValue, field.ConstantValue));
            return named is null ? $"({type})({field.ConstantValue})" : $"{type}.{named.Name}";
        }

        if (field.Type.SpecialType is < SpecialType.System_Boolean or > SpecialType.System_String) return null;
        var ending = field.Type.SpecialType switch { SpecialType.System_Single => "f", SpecialType.System_Decimal => "m", _ => "" };
        return field.ConstantValue is { } value
            ? SymbolDisplay.FormatPrimitive(value, quoteStrings: true, useHexadecimalNumbers: false) + ending : null;
    }

    /// <summary>An expression of a type that has no name; null where it has one.</summary>
    private static string? Value(ITypeSymbol type, string name, StringBuilder helpers)
    {
        if (type is INamedTypeSymbol { IsAnonymousType: true, TypeKind: TypeKind.Class } one)
        {
            var parts = one.GetMembers().OfType<IPropertySymbol>()
                .Select(p => $"{p.Name} = {Value(p.Type, name, helpers) ?? $"default({p.Type.ToDisplayString(Whole)})!"}");
            return $"new {{ {string.Join(", ", parts)} }}";
        }

        if (type is INamedTypeSymbol { DelegateInvokeMethod: { } call } function
            && (function.IsAnonymousType || !type.CanBeReferencedByName))
        {
            var parameters = call.Parameters.Select(p => p.ToDisplayString(WholeParameter));
            return $"{call.ReturnType.ToDisplayString(Whole)} ({string.Join(", ", parameters)}) => throw null!";
        }

        return Around(type, name, helpers);
    }

    /// <summary>
    /// An expression of a type with parts that have no name, as a list of them: a function finds the type from its arguments.
    /// </summary>
    private static string? Around(ITypeSymbol type, string name, StringBuilder helpers)
    {
        const char Mark = '\u0001';
        var inner = new List<ITypeSymbol>();
        var text = string.Concat(type.ToDisplayParts(Whole).Select(part =>
        {
            if (part.Symbol is not INamedTypeSymbol { IsAnonymousType: true } anonymous) return part.ToString();
            if (anonymous.TypeKind != TypeKind.Class) return "global::System.Delegate";
            inner.Add(anonymous);
            return $"{Mark}T{inner.Count - 1}";
        })).Replace($"global::{Mark}", "", StringComparison.Ordinal).Replace($"{Mark}", "", StringComparison.Ordinal);
        if (inner.Count == 0) return null;
        var helper = $"{Hidden}{helpers.Length}_{name}";
        var values = inner.Select(t => Value(t, name, helpers)).ToList();
        var types = string.Join(", ", inner.Select((_, i) => $"T{i}"));
        var parameters = string.Join(", ", inner.Select((_, i) => $"T{i} t{i}"));
        helpers.Append($"static {text} {helper}<{types}>({parameters}) => throw null!;\n");
        return $"{helper}({string.Join(", ", values)})";
    }

    /// <summary>How names begin that no cell has made, and that are not offered.</summary>
    public const string Hidden = "__of";

    private static IEnumerable<(string Cell, string Type)> UsedBy(IMethodSymbol method) =>
        method.Parameters.Select(p => p.Type).Append(method.ReturnType).SelectMany(UsedBy);

    private static IEnumerable<(string Cell, string Type)> UsedBy(ITypeSymbol type) => type switch
    {
        IArrayTypeSymbol array => UsedBy(array.ElementType),
        INamedTypeSymbol named => named.TypeArguments.SelectMany(UsedBy).Concat(
            named.ContainingType is { IsScriptClass: true } cell ? [(cell.ContainingAssembly.Name, named.MetadataName)] : []),
        _ => [],
    };
}
