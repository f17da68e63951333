using System.Xml.Linq;

namespace SplitBatch.Cli.House;

/// <summary>
/// The direction of the arrows between all folders of <c>src</c>. What a folder may look into is listed in <c>arrows.txt</c>, and drawn in
/// DEVELOPERS.md. To take a new arrow over, run these tests with SPLITBATCH_ACCEPT=1 and look at the difference; a circle is never taken
/// over.
/// </summary>
public class ArrowTests
{
    public static TheoryData<string, string[]> Projects => new()
    {
        { "SplitBatch", [] },
        { "SplitBatch.Display", ["SplitBatch"] },
        { "SplitBatch.Kernel", ["SplitBatch.Display"] },
        { "SplitBatch.Cli", ["SplitBatch.Kernel"] },
    };

    private static bool Accepts => Environment.GetEnvironmentVariable("SPLITBATCH_ACCEPT") == "1";

    [Theory]
    [MemberData(nameof(Projects))]
    public void A_project_refers_only_to_the_one_below_it(string project, string[] below)
    {
        var file = XDocument.Load(Repository.Path("src", project, project + ".csproj"));
        var references = file.Descendants("ProjectReference")
            .Select(node => Path.GetFileNameWithoutExtension(node.Attribute("Include")!.Value));
        Assert.Equal(below, references);
    }

    [Fact]
    public void No_two_folders_look_into_each_other() => AssertNone(Cycles.In(SourceArrows.Here.Arrows));

    [Fact]
    public void The_compiler_knows_every_name_that_an_arrow_could_hide_behind() => AssertNone(SourceArrows.Here.Unknown);

    [Fact]
    public void A_circle_is_told_with_what_makes_it()
    {
        var circle = Cycles.In(new Dictionary<(string, string), string>
        {
            [("P/Lab", "P/Panel/Counting")] = "Cochran.cs uses Count",
            [("P/Panel/Serving", "P/Lab")] = "Pour.cs uses Cochran",
            [("P/Panel/Serving", "P")] = "Pour.cs uses Guard",
        });
        Assert.Equal(["P: Lab -> Panel (Cochran.cs uses Count); Panel -> Lab (Pour.cs uses Cochran)"], circle);
    }

    [Fact]
    public void Every_arrow_is_allowed_and_every_allowed_arrow_is_used()
    {
        var file = Repository.Path("tests", "SplitBatch.Cli.Tests", "House", "arrows.txt");
        var now = AllowedArrows.Write(SourceArrows.Here.Arrows.Keys);
        if (Accepts) File.WriteAllText(file, now);
        var allowed = AllowedArrows.Read(File.ReadLines(file)).ToHashSet();
        Assert.Empty(SourceArrows.Here.Arrows.Where(arrow => !allowed.Contains(arrow.Key)).Select(arrow => $"{arrow.Key}: {arrow.Value}"));
        Assert.Empty(allowed.Except(SourceArrows.Here.Arrows.Keys));
    }

    [Fact]
    public void The_picture_of_the_rooms_shows_them_as_they_are()
    {
        var file = Repository.Path("DEVELOPERS.md");
        var text = File.ReadAllText(file);
        var drawn = RoomPicture.Into(text, SourceArrows.Here);
        if (Accepts) File.WriteAllText(file, drawn);
        else Assert.Equal(drawn, text);
    }

    [Fact]
    public void Every_folder_is_a_namespace()
    {
        var strays = SourceArrows.Here.Files
            .Select(file => (Name: Path.GetFileName(file),
                Declared: File.ReadLines(file).FirstOrDefault(line => line.StartsWith("namespace ", StringComparison.Ordinal)),
                Expected: $"namespace {SourceArrows.Here.FolderOf(file).Replace('/', '.')};"))
            .Where(file => file.Declared is not null && file.Declared != file.Expected)
            .Select(file => $"{file.Name}: {file.Declared} instead of {file.Expected}");
        Assert.Empty(strays);
    }

    private static void AssertNone(IEnumerable<string> faults)
    {
        var lines = string.Join('\n', faults);
        Assert.True(lines.Length == 0, lines);
    }
}
