using System.Diagnostics;
using System.Reflection;

namespace SplitBatch.Kernel.Packages;

/// <summary>The packages that cells of one kernel can use.</summary>
/// <param name="shared">Files that cells are compiled against anyway: of these there is one version, the kernel's.</param>
internal sealed class LoadedPackages(IEnumerable<string> shared) : IDisposable
{
    /// <summary>What the kernel runs on, by simple name: the framework and its own libraries.</summary>
    private static readonly Dictionary<string, string> Own = (AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES") as string ?? "")
        .Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries)
        .GroupBy(file => Path.GetFileNameWithoutExtension(file), StringComparer.OrdinalIgnoreCase)
        .ToDictionary(files => files.Key, files => files.First(), StringComparer.OrdinalIgnoreCase);

    private static readonly string Framework = Path.GetDirectoryName(typeof(object).Assembly.Location)!;

    private readonly HashSet<string> one = [.. shared.Select(file => Path.GetFileNameWithoutExtension(file)), "Newtonsoft.Json"];
    private readonly HashSet<string> said = new(StringComparer.OrdinalIgnoreCase);
    private readonly PackageRestore restore = new();
    private readonly PackageContext context = new();

    /// <summary>Fetches what a cell asks for and makes it known to this cell and later ones.</summary>
    /// <returns>A sentence for each package asked for, and the files that cells are to be compiled against.</returns>
    /// <exception cref="PackageException">A package cannot be had.</exception>
    public async Task<(IReadOnlyList<string> Said, IReadOnlyList<string> Files)> AddAsync(
        PackageRequest request, CancellationToken cancellation)
    {
        var found = await restore.TryAsync(request, cancellation).ConfigureAwait(false);
        foreach (var file in found.SelectMany(package => package.Assemblies).Where(file => Kernels(file) is null)) Check(file);
        restore.Keep(request);
        var references = new List<string>();
        foreach (var package in found)
        {
            var apart = package.Assemblies.Where(file => Kernels(file) is null).ToList();
            context.Add(package, apart);
            references.AddRange(apart);
            references.AddRange(package.Assemblies.Select(Kernels).OfType<string>()
                .Where(file => Path.GetDirectoryName(file) != Framework));
        }

        var sentences = request.Wishes
            .Select(wish => Sentence(wish, found.First(p => p.Name.Equals(wish.Name, StringComparison.OrdinalIgnoreCase))));
        return ([.. sentences, .. found.SelectMany(Kept)], references);
    }

    /// <summary>The assembly of this name from a package; null where no package holds one.</summary>
    public Assembly? Find(AssemblyName name) => context.Find(name);

    /// <inheritdoc/>
    public void Dispose() => restore.Dispose();

    /// <summary>The kernel's own file that is used in place of a package's; null where the package's is loaded beside it.</summary>
    private string? Kernels(string file)
    {
        var name = Path.GetFileNameWithoutExtension(file);
        if (!Own.TryGetValue(name, out var own)) return null;
        var isOne = Path.GetDirectoryName(own) == Framework || one.Contains(name)
            || name.StartsWith("Microsoft.DotNet.Interactive", StringComparison.OrdinalIgnoreCase);
        return isOne || FileVersion(own) == FileVersion(file) ? own : null;
    }

    private void Check(string file)
    {
        if (context.InPlaceOf(file) is not { } loaded) return;
        throw new PackageException($"This needs {loaded.Name} {Product(file)}, and cells use {loaded.Version} of it already. "
            + "A loaded library cannot be changed for another version; restart the kernel first.");
    }

    private static string Sentence((string Name, string? Version) wish, RestoredPackage package) =>
        wish.Version is { } asked && Version.TryParse(asked, out var wished) && Version.TryParse(package.Version, out var had)
            && Three(wished) != Three(had)
            ? $"{package.Name} {package.Version} is loaded; {asked} is not available."
            : $"{package.Name} {package.Version} is loaded.";

    /// <summary>A sentence for each library of a package in another version than the kernel's, where cells use the kernel's.</summary>
    private IEnumerable<string> Kept(RestoredPackage package) => package.Assemblies
        .Select(file => (File: file, Own: Kernels(file)))
        .Where(pair =>
            pair.Own is not null && Path.GetDirectoryName(pair.Own) != Framework && FileVersion(pair.Own) != FileVersion(pair.File))
        .Where(pair => said.Add(pair.Own!))
        .Select(pair => $"{package.Name} {package.Version}: the kernel itself is built on {Path.GetFileNameWithoutExtension(pair.Own)} "
            + $"{Product(pair.Own!)}; that is what cells use.");

    private static Version Three(Version version) => new(version.Major, version.Minor, Math.Max(version.Build, 0));

    private static string? FileVersion(string file) => FileVersionInfo.GetVersionInfo(file).FileVersion;

    private static string? Product(string file) => FileVersionInfo.GetVersionInfo(file).ProductVersion?.Split('+')[0];
}
