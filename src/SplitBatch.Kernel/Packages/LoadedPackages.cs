using System.Reflection;
using System.Runtime.InteropServices;

namespace SplitBatch.Kernel.Packages;

/// <summary>The packages that cells of one kernel can use.</summary>
internal sealed class LoadedPackages : IDisposable
{
    private static readonly HashSet<string> Own =
        [.. (AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES") as string ?? "").Split(Path.PathSeparator)
        .Select(Path.GetFileNameWithoutExtension).OfType<string>()];

    private readonly PackageRestore _restore = new();
    private readonly HashSet<string> _assemblies = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _natives = new(StringComparer.OrdinalIgnoreCase);
    private bool _listening;

    /// <summary>Fetches what a cell asks for and makes it known to this cell and later ones.</summary>
    /// <returns>A sentence for each package asked for, and the files that cells are to be compiled against.</returns>
    /// <exception cref="PackageException">A package cannot be had.</exception>
    public async Task<(IReadOnlyList<string> Said, IReadOnlyList<string> Files)> AddAsync(PackageRequest request,
        CancellationToken cancellation)
    {
        var found = await _restore.AddAsync(request, cancellation).ConfigureAwait(false);
        foreach (var native in found.SelectMany(p => p.Natives)) _natives[Path.GetFileNameWithoutExtension(native)] = native;
        if (_natives.Count > 0 && !_listening)
        {
            _listening = true;
            AppDomain.CurrentDomain.AssemblyLoad += OnLoad;
        }

        // What the kernel itself is built on stays as it is: two versions of one library in a process do not mix.
        var files = found.SelectMany(p => p.Assemblies).Where(a => !Own.Contains(Path.GetFileNameWithoutExtension(a)))
            .Where(_assemblies.Add).ToList();
        var said = request.Wishes.Select(w => found.First(p => p.Name.Equals(w.Name, StringComparison.OrdinalIgnoreCase))).Select(Sentence);
        return ([.. said], files);
    }

    /// <summary>Lets go of the temporary folder and of native libraries.</summary>
    public void Dispose()
    {
        AppDomain.CurrentDomain.AssemblyLoad -= OnLoad;
        _restore.Dispose();
    }

    private static string Sentence(RestoredPackage package)
    {
        var kept = package.Assemblies.Select(Path.GetFileNameWithoutExtension).OfType<string>().Where(Own.Contains)
            .Select(name => $"{name} {Assembly.Load(name).GetName().Version}").ToList();
        return kept.Count == 0
            ? $"{package.Name} {package.Version} is loaded."
            : $"{package.Name} {package.Version}: the kernel itself is built on {string.Join(" and ", kept)}; that is what cells use.";
    }

    private void OnLoad(object? sender, AssemblyLoadEventArgs loaded)
    {
        var assembly = loaded.LoadedAssembly;
        if (assembly.IsDynamic || !_assemblies.Contains(assembly.Location)) return;
        try
        {
            NativeLibrary.SetDllImportResolver(assembly, Find);
        }
        catch (InvalidOperationException)
        {
            // The library finds its native part by itself.
        }
    }

    private nint Find(string name, Assembly assembly, DllImportSearchPath? search) =>
        (_natives.GetValueOrDefault(Path.GetFileNameWithoutExtension(name)) ?? _natives.GetValueOrDefault(name)
            ?? _natives.GetValueOrDefault("lib" + name)) is { } file
            ? NativeLibrary.Load(file)
            : 0;
}
