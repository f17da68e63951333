using System.IO.Compression;
using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using System.Runtime.InteropServices;
using System.Text;

namespace SplitBatch.Cli.Packages;

/// <summary>
/// What people download and what it takes on their disk. Sizes do not depend on how busy the machine is, so they are held to bounds.
/// </summary>
[Collection(PackageTests.Name)]
public sealed class SizeTests(PackedPackages packages)
{
    private const double MB = 1e6;

    private static string Platform => RuntimeInformation.RuntimeIdentifier;

    [Fact]
    public void The_command_s_package_for_one_platform_stays_below_its_bound()
    {
        using var zip = ZipFile.OpenRead(packages.PathOf($"SplitBatch.Cli.{Platform}"));
        Assert.InRange(new FileInfo(packages.PathOf($"SplitBatch.Cli.{Platform}")).Length / MB, 20, 38);
        Assert.InRange(zip.Entries.Sum(e => e.Length) / MB, 50, 97);
        Assert.DoesNotContain(zip.Entries, e => e.Name.EndsWith(".pdb", StringComparison.Ordinal));
        Assert.DoesNotContain(zip.Entries, e => e.Name.Contains("VisualBasic", StringComparison.Ordinal));
    }

    [Fact]
    public void The_package_that_leads_to_the_platforms_is_a_few_kilobytes() =>
        Assert.InRange(new FileInfo(packages.PathOf("SplitBatch.Cli")).Length, 500, 10_000);

    [Theory]
    [InlineData("SplitBatch", 0.9)]
    [InlineData("SplitBatch.Display", 0.8)]
    public void A_library_s_package_is_below_a_megabyte_and_holds_its_README_and_its_documentation(string id, double most)
    {
        Assert.InRange(new FileInfo(packages.PathOf(id)).Length / MB, 0.1, most);
        using var zip = ZipFile.OpenRead(packages.PathOf(id));
        Assert.NotNull(zip.GetEntry("README.md"));
        Assert.NotNull(zip.GetEntry($"lib/net10.0/{id}.xml"));
        Assert.Null(zip.GetEntry($"lib/net10.0/{id}.pdb"));
        using var symbols = ZipFile.OpenRead(packages.PathOf(id, "snupkg"));
        Assert.NotNull(symbols.GetEntry($"lib/net10.0/{id}.pdb"));
    }

    [Theory]
    [InlineData("SplitBatch")]
    [InlineData("SplitBatch.Display")]
    public void A_library_is_built_to_the_same_bytes_anywhere_and_its_symbols_hold_its_sources(string id)
    {
        using var zip = ZipFile.OpenRead(packages.PathOf(id));
        var bytes = Bytes(zip.GetEntry($"lib/net10.0/{id}.dll")!);
        using var image = new PEReader(new MemoryStream(bytes));
        Assert.Contains(image.ReadDebugDirectory(), entry => entry.Type == DebugDirectoryEntryType.Reproducible);
        Assert.DoesNotContain(Repository.Root, Encoding.UTF8.GetString(bytes), StringComparison.Ordinal);
        using var symbols = ZipFile.OpenRead(packages.PathOf(id, "snupkg"));
        using var pdb = MetadataReaderProvider.FromPortablePdbStream(new MemoryStream(Bytes(symbols.GetEntry($"lib/net10.0/{id}.pdb")!)));
        var reader = pdb.GetMetadataReader();
        var embedded = new Guid("0E8A571B-6926-466E-B4AD-8AB04611F5FE"); // "embedded source" in the portable PDB specification
        // The rest is generated.
        var own = reader.Documents
            .Where(handle => !reader.GetString(reader.GetDocument(handle).Name).Contains("/obj/", StringComparison.Ordinal)).ToList();
        Assert.True(own.Count > 50);
        Assert.All(own, handle =>
        {
            Assert.StartsWith("/_", reader.GetString(reader.GetDocument(handle).Name), StringComparison.Ordinal);
            Assert.Contains(reader.GetCustomDebugInformation(handle),
                h => reader.GetGuid(reader.GetCustomDebugInformation(h).Kind) == embedded);
        });
    }

    private static byte[] Bytes(ZipArchiveEntry entry)
    {
        using var from = entry.Open();
        using var to = new MemoryStream();
        from.CopyTo(to);
        return to.ToArray();
    }
}
