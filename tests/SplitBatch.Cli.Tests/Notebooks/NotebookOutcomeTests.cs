using System.Globalization;
using System.Text.RegularExpressions;
using SplitBatch.Display.Browser;
using SplitBatch.Kernel.Notebooks;

namespace SplitBatch.Cli.Notebooks;

/// <summary>
/// What the notebooks say, and not only that they run. The numbers are those of published tables where there are any:
/// ISO 4120 (13 of 24 at 5 %; 9 of 24 rule out 30 % at beta 10 %), the exact binomial tail of 11 of 24 at 1/3 (R 4.2,
/// pbinom(10, 24, 1/3, lower.tail = FALSE) = 0.1400), and ISO 5725-6 (2.8 x 0.6 x sqrt(1/4 + 1/4) = 1.19).
/// </summary>
public partial class NotebookOutcomeTests(ExecutedNotebooks run) : IClassFixture<ExecutedNotebooks>
{
    public static TheoryData<string> Names => ["1-design", "2-hop-charges", "3-lab-return", "4-panel-statistics", "5-write-up", "6-learn"];

    [Fact]
    public void Every_notebook_runs_to_its_end() =>
        Assert.All(run.Outcomes, outcome => Assert.True(outcome.Succeeded, outcome.ToString()));

    [Theory]
    [MemberData(nameof(Names))]
    public void A_notebook_has_a_chart_and_a_table_and_no_error(string name)
    {
        var outputs = run.Outputs(name);
        Assert.DoesNotContain(outputs, output => (string?)output["output_type"] == "error");
        Assert.Contains(outputs, output => output["data"]?["application/vnd.plotly.v1+json"] is not null);
        Assert.Contains(run.Pages(name),
            page => page.Contains("<table", StringComparison.Ordinal) && page.Contains("<caption", StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void A_notebook_names_no_folder_of_this_machine(string name)
    {
        foreach (var ending in new[] { ".ipynb", ".html" })
        {
            var text = File.ReadAllText(Path.Combine(run.Output, name + ending));
            Assert.DoesNotContain(Repository.Root, text, StringComparison.Ordinal);
            Assert.DoesNotContain(run.Output, text, StringComparison.Ordinal);
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void A_page_asks_nothing_of_a_network(string name)
    {
        var page = File.ReadAllText(Path.Combine(run.Output, name + ".html"));
        Assert.DoesNotMatch(OutsideResource(), page);
    }

    [Fact]
    public void The_design_asks_for_forty_tasters_and_has_twenty_four()
    {
        var texts = run.Texts("1-design");
        Assert.Contains(texts,
            text => text.StartsWith("triangle: 40 tasters to show a difference when 30 % are discriminators", StringComparison.Ordinal));
        Assert.Contains(texts,
            text => text.Contains("13 right show a difference, 9 or fewer rule the margin out", StringComparison.Ordinal));
    }

    [Fact]
    public void The_two_charges_are_matched_within_the_scale()
    {
        var match = run.Texts("2-hop-charges").First(text => text.Contains("left by rounding", StringComparison.Ordinal));
        var numbers = Estimates().Match(match);
        Assert.InRange(Math.Abs(Number(numbers.Groups[1]) - 28), 0, 0.5);
        Assert.InRange(Math.Abs(Number(numbers.Groups[2]) - Number(numbers.Groups[1])), 0, 0.3);
    }

    [Fact]
    public void The_lab_difference_is_larger_than_its_critical_difference()
    {
        var sentence = Assert.Single(run.Texts("3-lab-return"),
            text => text.StartsWith("A 27.1 BU (mean of 2) and B 24.4 BU (mean of 2) differ by 2.7 BU", StringComparison.Ordinal)
                && !text.Contains("ways", StringComparison.Ordinal));
        Assert.Contains("lie within 1.2 BU of each other in 95 cases out of 100: the difference is larger", sentence,
            StringComparison.Ordinal);
    }

    [Fact]
    public void The_panel_settles_nothing_and_says_what_would()
    {
        var texts = run.Texts("4-panel-statistics");
        Assert.Contains(texts,
            text => text.StartsWith("11 right of 24 (triangle): no difference shown at 5 % (p = 0.140; 13 needed). That does not mean "
                + "the same", StringComparison.Ordinal));
        Assert.Contains(texts,
            text => text.StartsWith("24 blind sets were tasted by the triangle protocol", StringComparison.Ordinal)
                && text.Contains("no difference is shown, which does not mean that there is none", StringComparison.Ordinal));
    }

    [Fact]
    public void The_chance_by_guessing_is_reached_in_two_ways_that_agree()
    {
        var line = Assert.Single(run.Texts("4-panel-statistics"),
            text => text.StartsWith("Share of panels of guessers", StringComparison.Ordinal));
        var shares = line.Split(' ').Where(word => word.StartsWith("0.", StringComparison.Ordinal))
            .Select(word => double.Parse(word, CultureInfo.InvariantCulture)).ToArray();
        Assert.Equal(0.140, shares[1]); // R 4.2.2: pbinom(10, 24, 1/3, lower.tail = FALSE) = 0.1401
        Assert.InRange(shares[0], 0.130, 0.150); // Four standard errors of twenty thousand panels.
    }

    [Fact]
    public void The_write_up_reads_what_notebook_three_logged()
    {
        Assert.Contains(run.Pages("5-write-up"),
            page => page.Contains("The lab measured 27.1 BU in half A and 24.4 BU in half B", StringComparison.Ordinal));
        var folder = Path.Combine(run.Output, "amber-cone-or-pellet", "write-up");
        Assert.Contains("It is open whether tasters can tell them apart", File.ReadAllText(Path.Combine(folder, "write-up.html")),
            StringComparison.Ordinal);
        Assert.Contains("It is open whether tasters can tell them apart", File.ReadAllText(Path.Combine(folder, "write-up.md")),
            StringComparison.Ordinal);
    }

    [Fact]
    public void The_index_leads_to_the_write_up_in_every_form()
    {
        var index = File.ReadAllText(Path.Combine(run.Output, "index.html"));
        foreach (var form in new[] { "write-up.html", "write-up.md", "write-up.docx", "summary-16x9.svg", "summary-square.svg",
            "tables/ledger.csv" })
        {
            Assert.Contains($"href=\"amber-cone-or-pellet/write-up/{form}\"", index, StringComparison.Ordinal);
            Assert.True(File.Exists(Path.Combine(run.Output, "amber-cone-or-pellet", "write-up", form)), form);
        }
    }

    [HtmlCheckerFact]
    public void Every_page_of_a_run_is_valid_HTML() =>
        Assert.Empty(
            HtmlChecker.Findings(run.Outcomes.Select(outcome => Path.Combine(run.Output, outcome.Name + ".html"))
                .Append(Path.Combine(run.Output, "index.html"))));

    [Theory]
    [MemberData(nameof(Names))]
    public void The_results_kept_in_a_notebook_are_those_of_a_fresh_run(string name)
    {
        var kept = File.ReadAllText(Repository.Path("notebooks", name + ".ipynb")).ReplaceLineEndings("\n");
        var fresh = Notebook.Parse(kept);
        NotebookPreview.Fill(fresh, Notebook.Load(Path.Combine(run.Output, name + ".ipynb")));
        Assert.Equal(kept, fresh.ToString());
        Assert.Contains("\"image/svg+xml\"", kept, StringComparison.Ordinal);
        Assert.InRange(kept.Length, 1, NotebookPreview.LargestPreview);
    }

    [Fact]
    public void The_pictures_that_the_README_shows_are_there() =>
        Assert.All(Pictures().Matches(File.ReadAllText(Repository.Path("README.md"))),
            match => Assert.True(File.Exists(Repository.Path(match.Groups[1].Value)), match.Value));

    [Fact]
    public void The_example_in_the_checkout_stays_as_it_came() =>
        Assert.False(File.Exists(Repository.Path("data-demo", "amber-cone-or-pellet", "lab-returns.csv")));

    private static double Number(Group group) => double.Parse(group.Value, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"!\[[^\]]+\]\(([^)]+)\)")]
    private static partial Regex Pictures();

    [GeneratedRegex(@": ([\d.]+) and ([\d.]+) IBU by Tinseth")]
    private static partial Regex Estimates();

    [GeneratedRegex("""<(?:script|link|img|iframe)[^>]+(?:src|href)\s*=\s*["'](?:https?:)?//""", RegexOptions.IgnoreCase)]
    private static partial Regex OutsideResource();
}
