using System.Globalization;
using System.Text;
using SplitBatch.Panel.Serving;
using SplitBatch.Trials.Files;

namespace SplitBatch.Trials.Seals;

/// <summary>
/// An invented trial folder with two panels, every entry of its plan written out, to be sealed, served, answered and tampered with.
/// </summary>
internal sealed class SealedFolder : IDisposable
{
    public static readonly DateTimeOffset Afternoon = new(2026, 5, 2, 14, 0, 0, TimeSpan.FromHours(2));

    private readonly TemporaryFolder folder = new();

    public SealedFolder(string panel = Triangle, string second = Second) => folder.Write("trial.json", $$"""
        {
          "title": "Cool or warm?",
          "question": "Can tasters tell a pale ale fermented cool from one fermented warm?",
          "would change my mind": "a difference shown",
          "variable": "fermentation temperature",
          "hop variable": "form",
          "held equal": ["one mash"],
          "follows from the variable": ["days to final gravity"],
          "beers": { "A": "cool", "B": "warm" },
          "lab": { "precision": [ { "analyte": "bitterness", "kind": "standard deviation", "condition": "repeatability", "value [BU]": 0.7 } ],
                   "just noticeable difference": { "low [BU]": 3, "high [BU]": 5, "source": "an invented one" } },
          "panel that decides": "main",
          "panels together": "side by side",
          "panels": [ {{panel}}, {{second}} ]
        }
        """);

    public const string Triangle = """
        { "name": "main", "protocol": "triangle", "tasters": 24, "replicates": 1, "sessions": 1, "alpha": 0.05, "power": 0.8, "margin": 0.25, "beta": 0.05,
                      "stopping": "fixed", "seed": 7, "prior": { "a": 1, "b": 1 }, "asked beside": ["liking"],
                      "rules": { "duplicates": "first", "knew variable": "exclude", "brewer": "exclude", "late": "exclude", "no usable answer": "exclude",
                                 "missing": "exclude", "closes": "2026-05-02 23:00", "brewers": ["T23"], "tasters who knew": ["T24"] } }
        """;

    /// <summary>The triangle with nobody who brewed or knew.</summary>
    public static string Plain { get; } = Triangle.Replace("[\"T23\"]", "[]", StringComparison.Ordinal)
        .Replace("[\"T24\"]", "[]", StringComparison.Ordinal);

    public const string Directed = """
        { "name": "main", "protocol": "paired directional", "tasters": 24, "expected": "B", "attribute": "fruity", "margin": 0.25, "seed": 7 }
        """;

    public const string Second = """{ "name": "second", "protocol": "triangle", "tasters": 12, "seed": 8 }""";

    public string Path => folder.Path;

    public TrialFolder Folder => new(folder.Path);

    public Trial Open() => Trial.Open(folder.Path);

    public Trial Seal() => Open().Seal(At(0));

    public Trial Serve(string panel = "main", string? keyFolder = null) => Open().Serve(panel, keyFolder: keyFolder, clock: At(1));

    public IReadOnlyList<string> Warnings() => [.. Trial.Check(folder.Path).Select(fault => fault.ToString())];

    public string Read(string file) => folder.Read(file);

    public void Write(string file, string text) => File.WriteAllText(folder.PathOf(file), text, new UTF8Encoding(false));

    public bool Holds(string file) => File.Exists(folder.PathOf(file));

    public void Edit(string file, string old, string by)
    {
        Assert.Contains(old, folder.Read(file), StringComparison.Ordinal);
        Write(file, folder.Read(file).Replace(old, by, StringComparison.Ordinal));
    }

    /// <summary>Writes ballots of the first sets, so many of them right.</summary>
    public void Answer(int right, int of = 24, string panel = "main")
    {
        var sets = Open().Panel(panel).Serving!.Sets;
        Answer([.. sets.Take(of).Select((set, i) => Row(set, i < right, i))], panel);
    }

    public void Answer(IEnumerable<string> rows, string panel = "main") =>
        Write($"ballots-{panel}.csv", "taster,set,answer,when\n" + string.Concat(rows.Select(row => row + "\n")));

    public static string Row(ServedSet set, bool right, int minute)
    {
        var code = set.Order.OddBeer is { } odd
            ? set.CodedCups.First(cup => cup.Beer == odd == right).Code
            : set.CodedCups.First(cup => cup.Beer == Side.B == right).Code;
        return string.Create(CultureInfo.InvariantCulture, $"{set.Taster},{set.Number},{code},2026-05-02 19:{minute % 60:00}");
    }

    public void Dispose() => folder.Dispose();

    /// <summary>A clock that stands so many hours after the afternoon of the seal.</summary>
    public static TimeProvider At(int hours) => new Clock(Afternoon.AddHours(hours));

    private sealed class Clock(DateTimeOffset now) : TimeProvider
    {
        public override TimeZoneInfo LocalTimeZone { get; } = TimeZoneInfo.CreateCustomTimeZone("test", Afternoon.Offset, "test", "test");

        public override DateTimeOffset GetUtcNow() => now.ToUniversalTime();
    }
}
