using SplitBatch.BrewDay;
using SplitBatch.Trials;
using SplitBatch.Trials.Files;

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

    private static readonly Lazy<Document> Lager = new(() => TrialReport.Of(Trial.Open(Demo("lager-one-rest-or-two"))));

    [Fact]
    public void The_three_differ_where_they_should()
    {
        var verdicts = new[] { Cones, Stout, Lager }.Select(d => d.Value.Blocks.OfType<Callout>().First().Claims[0].Sentence).ToList();
        Assert.Equal(3, verdicts.Distinct().Count());
        Assert.Contains("It is open whether", verdicts[0], StringComparison.Ordinal);
        Assert.Contains("Tasters could tell them apart", verdicts[1], StringComparison.Ordinal);
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
    public void Flagged_replicates_corrections_a_suspected_swap_and_the_halves_other_differences_stand_in_the_write_up()
    {
        var root = Directory.CreateTempSubdirectory("write-up-");
        try
        {
            var trial = Trial.Open(new TrialFolder(Demo("amber-cone-or-pellet")).CopyTo(Path.Combine(root.FullName, "amber")).Path)
                .Practice("two-yeasts").ImportReturn();
            trial = trial.LogBrew(BatchEntry.Measured("21", Side.A, "carbonation", 2.4, "vol", 0.1),
                BatchEntry.Measured("22", Side.B, "carbonation", 2.8, "vol", 0.1));
            var text = TrialReport.Of(trial).ToMarkdown();
            Assert.Contains("In sample P-31, 30.5 BU of bitterness is an outlier", text, StringComparison.Ordinal);
            Assert.Contains("Do the replicates agree?", text, StringComparison.Ordinal);
            Assert.Contains("The samples may have been swapped: alcohol and pH fit only if they were.", text, StringComparison.Ordinal);
            Assert.Contains("The carbonation was 2.4 ± 0.1 vol in half A and 2.8 ± 0.1 vol in half B, 0.40 vol apart, more than the 0.14 "
                + "vol that the instruments' uncertainty explains: a confound.", text, StringComparison.Ordinal);
            Assert.Contains("Not measured on both halves: volume into fermenter", text, StringComparison.Ordinal);
            Assert.DoesNotContain("Corrections of the lab return", text, StringComparison.Ordinal);

            text = TrialReport.Of(trial.CorrectReturn("204/P-31/bitterness/3", 20.5, "misprint")
                .ExchangeSamples("P-31", "P-32", "swapped at packing", "brewer")).ToMarkdown();
            Assert.DoesNotContain("outlier (Grubbs", text, StringComparison.Ordinal);
            Assert.DoesNotContain("may have been swapped", text, StringComparison.Ordinal);
            Assert.Contains("Corrections of the lab return", text, StringComparison.Ordinal);
            Assert.Contains("swapped at packing", text, StringComparison.Ordinal);
        }
        finally
        {
            root.Delete(recursive: true);
        }
    }

    [Fact]
    public void An_example_says_that_it_is_invented()
    {
        Assert.Contains("invented example", Cones.Value.ToHtml(), StringComparison.Ordinal);
        Assert.Contains("Invented data", Cones.Value.Summary!.ToSvg(), StringComparison.Ordinal);
    }
}
