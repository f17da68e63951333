using SplitBatch.Trials.Files;
using SplitBatch.Trials.Reading;

namespace SplitBatch.Trials.Seals;

/// <summary>
/// The examples' seals and panel logs, made by a fixed clock from what trial.json and the ballots say: they were invented, and so were
/// their dates. After a change of an example's plan or key, <c>SPLITBATCH_ACCEPT=1 dotnet test tests/SplitBatch.Tests --filter
/// ExampleSeals</c> makes them anew.
/// </summary>
public sealed class ExampleSealsTests : IDisposable
{
    private static readonly TimeSpan Zone = TimeSpan.FromHours(2);
    private readonly TemporaryFolder parent = new();

    public static TheoryData<string> Names =>
        [.. Directory.GetDirectories(Examples.Folder(""))
            .Where(path => new TrialFolder(path).HoldsTrial && Trial.Open(path).Panels.Count > 0).Select(path => Path.GetFileName(path)!)
            .Order(StringComparer.Ordinal)];

    public void Dispose() => parent.Dispose();

    [Theory]
    [MemberData(nameof(Names))]
    public void An_example_is_sealed_as_its_plan_says(string name)
    {
        var made = Make(name);
        foreach (var (file, text) in made)
        {
            var path = Path.Combine(Examples.Folder(name), file);
            if (Environment.GetEnvironmentVariable("SPLITBATCH_ACCEPT") == "1") File.WriteAllText(path, text);
            Assert.True(File.Exists(path) && File.ReadAllText(path) == text,
                $"{name}/{file} is not what its plan gives; make it anew with SPLITBATCH_ACCEPT=1, and look at it.");
        }

        var trial = Trial.Open(Examples.Folder(name));
        Assert.All(trial.Panels, panel => Assert.True(panel.Custody is { IsSealed: true, Changes: [], Breaks: [], Looks: [] }));
        Assert.Empty(trial.Plan.Unrecorded);
    }

    private Dictionary<string, string> Make(string name)
    {
        // The plan is sealed as it was before anything was served: without ballots, seals or log.
        var copy = new TrialFolder(Examples.Folder(name)).CopyTo(parent.PathOf(name));
        foreach (var file in copy.Names("seal-*.json").Concat(copy.Names("ballots-*.csv")).Append(PanelEvent.Log.FileName))
            File.Delete(copy.PathOf(file));
        var draft = Trial.Open(copy.Path);
        var day = draft.Panels.Select(panel => panel.Plan.Declared).OfType<DateOnly>().DefaultIfEmpty(new DateOnly(2026, 3, 2)).Min();
        _ = new SealDesk(copy, new FixedClock(day, 18, 5))
        {
            MadeBy = "SplitBatch (invented)",
            Salt = () => Fingerprint.Of(System.Text.Encoding.UTF8.GetBytes(name)).Digits[..32],
        }
            .Add(draft.Title, draft.Plan.Now, () => draft.Plan.Now.Panels.ToDictionary(panel => panel.Name, _ => 0), null);
        var served = Trial.Open(Examples.Folder(name)).Panels
            .Where(panel => panel.Serving is not null && panel.Ballots.Count > 0).ToList();
        foreach (var panel in served)
        {
            var evening = DateOnly.FromDateTime(panel.Ballots.Min(ballot => ballot.When)!.Value.DateTime);
            new PanelEvent($"served-{panel.Name}", PanelEventKind.Served, panel.Name, At(evening, 10, 0))
            {
                Key = Fingerprint.Of(File.ReadAllBytes(Path.Combine(Examples.Folder(name), ServingKeyFile.NameOf(panel.Name)))),
                Seal = Fingerprint.Of(File.ReadAllBytes(copy.PathOf("seal-1.json"))),
            }.Append(copy);
        }

        foreach (var panel in served)
        {
            var last = DateOnly.FromDateTime(panel.Ballots.Max(ballot => ballot.When)!.Value.DateTime);
            new PanelEvent($"closed-{panel.Name}", PanelEventKind.Closed, panel.Name, At(last, 23, 30))
            {
                Day = last,
                Ballots = panel.Ballots.Count,
            }.Append(copy);
        }

        return copy.Names("seal-*.json").Concat(copy.Names(PanelEvent.Log.FileName))
            .ToDictionary(file => file, file => File.ReadAllText(copy.PathOf(file)));
    }

    private static DateTimeOffset At(DateOnly day, int hour, int minute) => new(day.ToDateTime(new TimeOnly(hour, minute)), Zone);

    private sealed class FixedClock(DateOnly day, int hour, int minute) : TimeProvider
    {
        public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.CreateCustomTimeZone("example", Zone, "example", "example");

        public override DateTimeOffset GetUtcNow() => At(day, hour, minute).ToUniversalTime();
    }
}
