using System.Runtime.InteropServices;
using SplitBatch.Kernel.Host;

namespace SplitBatch.Kernel.Packages;

/// <summary>A user's own packages by <c>#r "nuget: ..."</c>, from a folder, so without a network.</summary>
public sealed class PackageTests(HostFixture kernel, PackageFolder folder) : IClassFixture<HostFixture>, IClassFixture<PackageFolder>
{
    private const string NativeLibrary = "/usr/lib/x86_64-linux-gnu/libz.so.1";

    [Fact]
    public async Task A_package_and_what_it_needs_are_fetched_and_used_in_the_same_cell_and_later()
    {
        var (kettle, brew) = (folder.Name("Kettle"), folder.Name("Brew"));
        folder.Pack(kettle, "1.0.0", "namespace Made { public static class Kettle { public static double Litres => 22.5; } }");
        folder.Pack(brew, "1.0.0", "namespace Made { public static class Brew { public static double Twice() => 2 * Kettle.Litres; } }",
            needs: kettle);
        var (result, outputs) = await kernel.Run($"#i \"nuget: {folder.Place}\"\n#r \"nuget: {brew}, 1.0.0\"\nMade.Brew.Twice()");
        Assert.True(result.Succeeded, result.Error?.ToString());
        Assert.Equal($"{brew} 1.0.0 is loaded.", HostFixture.Text(outputs[0]));
        Assert.Equal("45", HostFixture.Text(outputs[1]));
        Assert.Equal("22.5", await kernel.Value("Made.Kettle.Litres"));

        var (again, _) = await kernel.Run($"#r \"nuget: {brew}, 1.0.0\"");
        Assert.True(again.Succeeded, again.Error?.ToString());
        var (other, _) = await kernel.Run($"#r \"nuget: {brew}, 2.0.0\"");
        Assert.Contains("restart the kernel first", other.Error!.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_package_that_is_nowhere_is_refused_by_name_and_the_kernel_goes_on()
    {
        folder.Pack(folder.Name("Mash"), "1.0.0", "class Mash { }");
        var (result, _) = await kernel.Run($"#i \"nuget: {folder.Place}\"\n#r \"nuget: {folder.Name("Mash")}, 9.0.0\"");
        Assert.Equal("PackageError", result.Error!.Name);
        Assert.Contains(folder.Name("Mash"), result.Error.Message, StringComparison.Ordinal);
        Assert.Contains(result.Error.Traceback, line => line.StartsWith("Without a network", StringComparison.Ordinal));
        Assert.Equal("2", await kernel.Value("1 + 1"));
    }

    [Fact]
    public async Task A_line_that_names_no_package_says_how_to_write_it()
    {
        var (result, _) = await kernel.Run("#r \"nuget: \"");
        Assert.Contains("Write it as #r", result.Error!.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Fetching_can_be_interrupted()
    {
        folder.Pack(folder.Name("Yeast"), "1.0.0", "class Yeast { }");
        var (result, _) =
            await kernel.Run($"#i \"nuget: {folder.Place}\"\n#r \"nuget: {folder.Name("Yeast")}, 1.0.0\"",
            limit: TimeSpan.FromMilliseconds(100));
        Assert.True(result.Interrupted);
    }

    [Fact]
    public async Task A_refused_wish_does_not_spoil_the_next()
    {
        var (malt, old, young) = (folder.Name("Malt"), folder.Name("Old"), folder.Name("Young"));
        folder.Pack(malt, "1.0.0", "namespace Made { public static class Malt { public static int Age => 1; } }");
        folder.Pack(old, "1.0.0", "namespace Made { public static class Old { public static int Age => Malt.Age; } }", needs: malt);
        folder.Pack(malt, "2.0.0", "namespace Made { public static class Malt { public static int Age => 2; } }");
        folder.Pack(young, "1.0.0", "namespace Made { public static class Young { } }", needs: malt, needed: "2.0.0");
        var (first, _) = await kernel.Run($"#i \"nuget: {folder.Place}\"\n#r \"nuget: {old}, 1.0.0\"\nMade.Old.Age");
        Assert.True(first.Succeeded, first.Error?.ToString());
        var (refused, _) = await kernel.Run($"#r \"nuget: {young}, 1.0.0\"");
        Assert.Contains("restart the kernel first", refused.Error!.Message, StringComparison.Ordinal);
        var (next, _) = await kernel.Run($"#r \"nuget: {old}, 1.0.0\"\nMade.Old.Age");
        Assert.True(next.Succeeded, next.Error?.ToString());
    }

    [Fact]
    public async Task Another_version_than_asked_for_is_said()
    {
        folder.Pack(folder.Name("Hop"), "1.2.0", "namespace Made { public static class Hop { } }");
        var (_, outputs) = await kernel.Run($"#i \"nuget: {folder.Place}\"\n#r \"nuget: {folder.Name("Hop")}, 1.1.0\"");
        Assert.Equal($"{folder.Name("Hop")} 1.2.0 is loaded; 1.1.0 is not available.", HostFixture.Text(Assert.Single(outputs)));
    }

    /// <summary>A library of the kernel that cells are not compiled against: a package may bring another version of it.</summary>
    [Fact]
    public async Task A_package_may_hold_another_version_of_what_the_kernel_itself_uses()
    {
        var name = folder.Name("Other");
        folder.Pack(name, "1.0.0", "namespace Made { public static class Cecil { public static int Two => 2; } }", library: "Mono.Cecil");
        var (result, outputs) = await kernel.Run($"#i \"nuget: {folder.Place}\"\n#r \"nuget: {name}, 1.0.0\"\nMade.Cecil.Two");
        Assert.True(result.Succeeded, result.Error?.ToString());
        Assert.Equal("2", HostFixture.Text(outputs[^1]));
        Assert.Equal("2", await kernel.Value("1 + 1"));
    }

    [Fact]
    public async Task Module_initialisers_run_and_a_type_is_found_by_its_name_alone()
    {
        var name = folder.Name("Starter");
        folder.Pack(name, "1.0.0", $$"""
            namespace Made
            {
                public static class Starter
                {
                    public static string Seen = "";
                    [System.Runtime.CompilerServices.ModuleInitializer]
                    public static void Begin() => Seen = System.Type.GetType("Made.Starter, {{name}}")!.Name;
                }
            }
            """);
        var (result, outputs) = await kernel.Run($"#i \"nuget: {folder.Place}\"\n#r \"nuget: {name}, 1.0.0\"\nMade.Starter.Seen");
        Assert.True(result.Succeeded, result.Error?.ToString());
        Assert.Equal("Starter", HostFixture.Text(outputs[^1]));
    }

    [NativeFact]
    public async Task The_native_part_of_a_package_is_found()
    {
        var name = folder.Name("Squeeze");
        folder.Pack(
            name, "1.0.0",
            "using System.Runtime.InteropServices; namespace Made { public static class Squeeze { [DllImport(\"squeeze\")] static "
                + "extern System.IntPtr zlibVersion(); public static string Version => Marshal.PtrToStringUTF8(zlibVersion()); } }",
            native: (RuntimeInformation.RuntimeIdentifier, "libsqueeze.so", NativeLibrary));
        var (result, outputs) = await kernel.Run($"#i \"nuget: {folder.Place}\"\n#r \"nuget: {name}, 1.0.0\"\nMade.Squeeze.Version");
        Assert.True(result.Succeeded, result.Error?.ToString());
        Assert.Matches(@"^1\.\d+", HostFixture.Text(outputs[^1]));
    }

    private sealed class NativeFactAttribute : FactAttribute
    {
        public NativeFactAttribute() =>
            Skip = Installed.Reason(() =>
            File.Exists(NativeLibrary) ? null : $"A native library to put into a package, {NativeLibrary}, is not on this machine.");
    }
}
