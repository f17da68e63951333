using System.Collections.Concurrent;
using System.Reflection;
using System.Runtime.Loader;

namespace SplitBatch.Kernel.Packages;

/// <summary>
/// Where the packages of one kernel are loaded: apart from the kernel's own libraries, so that cells can have another version of them, and
/// together, so that each finds the others by name alone.
/// </summary>
internal sealed class PackageContext() : AssemblyLoadContext("packages")
{
    private readonly ConcurrentDictionary<string, string> files = new(StringComparer.OrdinalIgnoreCase);
    private readonly ConcurrentDictionary<string, string> natives = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>
    /// The loaded assembly of the same name from another file: it cannot be changed for this one any more. Null where none is.
    /// </summary>
    public AssemblyName? InPlaceOf(string file) => Assemblies
        .FirstOrDefault(a => a.GetName().Name == Path.GetFileNameWithoutExtension(file) && a.Location != file)?.GetName();

    /// <summary>Adds what a package holds for this system.</summary>
    public void Add(RestoredPackage package, IEnumerable<string> assemblies)
    {
        foreach (var file in assemblies) files[Path.GetFileNameWithoutExtension(file)] = file;
        foreach (var (culture, file) in package.Satellites) files[$"{culture}/{Path.GetFileNameWithoutExtension(file)}"] = file;
        foreach (var file in package.Natives)
        {
            // A library is asked for by its file's name, without the ending, or without what that begins with on this system.
            var bare = Path.GetFileNameWithoutExtension(file);
            natives[Path.GetFileName(file)] = natives[bare] = file;
            if (bare.StartsWith("lib", StringComparison.Ordinal)) natives.TryAdd(bare[3..], file);
        }
    }

    /// <summary>The assembly of this name from a package; null where no package holds one.</summary>
    public Assembly? Find(AssemblyName name)
    {
        var key = string.IsNullOrEmpty(name.CultureName) ? name.Name : $"{name.CultureName}/{name.Name}";
        return key is not null && files.TryGetValue(key, out var file) ? LoadFromAssemblyPath(file) : null;
    }

    /// <inheritdoc/>
    protected override Assembly? Load(AssemblyName assemblyName) => Find(assemblyName);

    /// <inheritdoc/>
    protected override nint LoadUnmanagedDll(string unmanagedDllName) =>
        natives.TryGetValue(unmanagedDllName, out var file) ? LoadUnmanagedDllFromPath(file) : 0;
}
