using SplitBatch.BrewDay;
using SplitBatch.Brewing;
using SplitBatch.Evidence.Findings;
using SplitBatch.Lab;
using SplitBatch.Panel;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;
using SplitBatch.Panel.Liking;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Evidence;

/// <summary>Trials with several panels, counted or not, combined or not.</summary>
internal static class SeveralCases
{
    public static IEnumerable<(string State, TrialEvidence Evidence)> All()
    {
        var (main, evening) =
            (SamplePanel.Single(Protocol.Triangle, 24, 11), SamplePanel.Single(Protocol.Tetrad, 24, 12, name: "evening"));
        var single = SamplePanel.Single(Protocol.Triangle, 24, 13, name: "main.2");
        PanelCount[] counts = [new("main", Protocol.Triangle, 24, 11), new("evening", Protocol.Tetrad, 24, 12)];
        yield return ("no panel, invented", SamplePanel.Trial() with { Invented = true });
        yield return ("one panel", SamplePanel.Trial(main));
        yield return ("one panel, an earlier one not counted",
            SamplePanel.Trial(main) with { NotCounted = ["first", "second"], PassedOver = ["first", "second"] });
        yield return ("one panel, a later one not counted", SamplePanel.Trial(main) with { NotCounted = ["later"] });
        yield return ("two side by side", SamplePanel.Trial(main, evening));
        yield return ("two with like names", SamplePanel.Trial(main, single));
        yield return ("two combined", SamplePanel.Trial(main, evening) with { Together = Forest.Of(counts).Combine() });
        yield return ("two combined that disagree",
            SamplePanel.Trial(main, evening) with
            {
                Together = Forest.Of([new("main", Protocol.Triangle, 100, 95), new("evening", Protocol.Triangle, 100, 33)]).Combine(),
            });
        yield return ("two combined without an upper limit",
            SamplePanel.Trial(main, evening) with
            {
                Together = Forest.Of([new("main", Protocol.Triangle, 24, 24), new("evening", Protocol.Triangle, 24, 24)]).Combine(),
            });
        yield return ("the same people, one task",
            SamplePanel.Trial(main, single) with { TogetherByPeople = People(20, Protocol.Triangle) });
        yield return ("the same people, two tasks",
            SamplePanel.Trial(main, evening) with { TogetherByPeople = People(20, Protocol.Tetrad) });
        yield return ("the same few people, two tasks",
            SamplePanel.Trial(main, evening) with { TogetherByPeople = People(5, Protocol.Tetrad) });
        yield return ("one person, two tasks", SamplePanel.Trial(main, evening) with { TogetherByPeople = People(1, Protocol.Tetrad) });
        yield return ("one of two below chance",
            SamplePanel.Trial(SamplePanel.Single(Protocol.Triangle, 24, 1), evening) with { Together = Forest.Of(counts).Combine() });
    }

    private static ReturningPeople People(int people, Protocol second) => ReturningPeople.Of(
        Enumerable.Range(0, people).Select(i => new TaskCount[] { new(Protocol.Triangle, 1, i % 2), new(second, 1, i % 3 == 0 ? 1 : 0) }));
}
