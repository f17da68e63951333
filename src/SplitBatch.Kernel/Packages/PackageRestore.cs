using System.Runtime.InteropServices;
using System.Security;
using System.Text.RegularExpressions;

namespace SplitBatch.Kernel.Packages;

/// <summary>
/// Fetches packages through the .NET SDK's own restore, so that the user's sources, cache and credentials hold. It writes a project in a
/// temporary folder with every package asked for so far, and reads what the restore decided.
/// </summary>
internal sealed partial class PackageRestore : IDisposable
{
    private readonly Dictionary<string, string?> _wished = new(StringComparer.OrdinalIgnoreCase);
    private readonly List<string> _sources = [];
    private DirectoryInfo? _folder;

    /// <summary>Adds to what was asked for, and restores all of it.</summary>
    /// <exception cref="PackageException">There is no SDK, or a package cannot be had.</exception>
    public async Task<IReadOnlyList<RestoredPackage>> AddAsync(PackageRequest request, CancellationToken cancellation)
    {
        var wished = new Dictionary<string, string?>(_wished, StringComparer.OrdinalIgnoreCase);
        foreach (var (name, version) in request.Wishes)
        {
            if (version is not null && _wished.TryGetValue(name, out var earlier) && earlier != version)
            {
                throw new PackageException(
                    $"{name} is loaded already, as {earlier ?? "the newest version"}. A loaded package cannot be changed for another "
                    + $"version; restart the kernel first.");
            }

            wished[name] = version ?? wished.GetValueOrDefault(name);
        }

        // A folder named earlier may be gone; what was fetched from it is in the cache.
        var sources = _sources.Where(s => s.Contains("://", StringComparison.Ordinal) || Directory.Exists(s)).Concat(request.Sources)
            .Distinct().ToList();
        var found = request.Wishes.Count == 0 ? [] : await RestoreAsync(wished, sources, cancellation).ConfigureAwait(false);
        foreach (var (name, version) in wished) _wished[name] = version;
        _sources.Clear();
        _sources.AddRange(sources);
        return found;
    }

    /// <summary>Removes the temporary folder.</summary>
    public void Dispose()
    {
        if (_folder is { Exists: true }) _folder.Delete(recursive: true);
    }

    private async Task<IReadOnlyList<RestoredPackage>> RestoreAsync(Dictionary<string, string?> wished, List<string> sources,
        CancellationToken cancellation)
    {
        _folder ??= Directory.CreateTempSubdirectory("splitbatch-packages-");
        SdkProject.Write(_folder.FullName, "packages.csproj", Project(wished, sources));
        try
        {
            var (exitCode, said) =
                await SdkProject.CallAsync(_folder.FullName, ["restore", "packages.csproj", "--nologo", "--verbosity", "quiet"],
                cancellation).ConfigureAwait(false);
            if (exitCode != 0) throw new PackageException(Explain(said));
        }
        catch (System.ComponentModel.Win32Exception error)
        {
            throw new PackageException(NoSdk, error);
        }

        return RestoredPackage.Read(
            await File.ReadAllTextAsync(Path.Combine(_folder.FullName, "obj", "project.assets.json"), CancellationToken.None)
            .ConfigureAwait(false));
    }

    private static string Explain(string said)
    {
        if (said.Contains("No .NET SDKs were found", StringComparison.Ordinal)
            || said.Contains("does not exist", StringComparison.Ordinal)
            && said.Contains("dotnet restore", StringComparison.Ordinal)) return NoSdk;
        var faults = Fault().Matches(said).Select(m => $"{m.Groups["id"].Value}: {m.Groups["what"].Value.Trim()}").Distinct().ToList();
        var offline =
            faults.Any(f =>
            f.StartsWith("NU1301", StringComparison.Ordinal) || f.StartsWith("NU1101", StringComparison.Ordinal)
            || f.StartsWith("NU1102", StringComparison.Ordinal));
        return (faults.Count > 0 ? string.Join('\n', faults) : $"The packages could not be restored. The SDK said: {said.Trim()}")
            + (offline
                ? "\nWithout a network, name a version that this machine has fetched before, or a folder that holds the package: #i "
                + "\"nuget: folder\"." : "");
    }

    private static string Project(Dictionary<string, string?> wished, List<string> sources) => $"""
        <Project Sdk="Microsoft.NET.Sdk">
          <PropertyGroup>
            <TargetFramework>net{Environment.Version.Major}.0</TargetFramework>
            <RuntimeIdentifier>{RuntimeInformation.RuntimeIdentifier}</RuntimeIdentifier>
            <SelfContained>false</SelfContained>
            <UseAppHost>false</UseAppHost>
            <ManagePackageVersionsCentrally>false</ManagePackageVersionsCentrally>
            <NuGetAudit>false</NuGetAudit>
            <RestoreAdditionalProjectSources>{SecurityElement.Escape(string.Join(';', sources))}</RestoreAdditionalProjectSources>
          </PropertyGroup>
          <ItemGroup>
        {string.Join('\n', wished.Select(Reference))}
          </ItemGroup>
        </Project>
        """;

    private static string Reference(KeyValuePair<string, string?> wish) =>
        $"    <PackageReference Include=\"{SecurityElement.Escape(wish.Key)}\" Version=\"{SecurityElement.Escape(wish.Value ?? "*")}\" />";

    private const string NoSdk =
        "Packages are fetched by the .NET SDK, and none was found on this machine (a runtime alone does not do it). Install the SDK, "
            + "or refer to the library's file: #r \"path/to/library.dll\".";

    [GeneratedRegex(@"error (?<id>NU\d+|MSB\d+|NETSDK\d+): (?<what>.*?)(\[[^\]\r\n]*\])?\r?$", RegexOptions.Multiline)]
    private static partial Regex Fault();
}
