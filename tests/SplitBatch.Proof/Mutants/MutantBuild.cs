using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;

namespace SplitBatch.Proof.Mutants;

/// <summary>One build of the library that holds every slip of a room, beside the tests that are to notice them.</summary>
/// <param name="Folder">The folder with the tests and the changed library.</param>
/// <param name="Mutants">The slips.</param>
/// <param name="NotCompiled">Places at which a slip does not compile.</param>
internal sealed partial record MutantBuild(string Folder, IReadOnlyList<Mutant> Mutants, int NotCompiled)
{
    /// <summary>Builds it.</summary>
    /// <param name="root">The project's top folder.</param>
    /// <param name="room">The room within the library, as <c>Evidence</c>.</param>
    /// <param name="scratch">A scratch folder.</param>
    public static MutantBuild Of(string root, string room, string scratch)
    {
        var source = Path.Combine(root, "src", "SplitBatch");
        var copy = Path.Combine(scratch, "src", "SplitBatch");
        foreach (var name in Directory.EnumerateFiles(root, "Directory.*.props").Append(Path.Combine(root, "global.json")))
            File.Copy(name, Path.Combine(scratch, Path.GetFileName(name)));
        var files = Directory.EnumerateFiles(source, "*", SearchOption.AllDirectories)
            .Where(file => !file.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}")
                && !file.Contains($"{Path.DirectorySeparatorChar}bin{Path.DirectorySeparatorChar}")).ToList();
        foreach (var file in files)
        {
            var to = Path.Combine(copy, Path.GetRelativePath(source, file));
            Directory.CreateDirectory(Path.GetDirectoryName(to)!);
            File.Copy(file, to);
        }

