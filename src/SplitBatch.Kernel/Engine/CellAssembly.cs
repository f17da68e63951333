using System.Collections.Immutable;
using System.Globalization;
using System.Reflection;
using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using System.Runtime.Loader;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.Emit;
using Microsoft.CodeAnalysis.Scripting;
using Microsoft.CodeAnalysis.Scripting.Hosting;
using SplitBatch.Kernel.Cells;

namespace SplitBatch.Kernel.Engine;

/// <summary>
/// What one cell is compiled to, loaded so that it goes when nothing holds anything of it any more. The engine's own way keeps the
/// assembly of every cell as long as the process lives.
/// </summary>
internal sealed class CellAssembly : AssemblyLoadContext
{
    private static readonly EmitOptions WithLines = new(debugInformationFormat: DebugInformationFormat.PortablePdb);

    private readonly Script? earlier;
    private readonly Func<AssemblyName, Assembly?> findPackaged;

    private CellAssembly(Script? earlier, InteractiveAssemblyLoader files, Func<AssemblyName, Assembly?> findPackaged)
        : base(isCollectible: true)
    {
        this.earlier = earlier;
        this.findPackaged = findPackaged;
        Resolving += (_, name) => EngineParts.Resolve(files, name.FullName, null);
    }

    /// <summary>Compiles a script and loads it, so that it runs from here.</summary>
    /// <param name="script">The script, not yet run.</param>
    /// <param name="files">Finds what cells refer to by file.</param>
    /// <param name="findPackaged">Finds the assembly of a package by its name, before the kernel's own of that name is.</param>
    /// <param name="cancellation">Stops the compiler.</param>
    /// <returns>Whether it holds types that the compiler uses again for later cells, as those of <c>new { A = 1 }</c>.</returns>
    /// <exception cref="CompilationErrorException">The script does not compile.</exception>
    public static bool Load(
        Script<object> script, InteractiveAssemblyLoader files, Func<AssemblyName, Assembly?> findPackaged, CancellationToken cancellation)
    {
        var compilation = script.GetCompilation();
        ThrowOnErrors(compilation.GetParseDiagnostics(cancellation));
        using var image = new MemoryStream();
        using var lines = script.Options.EmitDebugInformation ? new MemoryStream() : null;
        var emitted = compilation.Emit(image, lines, options: lines is null ? null : WithLines, cancellationToken: cancellation);
        ThrowOnErrors(emitted.Diagnostics);
        if (!emitted.Success)
        {
            EngineParts.Executor(script) = _ => Task.FromResult<object>(null!); // Usings alone: there is nothing to run.
            return false;
        }

        var shared = HasSharedTypes(image);
        var (woven, wovenLines) = CellWeaver.Weave(image, lines);
        var assembly = new CellAssembly(script.Previous, files, findPackaged).LoadFromStream(woven, wovenLines);
        StrayErrors.Own(assembly, RunningCell.Current!);
        var start = compilation.GetEntryPoint(cancellation)!;
        var method = assembly.GetType(start.ContainingType.MetadataName, throwOnError: true)!
            .GetMethod(start.MetadataName, BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic)!;
        EngineParts.Executor(script) = method.CreateDelegate<Func<object[], Task<object>>>();
        return shared;
    }

    /// <summary>Finds the assembly of an earlier cell, or of a package. Any other is found as usual.</summary>
    protected override Assembly? Load(AssemblyName assemblyName)
    {
        for (var script = earlier; script is not null; script = script.Previous)
        {
            if (script.GetCompilation().AssemblyName == assemblyName.Name)
                return EngineParts.Executor((Script<object>)script).Method.Module.Assembly;
        }

        return findPackaged(assemblyName);
    }

    private static void ThrowOnErrors(ImmutableArray<Diagnostic> diagnostics)
    {
        var errors = diagnostics.Where(d => d.Severity == DiagnosticSeverity.Error).ToImmutableArray();
        if (!errors.IsEmpty)
            throw new CompilationErrorException(CSharpDiagnosticFormatter.Instance.Format(errors[0], CultureInfo.CurrentCulture), errors);
    }

    private static bool HasSharedTypes(MemoryStream image)
    {
        image.Position = 0;
        using var file = new PEReader(image, PEStreamOptions.LeaveOpen);
        var reader = file.GetMetadataReader();
        return reader.TypeDefinitions.Select(t => reader.GetString(reader.GetTypeDefinition(t).Name))
            .Any(n =>
                n.StartsWith("<>f__Anonymous", StringComparison.Ordinal) || n.StartsWith("<>A", StringComparison.Ordinal)
                || n.StartsWith("<>F", StringComparison.Ordinal));
    }
}
