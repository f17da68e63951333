using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace SplitBatch.Kernel.Host;

/// <summary>The names of a cell, as its text shows them: which it makes for later cells, and which it takes from earlier ones.</summary>
/// <param name="Made">Variables and functions that later cells can use.</param>
/// <param name="Taken">Names that it uses and does not declare anywhere itself.</param>
internal sealed record CellNames(IReadOnlySet<string> Made, IReadOnlySet<string> Taken)
{
    private static readonly CSharpParseOptions Script = new(LanguageVersion.Latest, kind: SourceCodeKind.Script);

    /// <summary>Reads the names off a cell.</summary>
    public static CellNames Of(string code)
    {
        var root = SyntaxFactory.ParseSyntaxTree(code, Script).GetCompilationUnitRoot();
        var declared = root.DescendantNodes().Select(Declared).OfType<string>().ToHashSet(StringComparer.Ordinal);
        var made =
            root.DescendantNodes(node => node is not (AnonymousFunctionExpressionSyntax or BlockSyntax or BaseTypeDeclarationSyntax))
                .Where(node => node is not ParameterSyntax).Select(Declared).OfType<string>().ToHashSet(StringComparer.Ordinal);
        var taken = root.DescendantNodes().OfType<IdentifierNameSyntax>().Where(IsUse).Select(name => name.Identifier.ValueText)
            .Where(name => !declared.Contains(name)).ToHashSet(StringComparer.Ordinal);
        return new(made, taken);
    }

    private static string? Declared(SyntaxNode node) => node switch
    {
        VariableDeclaratorSyntax variable => variable.Identifier.ValueText,
        SingleVariableDesignationSyntax variable => variable.Identifier.ValueText,
        ForEachStatementSyntax each => each.Identifier.ValueText,
        ParameterSyntax parameter => parameter.Identifier.ValueText,
        MethodDeclarationSyntax method => method.Identifier.ValueText,
        LocalFunctionStatementSyntax function => function.Identifier.ValueText,
        _ => null,
    };

    /// <summary>A name by itself: not the member after a point, nor the name of an argument or of a property being set.</summary>
    private static bool IsUse(IdentifierNameSyntax name) => name.Parent switch
    {
        MemberAccessExpressionSyntax access => access.Name != name,
        MemberBindingExpressionSyntax or NameColonSyntax or NameEqualsSyntax => false,
        AssignmentExpressionSyntax { Parent: InitializerExpressionSyntax list } set
            when !list.IsKind(SyntaxKind.CollectionInitializerExpression) => set.Left != name,
        _ => true,
    };
}
