using Xunit;

namespace SplitBatch.Kernel.Jupyter;

public sealed class CompiledCopyTests : IDisposable
{
    private readonly DirectoryInfo _root = Directory.CreateTempSubdirectory("compiled-");

    public void Dispose() => _root.Delete(recursive: true);

    [CompilerFact]
    public async Task A_copy_is_compiled_ahead_of_time_and_what_is_no_library_goes_with_it()
    {
        var built = _root.CreateSubdirectory("built");
        foreach (var name in new[] { "NaCl.dll", "AsyncIO.dll" })
            File.Copy(Path.Combine(AppContext.BaseDirectory, name), Path.Combine(built.FullName, name));
        File.WriteAllText(Path.Combine(built.CreateSubdirectory("notebooks").FullName, "one.ipynb"), "{}");
        var copy = Path.Combine(_root.FullName, "copy");
        Assert.False(CompiledCopy.IsCompiled(Path.Combine(built.FullName, "NaCl.dll")));
        Assert.Null(await CompiledCopy.MakeAsync(Path.Combine(built.FullName, "NaCl.dll"), copy));
        Assert.True(CompiledCopy.IsCompiled(Path.Combine(copy, "NaCl.dll")));
        Assert.True(CompiledCopy.IsCompiled(Path.Combine(copy, "AsyncIO.dll")));
        Assert.Equal(["AsyncIO.dll", "NaCl.dll", "notebooks/one.ipynb"], Directory.EnumerateFiles(copy, "*", SearchOption.AllDirectories)
            .Select(f => Path.GetRelativePath(copy, f).Replace('\\', '/')).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task What_cannot_be_compiled_is_told_and_nothing_is_left_behind()
    {
        var built = _root.CreateSubdirectory("broken");
        File.WriteAllText(Path.Combine(built.FullName, "Broken.dll"), "this is no library");
        var copy = Path.Combine(_root.FullName, "copy");
        Assert.NotNull(await CompiledCopy.MakeAsync(Path.Combine(built.FullName, "Broken.dll"), copy));
        Assert.False(Directory.Exists(copy));
    }

    /// <summary>Skipped where the SDK's compiler package was never fetched; in continuous integration it is fetched.</summary>
    private sealed class CompilerFactAttribute : FactAttribute
    {
        public CompilerFactAttribute()
        {
            var cache = Environment.GetEnvironmentVariable("NUGET_PACKAGES")
                ?? Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.UserProfile), ".nuget", "packages");
            var there = Directory.Exists(cache) && Directory.EnumerateDirectories(cache, "microsoft.netcore.app.crossgen2.*").Any();
            Skip = Installed.Reason(() =>
                there ? null
                : "The SDK's compiler package microsoft.netcore.app.crossgen2 is not on this machine; splitbatch kernel install "
                + "fetches it.");
        }
    }
}
