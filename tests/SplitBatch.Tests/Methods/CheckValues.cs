using System.Globalization;
using System.Text.Json;
using SplitBatch.Numbers;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Methods;

/// <summary>One check value: what is asked, and what two programs answered. Read from tests/reference/methods/check-values.tsv.</summary>
public sealed record CheckValue(string Id, string Quantity, JsonElement Input, JsonElement Expected, double Tolerance)
{
    public static string Folder { get; } = FindFolder();

    public static IReadOnlyDictionary<string, CheckValue> All { get; } = File.ReadLines(Path.Combine(Folder, "check-values.tsv"))
        .Where(line => !line.StartsWith('#')).Skip(1)
        .Select(line => line.Split('\t'))
        .Select(cells => new CheckValue(cells[0], cells[1], Json(cells[2]), Json(cells[3]),
            double.Parse(cells[4], CultureInfo.InvariantCulture)))
        .ToDictionary(value => value.Id);

    public int Whole(string name) => Input.GetProperty(name).GetInt32();

    public double Number(string name) => Input.GetProperty(name).GetDouble();

    /// <summary>A number that may be null.</summary>
    public double? NumberOrNone(string name) =>
        Input.GetProperty(name) is { ValueKind: not JsonValueKind.Null } found ? found.GetDouble() : null;

    public bool Flag(string name) => Input.GetProperty(name).GetBoolean();

    public double[] Numbers(string name) => Doubles(Input.GetProperty(name));

    public int[] Wholes(string name) => [.. Input.GetProperty(name).EnumerateArray().Select(item => item.GetInt32())];

    public double[][] NumberLists(string name) => [.. Input.GetProperty(name).EnumerateArray().Select(Doubles)];

    public bool Has(string name) => Input.TryGetProperty(name, out _);

    public double Chance => ChanceOf(Input.GetProperty("g"));

    /// <summary>The protocol named, or a protocol without a direction and with the guessing chance named.</summary>
    public Protocol Protocol => Has("protocol") ? Protocol.Parse(Input.GetProperty("protocol").GetString()!)
        : Undirected(Chance);

    /// <summary>A directed protocol with the guessing chance named.</summary>
    public Protocol Directed => Math.Abs(Chance - 0.5) < 1e-9 ? Protocol.PairedDirectional : Protocol.ThreeAfc;

    /// <summary>The margin as a share in the task.</summary>
    public DeclaredMargin Margin => DeclaredMargin.OfShare(Number("margin"));

    /// <summary>The people of "groups".</summary>
    public IReadOnlyList<PersonSets> People => [.. Input.GetProperty("groups").EnumerateArray().SelectMany(group => Enumerable.Repeat(
        new PersonSets(group.GetProperty("sets").EnumerateArray().Select(kind => new SetsAtChance(kind[0].GetInt32(), ChanceOf(kind[1])))),
        group.GetProperty("people").GetInt32()))];

    /// <summary>The people of "people": for each task the right answers and the sets.</summary>
    public IEnumerable<IEnumerable<TaskCount>> TasksOfPeople =>
        Input.GetProperty("people").EnumerateArray().Select(person => person.EnumerateObject()
            .Select(task => new TaskCount(Protocol.Parse(task.Name), task.Value[1].GetInt32(), task.Value[0].GetInt32())));

    public static JsonElement Json(string text) => JsonDocument.Parse(text).RootElement;

    private static Protocol Undirected(double chance) => Math.Abs(chance - 0.5) < 1e-9 ? Protocol.DuoTrio : Protocol.Triangle;

    private static double[] Doubles(JsonElement list) => [.. list.EnumerateArray().Select(item => item.GetDouble())];

    private static double ChanceOf(JsonElement text) => text.GetString() switch
    {
        "1/2" => 1.0 / 2,
        "1/3" => 1.0 / 3,
        var other => throw new FormatException($"The guessing chance {other} is not known here."),
    };

    private static string FindFolder()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !Directory.Exists(Path.Combine(folder.FullName, "tests", "reference"))) folder = folder.Parent;
        Assert.NotNull(folder);
        return Path.Combine(folder.FullName, "tests", "reference", "methods");
    }
}
