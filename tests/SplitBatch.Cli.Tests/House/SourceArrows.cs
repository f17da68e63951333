using System.Collections.Concurrent;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace SplitBatch.Cli.House;

/// <summary>
/// Who looks into whom, told by the compiler and not by text: an arrow runs from one folder of <c>src</c> to another whose types or
/// members it names, makes, calls or gets. Folders are written from <c>src</c>, as <c>SplitBatch/Lab</c>.
/// </summary>
internal sealed class SourceArrows
{
    private const string ImpliedUsings = """
        global using System; global using System.Collections.Generic; global using System.IO; global using System.Linq;
        global using System.Net.Http; global using System.Threading; global using System.Threading.Tasks;
        """;

    private static readonly Lazy<SourceArrows> Read = new(() => new SourceArrows(Repository.Path("src")));

    private readonly ConcurrentDictionary<(string From, string To), string> arrows = [];
    private readonly ConcurrentBag<string> unknown = [];
    private readonly string root;

    private SourceArrows(string root)
    {
        this.root = root;
        var parse = new CSharpParseOptions(LanguageVersion.Preview);
        Files = [.. Directory.EnumerateFiles(root, "*.cs", SearchOption.AllDirectories).Where(IsWritten).Order(StringComparer.Ordinal)];
        var trees = Files.Select(file => CSharpSyntaxTree.ParseText(File.ReadAllText(file), parse, file)).ToList();
        var libraries = ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!).Split(Path.PathSeparator)
            .Where(path => !Path.GetFileName(path).StartsWith("SplitBatch", StringComparison.Ordinal))
            .Select(path => MetadataReference.CreateFromFile(path));
        var compilation = CSharpCompilation.Create(
            "house", [.. trees, CSharpSyntaxTree.ParseText(ImpliedUsings, parse)], libraries, new(OutputKind.ConsoleApplication));
        CSharpGeneratorDriver.Create(FrameworkGenerators.All, parseOptions: parse)
            .RunGeneratorsAndUpdateCompilation(compilation, out var whole, out _);
        Parallel.ForEach(trees, tree => Look(whole.GetSemanticModel(tree)));
    }

    /// <summary>The arrows of the repository that the tests stand in, read once.</summary>
    public static SourceArrows Here => Read.Value;

    /// <summary>Every source file.</summary>
    public IReadOnlyList<string> Files { get; }

    /// <summary>Each arrow, with one thing that makes it.</summary>
    public IReadOnlyDictionary<(string From, string To), string> Arrows => arrows;

    /// <summary>Names that the compiler could not place; an arrow could hide behind each.</summary>
    public IEnumerable<string> Unknown => unknown.Order(StringComparer.Ordinal);

    /// <summary>Every folder that holds sources.</summary>
    public IEnumerable<string> Folders => Files.Select(FolderOf).Distinct().Order(StringComparer.Ordinal);

    /// <summary>The folder of a source file.</summary>
    public string FolderOf(string file) => Path.GetRelativePath(root, Path.GetDirectoryName(file)!).Replace('\\', '/');

    private void Look(SemanticModel model)
    {
        var file = model.SyntaxTree.FilePath;
        foreach (var node in model.SyntaxTree.GetRoot().DescendantNodes(node => node is not UsingDirectiveSyntax))
        {
            if (node is not (SimpleNameSyntax or BaseObjectCreationExpressionSyntax or ConstructorInitializerSyntax
                or ElementAccessExpressionSyntax or BinaryExpressionSyntax or CastExpressionSyntax)) continue;
            var info = model.GetSymbolInfo(node);
            if (node is SimpleNameSyntax name && info.Symbol is null && info.CandidateSymbols.IsEmpty && IsLost(name, model))
            {
                unknown.Add($"{Path.GetRelativePath(root, file)}: {name}");
            }

            foreach (var symbol in info.Symbol is { } one ? [one] : info.CandidateSymbols) Point(file, symbol);
        }
    }

    private void Point(string file, ISymbol symbol)
    {
        symbol = symbol is IMethodSymbol { ReducedFrom: { } whole } ? whole : symbol.OriginalDefinition;
        if (symbol is INamespaceSymbol or ILocalSymbol or IParameterSymbol or IRangeVariableSymbol or ITypeParameterSymbol) return;
        var from = FolderOf(file);
        foreach (var place in symbol.DeclaringSyntaxReferences.Select(reference => reference.SyntaxTree.FilePath).Where(Path.IsPathRooted)
            .Select(FolderOf).Distinct())
        {
            if (place != from) arrows.TryAdd((from, place), $"{Path.GetFileName(file)} uses {Named(symbol)}");
        }
    }

    private static string Named(ISymbol symbol) =>
        symbol is INamedTypeSymbol || symbol.ContainingType is null ? symbol.Name : $"{symbol.ContainingType.Name}.{symbol.Name}";

    /// <summary>Words of the language look like names too, and a dynamic value has no symbols.</summary>
    private static bool IsLost(SimpleNameSyntax name, SemanticModel model) =>
        name.Identifier.Text is not ("var" or "_" or "nameof" or "notnull" or "unmanaged")
        && name.Parent is not (NameColonSyntax or NameEqualsSyntax)
        && model.GetTypeInfo(name).Type is null or IErrorTypeSymbol;

    private static bool IsWritten(string path) =>
        !path.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal)
        && !path.Contains($"{Path.DirectorySeparatorChar}bin{Path.DirectorySeparatorChar}", StringComparison.Ordinal);
}
