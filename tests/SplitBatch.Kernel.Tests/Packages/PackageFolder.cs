using System.IO.Compression;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;

namespace SplitBatch.Kernel.Packages;

/// <summary>
/// A folder of packages made on the spot, so that fetching them needs no network. Names are new each time: the user's cache keeps what it
/// fetched.
/// </summary>
public sealed class PackageFolder : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("packages-");
    private readonly string _mark = Guid.NewGuid().ToString("N")[..12];
    private readonly List<string> _made = [];

    public string Place => _folder.FullName;

    /// <summary>A name that no earlier test run has used.</summary>
    public string Name(string name) => $"{name}.{_mark}";

    /// <summary>Packs one class, and what belongs to one system only.</summary>
    public void Pack(string name, string version, string code, string? needs = null,
        (string System, string Name, string File)? native = null)
    {
        var platform = ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!).Split(Path.PathSeparator)
            .Where(f =>
            Path.GetFileName(f) is "System.Runtime.dll" or "System.Private.CoreLib.dll" or "System.Runtime.InteropServices.dll");
        var references = platform.Concat(_made).Select(f => (MetadataReference)MetadataReference.CreateFromFile(f));
        var compilation =
            CSharpCompilation.Create(name, [CSharpSyntaxTree.ParseText(code)], references,
            new CSharpCompilationOptions(OutputKind.DynamicallyLinkedLibrary));
        var library = Path.Combine(Place, name + ".dll");
        var emitted = compilation.Emit(library);
        Assert.True(emitted.Success, string.Join('\n', emitted.Diagnostics));
        _made.Add(library);

        using var archive = ZipFile.Open(Path.Combine(Place, $"{name}.{version}.nupkg"), ZipArchiveMode.Create);
        archive.CreateEntryFromFile(library, $"lib/net8.0/{name}.dll");
        if (native is { } part) archive.CreateEntryFromFile(part.File, $"runtimes/{part.System}/native/{part.Name}");
        var dependency = needs is null ? "" : $"<dependency id=\"{needs}\" version=\"1.0.0\" />";
        using var writer = new StreamWriter(archive.CreateEntry(name + ".nuspec").Open());
        writer.Write($"""
            <?xml version="1.0"?>
            <package xmlns="http://schemas.microsoft.com/packaging/2013/05/nuspec.xsd"><metadata>
              <id>{name}</id><version>{version}</version><authors>test</authors><description>A package made by a test.</description>
              <dependencies><group targetFramework="net8.0">{dependency}</group></dependencies>
            </metadata></package>
            """);
    }

    public void Dispose()
    {
        _folder.Delete(recursive: true);
        var cache = Environment.GetEnvironmentVariable("NUGET_PACKAGES")
            ?? Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.UserProfile), ".nuget", "packages");
        if (!Directory.Exists(cache)) return;
        foreach (var kept in Directory.GetDirectories(cache, "*." + _mark)) Directory.Delete(kept, recursive: true);
    }
}
