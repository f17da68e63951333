using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Scripting;

namespace SplitBatch.Kernel.Engine;

/// <summary>What a cell that ran made for later cells.</summary>
/// <param name="Variables">The names of its variables, in order.</param>
/// <param name="Others">Its types and functions, as one word each that tells them from others of the same name.</param>
internal sealed record CellMakes(IReadOnlyList<string> Variables, IReadOnlySet<string> Others)
{
    private static readonly CSharpParseOptions Script = new(LanguageVersion.Latest, kind: SourceCodeKind.Script);

    /// <summary>Nothing at all: no later cell can refer to it.</summary>
    public static CellMakes Nothing { get; } = new([], new HashSet<string>());

    /// <summary>
    /// Something that no later cell can make again, so that the earlier is out of reach: a using, a reference, a variable that can be
    /// called.
    /// </summary>
    public static CellMakes Lasting { get; } = new([], new HashSet<string>());

    /// <summary>Reads it off a compiled script.</summary>
    public static CellMakes Of(Script script)
    {
        var compilation = script.GetCompilation();
        if (!script.Options.MetadataReferences.IsEmpty || !compilation.SyntaxTrees.All(t => IsAlone((CompilationUnitSyntax)t.GetRoot())))
            return Lasting;
        var members = Members(compilation);
        return members.Count == 0 ? Nothing : members.All(CanBeHidden) ? Of(script.Code) : Lasting;
    }

    /// <summary>
    /// Whether a cell, by its text, makes all of it again, the variables in this order and before any other. Neither it nor a later cell
    /// can then refer to what was made here, and a list of all variables stays in its order.
    /// </summary>
    public bool IsMadeAgainBy(string code)
    {
        if (Variables.Count + Others.Count == 0) return false;
        var again = Of(code);
        return again.Variables.Take(Variables.Count).SequenceEqual(Variables) && Others.IsSubsetOf(again.Others);
    }

    private static CellMakes Of(string code)
    {
        var members = Members(CSharpCompilation.CreateScriptCompilation("made", SyntaxFactory.ParseSyntaxTree(code, Script)));
        return new([.. members.OfType<IFieldSymbol>().Select(f => f.Name)], members.Select(Word).OfType<string>()
            .ToHashSet(StringComparer.Ordinal));
    }

    private static List<ISymbol> Members(Compilation compilation) =>
        [.. compilation.ScriptClass!.GetMembers().Where(m => !m.IsImplicitlyDeclared)];

    /// <summary>Without a using, a reference or a file of code, which reach into later cells.</summary>
    private static bool IsAlone(CompilationUnitSyntax root) =>
        root.Usings.Count == 0 && root.Externs.Count == 0 && root.GetReferenceDirectives().Count == 0
            && root.GetLoadDirectives().Count == 0;

    /// <summary>A variable that can be called is found behind one of the same name that cannot.</summary>
    private static bool CanBeHidden(ISymbol member) => member switch
    {
        IFieldSymbol field =>
            field.Type.TypeKind is not (TypeKind.Delegate or TypeKind.Dynamic or TypeKind.FunctionPointer or TypeKind.Error),
        IMethodSymbol method => method.MethodKind == MethodKind.Ordinary,
        _ => member is INamedTypeSymbol,
    };

    private static string? Word(ISymbol member) => member switch
    {
        INamedTypeSymbol type => $"type {type.MetadataName}",
        IMethodSymbol when member.DeclaringSyntaxReferences.FirstOrDefault()?.GetSyntax() is MethodDeclarationSyntax method =>
            method.WithAttributeLists([]).WithReturnType(SyntaxFactory.ParseTypeName("_")).WithBody(null).WithExpressionBody(null)
                .NormalizeWhitespace().ToString(),
        _ => null,
    };
}
