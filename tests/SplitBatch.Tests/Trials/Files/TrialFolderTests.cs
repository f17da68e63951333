using System.Text;

namespace SplitBatch.Trials.Files;

public sealed class TrialFolderTests : IDisposable
{
    private readonly DirectoryInfo root = Directory.CreateTempSubdirectory("trial-");
    private readonly FaultList faults = [];

    public void Dispose() => root.Delete(recursive: true);

    private TrialFolder Make(string name, params (string File, string Text)[] files)
    {
        var folder = root.CreateSubdirectory(name);
        foreach (var (file, text) in files) File.WriteAllText(Path.Combine(folder.FullName, file), text);
        return new TrialFolder(folder.FullName);
    }

    [Fact]
    public void A_working_copy_replaces_an_earlier_one_and_nothing_else()
    {
        var source = Make("source", ("trial.json", "{}"));
        var target = Path.Combine(root.FullName, "copy");
        var copy = source.CopyTo(target);
        File.WriteAllText(copy.PathOf("extra.csv"), "x");
        Assert.False(source.CopyTo(target).Holds("extra.csv"));
        Assert.True(copy.IsWorkingCopy && copy.HoldsTrial && !source.IsWorkingCopy);

        var own = Make("own", ("precious.txt", "keep"));
        Assert.Throws<IOException>(() => source.CopyTo(own.Path));
        Assert.True(own.Holds("precious.txt"));
    }

    [Theory]
    [InlineData("../other.csv")]
    [InlineData("a/../../other.csv")]
    [InlineData("/etc/hostname")]
    public void A_name_that_leads_out_of_the_folder_is_refused(string name) =>
        Assert.Contains("leads out", Assert.Throws<ArgumentException>(() => Make("t").PathOf(name)).Message, StringComparison.Ordinal);

    [Fact]
    public void A_link_that_leads_out_is_not_followed()
    {
        if (OperatingSystem.IsWindows()) return;
        var folder = Make("t");
        File.WriteAllText(Path.Combine(root.FullName, "secret.txt"), "secret");
        File.CreateSymbolicLink(folder.PathOf("hops.csv"), Path.Combine(root.FullName, "secret.txt"));
        Assert.Null(folder.ReadText("hops.csv", faults));
        Assert.Contains("link", Assert.Single(faults).Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void Text_that_is_not_utf8_is_refused_with_what_to_do()
    {
        var folder = Make("t");
        File.WriteAllBytes(folder.PathOf("hops.csv"), Encoding.Latin1.GetBytes("lot,storage [°C]\n"));
        Assert.Null(folder.ReadText("hops.csv", faults));
        Assert.Contains("CSV UTF-8", Assert.Single(faults).Accepted, StringComparison.Ordinal);
    }

    [Fact]
    public void A_missing_file_is_one_fault()
    {
        Assert.Null(Make("t").ReadText("hops.csv", faults));
        Assert.Equal("hops.csv: The file is missing. Accepted: a file of this name in the folder \"t\".",
            Assert.Single(faults).ToString());
    }
}
