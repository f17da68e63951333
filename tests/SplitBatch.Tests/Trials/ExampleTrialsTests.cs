using SplitBatch.Lab;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;
using SplitBatch.Trials.Files;

namespace SplitBatch.Trials;

/// <summary>The three invented trials: each ends in another answer, and its numbers are those of the exact tests.</summary>
public sealed class ExampleTrialsTests : IDisposable
{
    private readonly DirectoryInfo root = Directory.CreateTempSubdirectory("trial-");

    public void Dispose() => root.Delete(recursive: true);

    private Trial Copy(string name) => Trial.Open(new TrialFolder(Examples.Folder(name)).CopyTo(Path.Combine(root.FullName, name)).Path);

    // Counts against the tables of shared published values: 13 of 24 and 18 of 36 show a difference at 5 % (ISO 4120);
    // with 84 tasters 31 or fewer rule out 20 % at beta 5 %, with 24 tasters 9 or fewer rule out 30 % at beta 10 %.
    [Theory]
    [InlineData("amber-cone-or-pellet", 24, 11, PanelAnswer.Inconclusive)]
    [InlineData("stout-early-or-late", 34, 21, PanelAnswer.DifferenceShown)]
    [InlineData("lager-one-rest-or-two", 84, 29, PanelAnswer.MarginRuledOut)]
    public void Each_example_ends_in_its_own_answer(string name, int counted, int correct, PanelAnswer answer)
    {
        var trial = Trial.Open(Examples.Folder(name));
        var panel = trial.Panel();
        Assert.Equal((counted, correct), (panel.Scored.Counted, panel.Scored.Correct));
        Assert.Equal(answer, trial.Verdict().Answer);
        Assert.All(trial.Warnings, warning => Assert.StartsWith("ballots-", warning.File, StringComparison.Ordinal));
        Assert.True(trial.Description.Invented);
    }

    [Fact]
    public void The_examples_orders_and_codes_are_those_that_their_seed_draws()
    {
        foreach (var name in new[] { "amber-cone-or-pellet", "stout-early-or-late", "lager-one-rest-or-two" })
        {
            Assert.True(Trial.Open(Examples.Folder(name)).Panel().Serving!.Balance.IsBalanced);
        }
    }

    [Fact]
    public void Both_doses_of_an_example_are_matched_within_half_an_IBU()
    {
        foreach (var name in new[] { "amber-cone-or-pellet", "stout-early-or-late", "lager-one-rest-or-two" })
        {
            Assert.InRange(Trial.Open(Examples.Folder(name)).Doses!.Mismatch, -0.5, 0.5);
        }
    }

    [Fact]
    public void An_example_is_not_written_to()
    {
        var trial = Trial.Open(Examples.Folder("amber-cone-or-pellet"));
        Assert.Contains("Trial.WorkOn",
            Assert.Throws<InvalidOperationException>(() => trial.LogReturn("R", "S1", Analyte.Bitterness, 22)).Message,
            StringComparison.Ordinal);
        Assert.False(trial.Folder.Holds("lab-returns.csv"));
    }

    [Fact]
    public void A_return_that_is_logged_twice_stands_once_and_another_value_is_refused()
    {
        var trial = Copy("amber-cone-or-pellet");
        for (var time = 0; time < 2; time++)
        {
            trial = trial.LogReturn("R-1", "S1", Analyte.Bitterness, 27.3, 26.9).LogReturn("R-1", "S2", Analyte.Bitterness, 24.6, 24.2);
        }

        Assert.Equal(4, trial.Lab.Results.Count);
        Assert.Equal(27.1, trial.Lab.Replicates(Side.A, Analyte.Bitterness)!.Mean, 9);
        Assert.Throws<LogException>(() => trial.LogReturn("R-1", "S1", Analyte.Bitterness, 99));
        Assert.Equal(4, Trial.Open(trial.Folder.Path).Lab.Results.Count);
    }

    [Fact]
    public void Logging_the_return_takes_the_gap_out_of_the_verdict()
    {
        var trial = Copy("amber-cone-or-pellet");
        Assert.Contains(trial.Verdict().Limitations, limit => limit.Id == "limit.lab");
        trial = trial.LogReturn("R-1", "S1", Analyte.Bitterness, 27.3, 26.9).LogReturn("R-1", "S2", Analyte.Bitterness, 24.6, 24.2);
        var verdict = trial.Verdict();
        Assert.DoesNotContain(verdict.Limitations, limit => limit.Id == "limit.lab");
        // ISO 5725-6: 2.8 x 0.6 x sqrt(1/4 + 1/4) = 1.188; the difference of the means is 2.7.
        Assert.Equal(2.7, Assert.Single(verdict.Claims, claim => claim.Id == "lab.difference").Numbers[0], 9);
        Assert.Equal(1.188, Assert.Single(verdict.Claims, claim => claim.Id == "lab.difference").Numbers[2], 3);
    }

    [Fact]
    public void A_folder_of_ones_own_is_opened_in_place_and_an_example_as_a_copy()
    {
        var first = Trial.WorkOn(Examples.Folder("amber-cone-or-pellet"), beside: root.FullName);
        Assert.Equal(Path.Combine(root.FullName, "work", "amber-cone-or-pellet"), first.Folder.Path);
        first.LogReturn("R-1", "S1", Analyte.Bitterness, 27.3);
        Assert.Single(Trial.WorkOn(Examples.Folder("amber-cone-or-pellet"), beside: root.FullName).Lab.Results);
        Assert.Equal(first.Folder.Path, Trial.WorkOn(first.Folder.Path, beside: root.FullName).Folder.Path);
    }

    [Fact]
    public void A_lot_or_panel_that_is_misspelt_is_answered_with_the_nearest()
    {
        var trial = Trial.Open(Examples.Folder("amber-cone-or-pellet"));
        Assert.Equal("pellets", trial.Lot("Pellets").Name);
        Assert.StartsWith("This trial has no hop lot \"pelets\"; there are: cones, pellets. Did you mean \"pellets\"?",
            Assert.Throws<ArgumentException>(() => trial.Lot("pelets")).Message, StringComparison.Ordinal);
        Assert.StartsWith("This trial has no panel \"mian\"; there are: main, evening. Did you mean \"main\"?",
            Assert.Throws<ArgumentException>(() => trial.Panel("mian")).Message, StringComparison.Ordinal);
    }
}
