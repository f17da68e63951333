using SplitBatch.Trials;

namespace SplitBatch.Display.WriteUp;

/// <summary>The write-ups of the three invented trials.</summary>
public class TrialReportTests
{
    private static string Demo(string name)
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !Directory.Exists(Path.Combine(folder.FullName, "data-demo"))) folder = folder.Parent;
        return Path.Combine(folder!.FullName, "data-demo", name);
    }

    private static readonly Lazy<Document> Cones = new(() => TrialReport.Of(Trial.Open(Demo("amber-cone-or-pellet"))));

    private static readonly Lazy<Document> Stout = new(() => TrialReport.Of(Trial.Open(Demo("stout-early-or-late"))));

    private static readonly Lazy<Document> Lager = new(() => TrialReport.Of(Trial.Open(Demo("lager-first-wort"))));

    [Fact]
    public void The_three_differ_where_they_should()
    {
        var verdicts = new[] { Cones, Stout, Lager }.Select(d => d.Value.Blocks.OfType<Callout>().First().Text).ToList();
        Assert.Equal(3, verdicts.Distinct().Count());
        Assert.Contains("settles nothing", verdicts[0], StringComparison.Ordinal);
        Assert.Contains("a difference is shown", verdicts[1], StringComparison.Ordinal);
        Assert.Contains("ruled out", verdicts[2], StringComparison.Ordinal);
    }

    [Fact]
    public void Every_claim_stands_in_the_ledger_once()
    {
        foreach (var document in new[] { Cones.Value, Stout.Value, Lager.Value })
        {
            Assert.Single(document.Blocks.OfType<Ledger>());
            Assert.Equal(document.AllClaims.Count, document.AllClaims.Select(c => c.Sentence).Distinct().Count());
            Assert.All(document.AllClaims.Where(c => c.Numbers.Count > 0), claim => Assert.NotEmpty(claim.Method));
        }
    }

    [Fact]
    public void A_trial_written_up_twice_gives_the_same_page()
    {
        var again = TrialReport.Of(Trial.Open(Demo("stout-early-or-late")));
        Assert.Equal(Stout.Value.ToHtml(), again.ToHtml());
        Assert.Equal(Stout.Value.ToMarkdown(), again.ToMarkdown());
    }

    [Fact]
    public void An_example_says_that_it_is_invented()
    {
        Assert.Contains("invented example", Cones.Value.ToHtml(), StringComparison.Ordinal);
        Assert.Contains("Invented data", Cones.Value.Summary!.ToSvg(), StringComparison.Ordinal);
    }
}
