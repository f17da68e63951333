using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace SplitBatch.Cli.House;

/// <summary>The direction of the arrows: between projects, and between the rooms of the library.</summary>
public partial class ArrowTests
{
    public static TheoryData<string, string[]> Projects => new()
    {
        { "SplitBatch", [] },
        { "SplitBatch.Display", ["SplitBatch"] },
        { "SplitBatch.Kernel", ["SplitBatch.Display"] },
        { "SplitBatch.Cli", ["SplitBatch.Kernel"] },
    };

    public static TheoryData<string, string[]> Rooms => new()
    {
        { "Numbers", [] },
        { "Brewing", ["Numbers"] },
        { "BrewDay", ["Brewing"] },
        { "Bitterness", ["Numbers", "Brewing"] },
        { "Series", ["Numbers", "Panel"] },
        { "Lab", ["Numbers", "BrewDay", "Bitterness"] },
        { "Panel", ["Numbers"] },
        { "Evidence", ["Numbers", "Brewing", "BrewDay", "Bitterness", "Lab", "Panel"] },
        { "Teaching", ["Numbers", "Brewing", "Bitterness", "Lab", "Panel", "Evidence"] },
        { "Trials", ["Numbers", "Brewing", "BrewDay", "Bitterness", "Lab", "Panel", "Evidence"] },
    };

    [Theory]
    [MemberData(nameof(Projects))]
    public void A_project_refers_only_to_the_one_below_it(string project, string[] below)
    {
        var file = XDocument.Load(Repository.Path("src", project, project + ".csproj"));
        var references = file.Descendants("ProjectReference").Select(node => Path.GetFileNameWithoutExtension(node.Attribute("Include")!.Value));
        Assert.Equal(below, references);
    }

    [Theory]
    [MemberData(nameof(Rooms))]
    public void A_room_of_the_library_looks_only_into_the_rooms_below_it(string room, string[] below)
    {
        var strays =
            from file in Directory.EnumerateFiles(Repository.Path("src", "SplitBatch", room), "*.cs", SearchOption.AllDirectories)
            from Match match in RoomName().Matches(File.ReadAllText(file))
            let other = match.Groups[1].Value
            where other != room && !below.Contains(other)
            select $"{Path.GetFileName(file)} names {other}";
        Assert.Empty(strays);
    }

    [Fact]
    public void Every_room_has_its_rule() =>
        Assert.Equal(
            Rooms.Select(row => (string)row[0]).Order(),
            Directory.EnumerateDirectories(Repository.Path("src", "SplitBatch")).Select(Path.GetFileName).Where(name => name is not ("bin" or "obj")).Order());

    [Fact]
    public void Only_the_trials_room_touches_files()
    {
        var strays = Directory.EnumerateFiles(Repository.Path("src", "SplitBatch"), "*.cs", SearchOption.AllDirectories)
            .Where(file => !file.Contains("Trials", StringComparison.Ordinal) && !file.Contains("obj", StringComparison.Ordinal))
            .Where(file => FileAccess().IsMatch(File.ReadAllText(file)))
            .Select(Path.GetFileName);
        Assert.Empty(strays);
    }

    [GeneratedRegex(@"SplitBatch\.(Numbers|Series|Brewing|BrewDay|Bitterness|Lab|Panel|Evidence|Teaching|Trials)\b")]
    private static partial Regex RoomName();

    [GeneratedRegex(@"\b(File|Directory|FileStream|StreamReader|StreamWriter)\.?(Open|Read|Write|Append|Exists|Create|Move|Delete)?\w*\(|\bConsole\.")]
    private static partial Regex FileAccess();
}
