using SplitBatch.Kernel.Headless;

namespace SplitBatch.Kernel.Packages;

public class PackageRequestTests
{
    [Theory]
    [InlineData("#r \"nuget: Some.Package, 1.2.3\"", "Some.Package", "1.2.3")]
    [InlineData("  #r \"nuget:Some.Package,1.2.3-beta.4\"  ", "Some.Package", "1.2.3-beta.4")]
    [InlineData("#r \"nuget: Some.Package\"", "Some.Package", null)]
    [InlineData("#r \"nuget: Some.Package, *-*\"", "Some.Package", null)]
    [InlineData("#r \"nuget: Some.Package, [1.0, 2.0)\"", "Some.Package", "[1.0, 2.0)")]
    public void A_package_and_its_version_are_read(string code, string name, string? version) =>
        Assert.Equal((name, version), Assert.Single(PackageRequest.Read(code).Wishes));

    [Fact]
    public void The_rest_of_the_cell_keeps_its_lines()
    {
        var request =
            PackageRequest.Read("#i \"nuget: https://example.org/index.json\"\r\n#r \"nuget: One, 1.0\"\r\nvar a = 1;\r\n#r "
                + "\"local.dll\"");
        Assert.Equal("\r\n\r\nvar a = 1;\r\n#r \"local.dll\"", request.Rest);
        Assert.Equal("https://example.org/index.json", Assert.Single(request.Sources));
    }

    [Fact]
    public async Task A_folder_of_packages_is_named_as_a_whole_path()
    {
        using var current = await WorkingFolder.BorrowAsync();
        Assert.Equal(Path.Combine(Directory.GetCurrentDirectory(), "packages"),
            Assert.Single(PackageRequest.Read("#i \"nuget: packages\"").Sources));
    }

    [Theory]
    [InlineData("var text = \"nuget: One\";")]
    [InlineData("// #r \"nuget: One\"")]
    public void Other_lines_that_name_packages_ask_for_nothing(string code)
    {
        Assert.True(PackageRequest.Read(code).IsEmpty);
        Assert.Equal(code, PackageRequest.Read(code).Rest);
    }

    [Theory]
    [InlineData("#r \"nuget:\"")]
    [InlineData("#r \"nuget: two words\"")]
    [InlineData("#i \"nuget: \"")]
    public void A_line_that_names_nothing_is_refused_with_how_to_write_it(string code) =>
        Assert.Contains("Write it as #", Assert.Throws<FormatException>(() => PackageRequest.Read(code)).Message,
            StringComparison.Ordinal);
}
