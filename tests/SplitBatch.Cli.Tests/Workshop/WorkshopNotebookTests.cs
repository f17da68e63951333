using System.Text.Json.Nodes;
using SplitBatch.Kernel.Notebooks;

namespace SplitBatch.Cli.Workshop;

/// <summary>
/// The workshop's notebooks: a learner who answers nothing is helped and never stopped; the instructor's answers are all right.
/// </summary>
public class WorkshopNotebookTests(ExecutedWorkshop run) : IClassFixture<ExecutedWorkshop>
{
    private const string Learner = "learner", Instructor = "instructor";

    public static TheoryData<string, int> Exercises => new()
    {
        { "1-guess-or-taste", 4 }, { "2-how-many-tasters", 4 }, { "3-three-neighbours-six-rounds", 4 }, { "4-equal-bitterness", 4 },
        { "5-read-this-return", 4 }, { "6-one-honest-sentence", 3 },
    };

    public static TheoryData<string> Names => [.. All];

    private static readonly string[] All =
        ["1-guess-or-taste", "2-how-many-tasters", "3-three-neighbours-six-rounds", "4-equal-bitterness", "5-read-this-return",
            "6-one-honest-sentence", "7-live-tally"];

    [Fact]
    public void Every_notebook_runs_to_its_end()
    {
        Assert.All(run.Learner.Concat(run.Instructor), outcome => Assert.True(outcome.Succeeded, outcome.ToString()));
        Assert.Equal(All, run.Learner.Select(outcome => outcome.Name));
        Assert.Equal(All, run.Instructor.Select(outcome => outcome.Name));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void The_notebooks_are_those_that_their_source_makes(string name)
    {
        var made = WorkshopFolder.Make(Repository.Path("notebooks", "workshop"));
        Assert.Equal(2 * All.Length, made.Count);
        foreach (var path in new[] { name + ".ipynb", $"{WorkshopFolder.Instructor}/{name}.ipynb" })
            Assert.Equal(made[path], File.ReadAllText(Repository.Path("notebooks", "workshop", path)).ReplaceLineEndings("\n"));
    }

    [Theory]
    [MemberData(nameof(Exercises))]
    public void A_cell_that_nobody_answered_gives_a_hint(string name, int exercises)
    {
        var replies = Replies(Learner, name, "exercise");
        Assert.Equal(exercises, replies.Count);
        Assert.All(replies, reply => Assert.StartsWith("Not answered yet. ", reply, StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Exercises))]
    public void Every_solution_is_right(string name, int exercises)
    {
        var replies = Replies(Instructor, name, "solution");
        Assert.Equal(exercises, replies.Count);
        Assert.All(replies, reply => Assert.StartsWith("Right. ", reply, StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void A_learners_notebook_holds_no_solution(string name) =>
        Assert.DoesNotContain(run.Notebook(Learner, name).Cells,
            cell => cell.Tags.Contains("solution") || cell.Source.Contains("instructor", StringComparison.OrdinalIgnoreCase));

    [Theory]
    [MemberData(nameof(Exercises))]
    public void A_notebook_names_its_goal_and_its_time(string name, int exercises)
    {
        _ = exercises;
        var first = run.Notebook(Learner, name).Cells[0].Source;
        Assert.Contains("**Goal:**", first, StringComparison.Ordinal);
        Assert.Matches(@"\*\*Time:\*\* \d+ minutes", first);
    }

    [Fact]
    public void The_charts_with_sliders_carry_them_into_the_page()
    {
        var page = run.Page(Learner, "2-how-many-tasters");
        foreach (var slider in new[] { "tasters", "people who can tell", "alpha, the error allowed" })
            Assert.Equal(2, page.Split($"\"prefix\":\"{slider}: \"").Length - 1);
    }

    [Fact]
    public void The_tally_counts_the_example_and_gives_its_verdict() => Assert.Contains(
        Cells(Learner, "7-live-tally").SelectMany(Texts),
        text => text.StartsWith("All 24 ballots are in. 24 blind sets were tasted by the triangle protocol, each by another person, and "
            + "11 answers were right", StringComparison.Ordinal));

    [Fact]
    public void The_curated_notebooks_are_run_without_the_workshop() =>
        Assert.Equal(6, Directory.GetFiles(Repository.Path("notebooks"), "*.ipynb").Length);

    private List<string> Replies(string reader, string name, string tag) =>
        [.. Cells(reader, name).Where(cell => (cell["metadata"]?["tags"] as JsonArray)?.Any(one => (string?)one == tag) == true)
            .Select(cell => Assert.Single(Texts(cell)))];

    private IEnumerable<JsonNode> Cells(string reader, string name) =>
        JsonNode.Parse(run.Notebook(reader, name).ToString())!["cells"]!.AsArray().Select(cell => cell!);

    private static IEnumerable<string> Texts(JsonNode cell) =>
        (cell["outputs"] as JsonArray ?? [])
            .Select(output => string.Concat(output!["data"]!["text/plain"]!.AsArray().Select(line => (string?)line)));
}
