using System.Text.Json;

namespace SplitBatch.Cli.Packages;

/// <summary>The command on a clean account: installed, its kernel made known, updated, uninstalled; and what is left then.</summary>
[Collection(PackageTests.Name)]
public sealed class AccountTests(PackedPackages packages)
{
    private string Tools => Path.Combine(packages.Home, ".dotnet", "tools");

    private string Kernel => Path.Combine(packages.Home, ".local", "share", "jupyter", "kernels", "splitbatch");

    [Fact]
    public async Task Installed_updated_and_uninstalled_it_leaves_nothing_but_the_kernel_of_which_it_said_how_to_remove_it()
    {
        await ToolAsync("install", packages.Version);
        Assert.InRange(Size(Tools) / 1e6, 60, 172);
        var said = await CommandAsync("kernel", "install");
        Assert.Contains("Before you uninstall splitbatch, run splitbatch kernel remove", said, StringComparison.Ordinal);
        Assert.InRange(Size(Kernel) / 1e6, 3, 4); // The chart library; the command is not copied.
        Assert.Contains("kernel", await StartedBy("--help"), StringComparison.Ordinal);

        await ToolAsync("update", packages.Later);
        Assert.DoesNotContain(packages.Version + Path.DirectorySeparatorChar,
            string.Join('\n', Directory.GetFiles(Tools, "*", SearchOption.AllDirectories)), StringComparison.Ordinal);
        // The kernel of before the update starts the command of after it.
        Assert.Contains("kernel", await StartedBy("--help"), StringComparison.Ordinal);
        await CommandAsync("kernel", "install");
        await CommandAsync("kernel", "remove");
        Assert.False(Directory.Exists(Kernel));

        await CommandAsync("kernel", "install");
        await packages.RunAsync(packages.Home, "dotnet", "tool", "uninstall", "--global", "SplitBatch.Cli");
        Assert.Equal([".store"], Directory.GetFileSystemEntries(Tools).Select(Path.GetFileName));
        Assert.Empty(Directory.GetFiles(Tools, "*", SearchOption.AllDirectories));
        Assert.Equal(["kernel.json", "plotly.min.js"], Directory.GetFileSystemEntries(Kernel).Select(Path.GetFileName).Order());
    }

    private Task<string> ToolAsync(string what, string version) =>
        packages.RunAsync(packages.Home, "dotnet", "tool", what, "--global", "SplitBatch.Cli", "--version", version, "--add-source",
            packages.Feed);

    private Task<string> CommandAsync(params string[] words) => packages.RunAsync(packages.Home, Path.Combine(Tools, "splitbatch"), words);

    /// <summary>Runs what Jupyter would run, with other words after the program.</summary>
    private async Task<string> StartedBy(params string[] words)
    {
        using var spec = JsonDocument.Parse(await File.ReadAllTextAsync(Path.Combine(Kernel, "kernel.json")));
        string[] program = [.. spec.RootElement.GetProperty("argv").EnumerateArray().Select(w => w.GetString()!)
            .TakeWhile(w => w != "kernel")];
        return await packages.RunAsync(packages.Home, program[0], [.. program[1..], .. words]);
    }

    private static long Size(string folder) =>
        new DirectoryInfo(folder).GetFiles("*", SearchOption.AllDirectories).Where(f => f.LinkTarget is null).Sum(f => f.Length);
}