        var (texts, mutants, left) = Rewritten(source, files, room);
        foreach (var (file, text) in texts) File.WriteAllText(Path.Combine(copy, file), text);
        File.WriteAllText(Path.Combine(copy, room, "Mutant.cs"), Mutant.Switch);
        var tests = Path.Combine(root, "tests", "SplitBatch.Tests");
        Run(tests, "build", "-c", "Release", "-v", "q");
        Run(copy, "build", "-c", "Release", "-v", "q", "-p:TreatWarningsAsErrors=false",
            "-p:NoWarn=CS1591%3BCS8509%3BCS8524%3BCS8846%3BCS8120%3BCA2211%3BCS0162", "-p:RunAnalyzers=false",
            "-p:EnforceCodeStyleInBuild=false");
        var folder = Path.Combine(scratch, "tests");
        Directory.CreateDirectory(folder);
        foreach (var file in Directory.EnumerateFiles(Path.Combine(tests, "bin", "Release", "net10.0"), "*.*"))
            File.Copy(file, Path.Combine(folder, Path.GetFileName(file)), overwrite: true);
        File.Copy(Path.Combine(copy, "bin", "Release", "net10.0", "SplitBatch.dll"), Path.Combine(folder, "SplitBatch.dll"),
            overwrite: true);
        return new(folder, mutants, left);
    }

    /// <summary>The changed texts. A slip that does not compile is left out, and it is all written anew until the rest does.</summary>
    private static (Dictionary<string, string> Texts, List<Mutant> Mutants, int Left) Rewritten(string source, List<string> files,
        string room)
    {
        var options = new CSharpParseOptions(LanguageVersion.Preview);
        const string usings = "global using System; global using System.Collections.Generic; global using System.IO; global using "
            + "System.Linq; global using System.Net.Http; global using System.Threading; global using System.Threading.Tasks;";
        var trees = files.Where(file => file.EndsWith(".cs", StringComparison.Ordinal))
            .ToDictionary(file => Path.GetRelativePath(source, file),
                file => CSharpSyntaxTree.ParseText(File.ReadAllText(file), options, file));
        var more = new[] { CSharpSyntaxTree.ParseText(usings + Usings(source), options),
            CSharpSyntaxTree.ParseText(Mutant.Switch, options) };
        var references = ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!).Split(Path.PathSeparator)
            .Where(path => Path.GetFileName(path) != "SplitBatch.dll").Select(path => MetadataReference.CreateFromFile(path));
        var compilation = CSharpCompilation.Create("SplitBatch", trees.Values.Concat(more), references,
            new(OutputKind.DynamicallyLinkedLibrary, nullableContextOptions: NullableContextOptions.Enable));
        var inRoom = trees.Where(pair => pair.Key.StartsWith(room + Path.DirectorySeparatorChar, StringComparison.Ordinal)).ToList();
        // What a source generator would write is missing here.
        var known = Errors(compilation, inRoom.Select(pair => pair.Value)).Select(error => error.Id).ToHashSet();
        var left = trees.Keys.ToDictionary(file => file, _ => new HashSet<int>());
        for (var round = 0; ; round++)
        {
            List<Mutant> mutants = [];
            Dictionary<string, SyntaxTree> changed = [];
            foreach (var (file, tree) in inRoom)
            {
                var rewriter = new SlipRewriter(compilation.GetSemanticModel(tree), file, mutants.Count + 1, left[file]);
                changed[file] = CSharpSyntaxTree.ParseText(rewriter.Visit(tree.GetRoot()).ToFullString(), options, file);
                mutants.AddRange(rewriter.Mutants);
            }

            var now = changed.Aggregate(compilation, (all, pair) => all.ReplaceSyntaxTree(trees[pair.Key], pair.Value));
            var errors = Errors(now, changed.Values).Where(error => !known.Contains(error.Id)).ToList();
            if (errors.Count == 0 || round == 8)
                return (changed.ToDictionary(pair => pair.Key, pair => pair.Value.ToString()), mutants,
                    left.Values.Sum(places => places.Count));
            foreach (var error in errors) LeaveOut(error, changed, left, mutants);
        }
    }

    /// <summary>Leaves out the slips around an error: all whose switch stands in the nearest text that holds one.</summary>
    private static void LeaveOut(Diagnostic error, Dictionary<string, SyntaxTree> changed, Dictionary<string, HashSet<int>> left,
        List<Mutant> mutants)
    {
        var file = error.Location.SourceTree!.FilePath;
        var around = changed[file].GetRoot().FindNode(error.Location.SourceSpan).AncestorsAndSelf()
            .First(node => node.ToString().Contains("Evidence.Mutant.", StringComparison.Ordinal));
        foreach (Match id in SwitchNumber().Matches(around.ToString()))
            left[file].Add(mutants[int.Parse(id.Groups[1].Value, CultureInfo.InvariantCulture) - 1].At);
    }

    private static IEnumerable<Diagnostic> Errors(CSharpCompilation compilation, IEnumerable<SyntaxTree> trees) =>
        trees.SelectMany(tree => compilation.GetSemanticModel(tree).GetDiagnostics())
            .Where(one => one.Severity == DiagnosticSeverity.Error);

    private static string Usings(string source)
    {
        var project = System.Xml.Linq.XDocument.Load(Path.Combine(source, "SplitBatch.csproj"));
        return string.Concat(project.Descendants("Using")
            .Select(one => $" global using {(one.Attribute("Static")?.Value == "true" ? "static " : "")}"
                + $"{one.Attribute("Include")!.Value};"));
    }

    private static void Run(string folder, params string[] words)
    {
        using var process =
            Process.Start(new ProcessStartInfo("dotnet", words) { WorkingDirectory = folder, RedirectStandardOutput = true })!;
        var said = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        if (process.ExitCode != 0)
            throw new InvalidOperationException($"dotnet {string.Join(' ', words)} in {Path.GetFileName(folder)}:\n{said}");
    }

    [GeneratedRegex(@"Evidence\.Mutant\.(?:Is|Words)\((\d+)")]
    private static partial Regex SwitchNumber();
}
