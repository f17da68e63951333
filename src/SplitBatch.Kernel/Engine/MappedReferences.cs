using System.Collections.Concurrent;
using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Scripting;
using Microsoft.DotNet.Interactive.CSharp;

namespace SplitBatch.Kernel.Engine;

/// <summary>
/// What cells are compiled against, read from files that are mapped into memory. The engine's own way copies every file whole into
/// the process, more than 100 MB of them; mapped, a page is read when it is needed, and thirty kernels on one machine share it.
/// </summary>
/// <remarks>
/// Every kernel maps the files for itself: the compiler keeps what it has read with the mapping, and two kernels that start at the same
/// moment on one mapping can each take a part of the other's types for its own.
/// The engine keeps its options to itself, so they are set where it keeps them (<see cref="EngineParts"/>).
/// </remarks>
internal sealed class MappedReferences : MetadataReferenceResolver
{
    /// <summary>What the kernel is built from and no cell is written against; not read at all.</summary>
    private static readonly string[] Unneeded = ["Microsoft.CodeAnalysis", "NetMQ", "AsyncIO", "NaCl", "System.ServiceModel"];

    private static readonly FrozenPlatform Platform = new();

    private readonly ConcurrentDictionary<string, Lazy<PortableExecutableReference>> _mapped;
    private readonly ScriptMetadataResolver _paths;

    private MappedReferences(string folder, ConcurrentDictionary<string, Lazy<PortableExecutableReference>> mapped)
    {
        _paths = ScriptMetadataResolver.Default.WithBaseDirectory(folder);
        _mapped = mapped;
    }

    /// <inheritdoc/>
    public override bool ResolveMissingAssemblies => true;

    /// <summary>Makes the engine compile cells against these files, in place of what it would reference by itself.</summary>
    public static void Attach(CSharpKernel kernel, IEnumerable<string> files)
    {
        var options = EngineParts.Options(kernel);
        var own = options.MetadataReferences.OfType<PortableExecutableReference>().Select(r => r.FilePath).OfType<string>();
        var mapped = new MappedReferences(Directory.GetCurrentDirectory(), new(StringComparer.Ordinal));
        Set(kernel, options.WithReferences(own.Concat(files).Distinct(StringComparer.Ordinal).Select(mapped.Map)), mapped);
    }

    /// <summary>
    /// Keeps to the current folder, from which relative paths in <c>#r</c> and <c>#load</c> start. Called before every cell.
    /// </summary>
    public static void Follow(CSharpKernel kernel)
    {
        var folder = Directory.GetCurrentDirectory();
        if (EngineParts.Options(kernel) is { MetadataResolver: MappedReferences mapped } options && folder != EngineParts.Folder(kernel))
        {
            Set(kernel, options, new MappedReferences(folder, mapped._mapped));
        }
    }

    /// <summary>
    /// Takes the files off what the next cell brings, since the cells before it have them. The engine would bring them again with every
    /// cell, and the compiler keep all of them: after a thousand cells, a thousand lists of thousands.
    /// </summary>
    public static void Settle(CSharpKernel kernel)
    {
        ref var options = ref EngineParts.Options(kernel);
        if (options.MetadataReferences.Length > 0) options = options.WithReferences(Array.Empty<MetadataReference>());
    }

    /// <inheritdoc/>
    public override ImmutableArray<PortableExecutableReference> ResolveReference(string reference, string? baseFilePath,
        MetadataReferenceProperties properties) =>
        Platform.Find(reference) is { } file ? [Map(file)] : _paths.ResolveReference(reference, baseFilePath, properties);

    /// <inheritdoc/>
    public override PortableExecutableReference? ResolveMissingAssembly(MetadataReference definition, AssemblyIdentity referenceIdentity)
    {
        if (Platform.Find(referenceIdentity.Name) is not { } file)
        {
            return _paths.ResolveMissingAssembly(definition, referenceIdentity);
        }

        return Unneeded.Any(u => referenceIdentity.Name.StartsWith(u, StringComparison.Ordinal)) ? null : Map(file);
    }

    /// <inheritdoc/>
    public override bool Equals(object? other) =>
        other is MappedReferences mapped && mapped._paths.Equals(_paths) && ReferenceEquals(mapped._mapped, _mapped);

    /// <inheritdoc/>
    public override int GetHashCode() => _paths.GetHashCode();

    private static void Set(CSharpKernel kernel, ScriptOptions options, MappedReferences resolver)
    {
        var folder = resolver._paths.BaseDirectory!;
        EngineParts.Options(kernel) = options.WithMetadataResolver(resolver)
            .WithSourceResolver(new SourceFileResolver(ImmutableArray<string>.Empty, folder));
        EngineParts.Folder(kernel) = folder;
    }

    private PortableExecutableReference Map(string file) => _mapped.GetOrAdd(file, static path => new(() => Open(path))).Value;

    private static PortableExecutableReference Open(string file)
    {
        var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.Read | FileShare.Delete);
        var documentation = Path.ChangeExtension(file, ".xml");
        return AssemblyMetadata.Create(ModuleMetadata.CreateFromStream(stream)).GetReference(
            File.Exists(documentation) ? XmlDocumentationProvider.CreateFromFile(documentation) : null,
            filePath: file,
            display: file);
    }

    /// <summary>The files this process runs on, by simple name: the framework's and the kernel's own.</summary>
    private sealed class FrozenPlatform
    {
        private readonly Dictionary<string, string> _files = new(StringComparer.OrdinalIgnoreCase);

        public FrozenPlatform()
        {
            var trusted = AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES") as string ?? "";
            foreach (var file in trusted.Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries))
            {
                _files.TryAdd(Path.GetFileNameWithoutExtension(file), file);
            }
        }

        public string? Find(string name) => _files.GetValueOrDefault(name);
    }
}
