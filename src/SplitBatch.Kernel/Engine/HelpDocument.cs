using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.Host.Mef;
using Microsoft.CodeAnalysis.Scripting;
using Microsoft.CodeAnalysis.Text;

namespace SplitBatch.Kernel.Engine;

/// <summary>
/// The cell being written, on top of one text that declares what all cells before it have made: however many there were, a question about
/// it looks through two texts.
/// </summary>
internal sealed class HelpDocument : IDisposable
{
    private static readonly CSharpParseOptions Parse = new(LanguageVersion.Latest, DocumentationMode.Parse, SourceCodeKind.Script);
    private static readonly Lazy<ImmutableArray<MetadataReference>> Platform = new(FindPlatform);

    private readonly AdhocWorkspace workspace = new(MefHostServices.DefaultHost, WorkspaceKind.Interactive);
    private readonly ConditionalWeakTable<Script, CellDeclarations> declared = [];
    private readonly SemaphoreSlim turn = new(1, 1);
    private readonly List<(string Text, ProjectId Id)> layers = [];
    private Script? known;
    private int references = -1;
    private Solution? solution;
    private ProjectId? open;

    /// <summary>A cell as a document.</summary>
    /// <param name="code">Its text.</param>
    /// <param name="last">The cell before it that was kept; null for none.</param>
    /// <param name="cancellation">Gives it up.</param>
    public async Task<Document> OfAsync(string code, Script? last, CancellationToken cancellation)
    {
        Solution now;
        ProjectId project;
        await turn.WaitAsync(cancellation).ConfigureAwait(false);
        try
        {
            if (solution is null || !ReferenceEquals(known, last)) await CatchUpAsync(last, cancellation).ConfigureAwait(false);
            (now, project) = (solution!, open!);
        }
        finally
        {
            turn.Release();
        }

        var id = DocumentId.CreateNewId(project);
        return now.AddDocument(id, "cell", SourceText.From(code)).GetDocument(id)!;
    }

    /// <inheritdoc/>
    public void Dispose() => workspace.Dispose();

    private async Task CatchUpAsync(Script? last, CancellationToken cancellation)
    {
        var chain = new List<Script>();
        for (var script = last; script is not null; script = script.Previous) chain.Add(script);
        chain.Reverse();
        var options = last?.GetCompilation().Options ?? new CSharpCompilationOptions(OutputKind.DynamicallyLinkedLibrary);
        var cells = chain.Select(script => declared.GetValue(script, CellDeclarations.Of)).ToList();
        var files = cells.SelectMany(cell => cell.References).DistinctBy(file => file.Display).ToImmutableArray();

        // The first cell lies below the others as it stands: its usings would clash with later ones.
        var texts = chain.Count == 0 ? [""] : CellDeclarations.Join(cells.Skip(1).ToList()).Prepend(chain[0].Code).ToList();
        KeepFirst(references == files.Length ? layers.Zip(texts).TakeWhile(pair => pair.First.Text == pair.Second).Count() : 0);
        references = files.Length;
        var all = Platform.Value.AddRange(files);
        foreach (var text in texts.Skip(layers.Count).ToList())
        {
            var id = AddProject(options, all);
            solution = solution!.AddDocument(DocumentId.CreateNewId(id), "known", SourceText.From(text));
            layers.Add((text, id));

            // Built before anything is asked, so that all questions share it.
            await solution.GetProject(id)!.GetCompilationAsync(cancellation).ConfigureAwait(false);
        }

        open = AddProject(options, all);
        known = last;
    }

    /// <summary>Takes away the open cell, and all layers but the first.</summary>
    private void KeepFirst(int same)
    {
        known = null;
        if (solution is null || same == 0) solution = workspace.CurrentSolution;
        else
        {
            if (open is not null) solution = solution.RemoveProject(open);
            foreach (var (_, id) in layers.Skip(same).Reverse()) solution = solution.RemoveProject(id);
        }

        open = null;
        layers.RemoveRange(same, layers.Count - same);
    }

    private ProjectId AddProject(CompilationOptions options, ImmutableArray<MetadataReference> files)
    {
        var id = ProjectId.CreateNewId();
        var name = $"Known#{layers.Count}";
        solution = solution!.AddProject(ProjectInfo.Create(
            id, VersionStamp.Create(), name, name, LanguageNames.CSharp, parseOptions: Parse,
            compilationOptions: options.WithScriptClassName(name), metadataReferences: files, isSubmission: true));
        if (layers.Count > 0) solution = solution.AddProjectReference(id, new ProjectReference(layers[^1].Id));
        return id;
    }

    /// <summary>The framework: from the SDK's reference pack, which has descriptions, or else as it runs.</summary>
    private static ImmutableArray<MetadataReference> FindPlatform()
    {
        var runtime = Path.GetDirectoryName(typeof(object).Assembly.Location)!;
        var packs = Path.Combine(runtime, "..", "..", "..", "packs", "Microsoft.NETCore.App.Ref");
        var pack = Directory.Exists(packs)
            ? Directory.GetDirectories(packs)
                .Select(folder =>
                    (Folder: folder, Version: Version.TryParse(Path.GetFileName(folder), out var found) ? found : new Version()))
                .Where(p => p.Version <= Environment.Version).OrderByDescending(p => p.Version)
                .Select(p => Path.Combine(p.Folder, "ref", $"net{p.Version.Major}.{p.Version.Minor}")).FirstOrDefault(Directory.Exists)
            : null;
        return [.. Directory.EnumerateFiles(pack ?? runtime, "*.dll").Select(Open).OfType<MetadataReference>()];
    }

    private static PortableExecutableReference? Open(string file)
    {
        try
        {
            var module = ModuleMetadata.CreateFromStream(File.OpenRead(file));
            _ = module.Name; // Native libraries lie among the managed ones.
            var words = Path.ChangeExtension(file, ".xml");
            return AssemblyMetadata.Create(module)
                .GetReference(File.Exists(words) ? XmlDocumentationProvider.CreateFromFile(words) : null, filePath: file, display: file);
        }
        catch (BadImageFormatException)
        {
            return null;
        }
    }
}
