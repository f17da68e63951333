using System.Diagnostics;
using System.IO.Compression;
using System.Text;

namespace SplitBatch.Cli.Packages;

/// <summary>
/// The three packages as <c>dotnet pack</c> makes them, in a feed of their own under a version that no cache knows, and an account of
/// their own to use them in: a home folder and a package folder that are empty at first.
/// </summary>
public sealed class PackedPackages : IAsyncLifetime
{
    private readonly DirectoryInfo _root = Directory.CreateTempSubdirectory("packages-");

    /// <summary>The version of the packages.</summary>
    public string Version { get; } = $"0.1.0-test.{DateTime.UtcNow:yyyyMMddHHmmss}";

    /// <summary>A later version of the command alone.</summary>
    public string Later => Version + ".later";

    /// <summary>The folder of packages.</summary>
    public string Feed => Path.Combine(_root.FullName, "feed");

    /// <summary>The account's home folder.</summary>
    public string Home => Path.Combine(_root.FullName, "home");

    public async Task InitializeAsync()
    {
        Directory.CreateDirectory(Home);
        foreach (var project in new[] { "SplitBatch", "SplitBatch.Display", "SplitBatch.Cli" }) await PackAsync(project);
        foreach (var package in Directory.GetFiles(Feed, $"SplitBatch.Cli.*{Version}.nupkg").Append(PathOf("SplitBatch.Cli")))
            CopyAsLater(package);
        await File.WriteAllTextAsync(Path.Combine(Home, "nuget.config"), $"""
            <configuration>
              <packageSources><add key="packed" value="{Feed}" /></packageSources>
            </configuration>
            """);
    }

    public Task DisposeAsync()
    {
        _root.Delete(recursive: true);
        return Task.CompletedTask;
    }

    /// <summary>A package's file.</summary>
    /// <param name="id">The package.</param>
    /// <param name="ending">Its kind.</param>
    public string PathOf(string id, string ending = "nupkg") => Path.Combine(Feed, $"{id}.{Version}.{ending}");

    /// <summary>Copies an example of <c>tests/packages</c> into the account, with the version filled in.</summary>
    public string Example(string name)
    {
        var place = Directory.CreateDirectory(Path.Combine(Home, name)).FullName;
        foreach (var file in Directory.EnumerateFiles(Repository.Path("tests", "packages", name)))
            File.WriteAllText(Path.Combine(place, Path.GetFileName(file)),
                File.ReadAllText(file).Replace("$VERSION", Version, StringComparison.Ordinal));
        return place;
    }

    /// <summary>Runs a program in the account, and fails where it does not end well.</summary>
    /// <param name="folder">Where it runs.</param>
    /// <param name="program">The program.</param>
    /// <param name="words">Its words.</param>
    /// <returns>What it said.</returns>
    public Task<string> RunAsync(string folder, string program, params string[] words)
    {
        var start = new ProcessStartInfo(program, words) { WorkingDirectory = folder };
        Enter(start);
        return EndAsync(start);
    }

    /// <summary>Runs a program to its end.</summary>
    public static async Task<string> EndAsync(ProcessStartInfo start)
    {
        start.RedirectStandardOutput = start.RedirectStandardError = true;
        using var process = Process.Start(start)!;
        var error = process.StandardError.ReadToEndAsync();
        var said = await process.StandardOutput.ReadToEndAsync() + await error;
        await process.WaitForExitAsync();
        Assert.True(process.ExitCode == 0,
            $"{start.FileName} {string.Join(' ', start.ArgumentList)} ended with {process.ExitCode}: {said}");
        return said;
    }

    /// <summary>Makes a program run in the account; packages of others come from this machine's own folder, without a network.</summary>
    public void Enter(ProcessStartInfo start)
    {
        var packages = Environment.GetEnvironmentVariable("NUGET_PACKAGES")
            ?? Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.UserProfile), ".nuget", "packages");
        start.Environment["HOME"] = start.Environment["USERPROFILE"] = start.Environment["DOTNET_CLI_HOME"] = Home;
        start.Environment["NUGET_PACKAGES"] = Path.Combine(_root.FullName, "restored");
        start.Environment["NUGET_FALLBACK_PACKAGES"] = packages;
        start.Environment["FEED"] = Feed;
        start.Environment["VERSION"] = Version;
        foreach (var name in new[] { "JUPYTER_DATA_DIR", "XDG_DATA_HOME", "MSBuildSDKsPath", "MSBUILD_EXE_PATH", "MSBuildExtensionsPath",
            "MSBuildLoadMicrosoftTargetsReadOnly" }) start.Environment.Remove(name);
    }

    private Task<string> PackAsync(string project) => EndAsync(new(
        "dotnet",
        ["pack", Repository.Path("src", project), "--artifacts-path", Path.Combine(_root.FullName, "artifacts"), "--output", Feed,
            $"-p:Version={Version}", "-v", "quiet", "-nodeReuse:false"]));

    /// <summary>The same package under the later version.</summary>
    private void CopyAsLater(string package)
    {
        var copy = package.Replace(Version, Later, StringComparison.Ordinal);
        if (File.Exists(copy)) return;
        File.Copy(package, copy);
        using var zip = ZipFile.Open(copy, ZipArchiveMode.Update);
        var entry = zip.Entries.Single(e => e.FullName.EndsWith(".nuspec", StringComparison.Ordinal));
        using var stream = entry.Open();
        var text = new StreamReader(stream).ReadToEnd().Replace($"<version>{Version}<", $"<version>{Later}<", StringComparison.Ordinal);
        stream.SetLength(0);
        stream.Write(Encoding.UTF8.GetBytes(text));
    }
}

/// <summary>Tests of the packages, which are made once for all of them.</summary>
[CollectionDefinition(Name)]
public sealed class PackageTests : ICollectionFixture<PackedPackages>
{
    public const string Name = "packages";
}
