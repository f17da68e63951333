using System.Text.Json;

namespace SplitBatch.Kernel.Packages;

/// <summary>One package as the SDK restored it.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Version">The version chosen.</param>
/// <param name="Assemblies">Its assemblies for this system, as whole paths.</param>
/// <param name="Natives">Its native libraries for this system, as whole paths.</param>
internal sealed record RestoredPackage(string Name, string Version, IReadOnlyList<string> Assemblies, IReadOnlyList<string> Natives)
{
    /// <summary>Reads what a restore decided: the packages asked for, and those they need.</summary>
    /// <param name="assets">The text of <c>project.assets.json</c>.</param>
    public static IReadOnlyList<RestoredPackage> Read(string assets)
    {
        using var json = JsonDocument.Parse(assets);
        var folders = json.RootElement.GetProperty("packageFolders").EnumerateObject().Select(f => f.Name).ToList();
        var libraries = json.RootElement.GetProperty("libraries");
        var target = json.RootElement.GetProperty("targets").EnumerateObject().MaxBy(t => t.Name.Length).Value;
        // The longest name is that with the system's.
        return [.. target.EnumerateObject().Where(p => p.Value.GetProperty("type").GetString() == "package")
            .Select(p => Read(p, libraries.GetProperty(p.Name).GetProperty("path").GetString()!, folders))];
    }

    private static RestoredPackage Read(JsonProperty package, string path, List<string> folders)
    {
        var folder = folders.Select(f => Path.Combine(f, path)).FirstOrDefault(Directory.Exists)
            ?? throw new PackageException($"The package {package.Name} was restored and is not in {string.Join(", ", folders)}.");
        var slash = package.Name.IndexOf('/', StringComparison.Ordinal);
        return new(package.Name[..slash], package.Name[(slash + 1)..], Files("runtime"), Files("native"));

        List<string> Files(string kind) => package.Value.TryGetProperty(kind, out var files)
            ? [.. files.EnumerateObject().Where(f => !f.Name.EndsWith("/_._", StringComparison.Ordinal))
                .Select(f => Path.GetFullPath(Path.Combine(folder, f.Name)))]
            : [];
    }
}
