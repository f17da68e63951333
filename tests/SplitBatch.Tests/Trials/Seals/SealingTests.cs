using System.Diagnostics;
using SplitBatch.Trials.Files;

namespace SplitBatch.Trials.Seals;

/// <summary>Making seals, copying and spoiling them, and checking them from outside.</summary>
public class SealingTests
{
    [Fact]
    public void Sealing_twice_is_harmless_and_another_plan_is_refused()
    {
        using var folder = new SealedFolder();
        var first = folder.Seal().LatestSeal!;
        var bytes = File.ReadAllBytes(folder.Folder.PathOf("seal-1.json"));
        Assert.Equal(first, folder.Seal().LatestSeal! with { Plan = first.Plan, BallotsThen = first.BallotsThen });
        folder.Edit("trial.json", "\"margin\": 0.25", "\"margin\": 0.3");
        Assert.Contains("margin of panel main: 0.25 was sealed, 0.3 stands there now. Put it back, or amend",
            Assert.Throws<InvalidOperationException>(() => folder.Seal()).Message, StringComparison.Ordinal);
        Assert.Equal(bytes, File.ReadAllBytes(folder.Folder.PathOf("seal-1.json")));
        Assert.False(folder.Holds("seal-2.json"));
    }

    [Fact]
    public void There_is_nothing_to_amend_before_a_seal()
    {
        using var folder = new SealedFolder();
        Assert.Contains("not sealed yet, so there is nothing to amend",
            Assert.Throws<InvalidOperationException>(() => folder.Open().Amend("why not")).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => folder.Open().Amend(" "));
    }

    [Fact]
    public async Task Of_two_who_seal_at_once_one_seals_and_both_hold_the_same_fingerprint()
    {
        for (var round = 0; round < 20; round++)
        {
            using var folder = new SealedFolder();
            var trials = Enumerable.Range(0, 4).Select(_ => folder.Open()).ToList();
            using var start = new Barrier(trials.Count);
            var seals = await Task.WhenAll(trials.Select(trial => Task.Factory.StartNew(
                () =>
                {
                    start.SignalAndWait();
                    return trial.Seal().LatestSeal!.Fingerprint;
                },
                CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default)));
            Assert.Single(seals.Distinct());
            Assert.Equal(["seal-1.json"], folder.Folder.Names("*seal-*"));
        }
    }

    [Fact]
    public async Task Of_two_who_seal_different_plans_at_once_one_is_told()
    {
        using var folder = new SealedFolder();
        var one = folder.Open();
        folder.Edit("trial.json", "\"margin\": 0.25", "\"margin\": 0.3");
        var other = folder.Open();
        var outcomes = await Task.WhenAll(new[] { one, other }.Select(trial => Task.Run(() => Record.Exception(() => trial.Seal()))));
        Assert.IsType<InvalidOperationException>(Assert.Single(outcomes, error => error is not null));
        Assert.Equal(["seal-1.json"], folder.Folder.Names("seal-*"));
    }

    [Fact]
    public void A_seal_edited_by_hand_after_the_key_was_drawn_makes_a_lead()
    {
        using var folder = new SealedFolder();
        folder.Seal();
        folder.Serve();
        folder.Answer(right: 12);
        folder.Edit("seal-1.json", "\"margin\": 0.25", "\"margin\": 0.3");
        folder.Edit("trial.json", "\"margin\": 0.25", "\"margin\": 0.3");
        var trial = folder.Open();
        Assert.Matches("^Panel main was served under a seal with the fingerprint ([0-9a-f]{4} ?){5}, and no seal in this folder has it.$",
            Assert.Single(trial.Panel().Custody.Breaks));
        Assert.False(trial.Verdict().KeptToPlan);
        Assert.Contains(folder.Warnings(),
            text => text.StartsWith("panel-log.csv: Panel main was served under a seal", StringComparison.Ordinal));
    }

    [Fact]
    public void A_seal_edited_before_anything_was_served_is_another_fingerprint()
    {
        using var folder = new SealedFolder();
        var published = folder.Seal().LatestSeal!.Fingerprint!;
        Assert.True(SealVerification.Of(folder.Path, published.Spoken).Holds);
        folder.Edit("seal-1.json", "\"margin\": 0.25", "\"margin\": 0.26");
        folder.Edit("trial.json", "\"margin\": 0.25", "\"margin\": 0.26");
        Assert.DoesNotContain(folder.Warnings(), text => text.Contains("seal", StringComparison.Ordinal));
        var verification = SealVerification.Of(folder.Path, published.Digits);
        Assert.False(verification.Holds);
        Assert.Equal("The fingerprint you gave is that of no seal in this folder.", verification.Lines[^1]);
    }

    [Fact]
    public void Whoever_has_the_files_alone_is_told_what_they_prove()
    {
        using var folder = new SealedFolder();
        Assert.Equal((false, "not sealed"), SealVerification.Of(folder.Path) is var none ? (none.Holds, none.Lines[0][^11..^1]) : default);
        folder.Seal();
        folder.Edit("trial.json", "\"margin\": 0.25", "\"margin\": 0.3");
        folder.Open().Amend("we thought again", SealedFolder.At(1));
        folder.Serve();
        var found = SealVerification.Of(folder.Path);
        Assert.True(found.Holds);
        Assert.Contains(found.Lines,
            line => line.StartsWith("seal-2.json, sealed 2026-05-02 13:00 UTC:", StringComparison.Ordinal)
                && line.EndsWith("; an amendment, because: we thought again", StringComparison.Ordinal));
        Assert.Contains("serving-main.csv is the key that was drawn.", found.Lines);
        Assert.StartsWith("The dates are those of the author's machine.", found.Lines[^1], StringComparison.Ordinal);
        folder.Edit("serving-main.csv", "T01", "T99");
        Assert.False(SealVerification.Of(folder.Path).Holds);
        Assert.Throws<ArgumentException>(() => SealVerification.Of(folder.Path, "my seal"));
    }

    [Fact]
    public void The_fingerprint_is_verified_by_a_shell_script_of_standard_tools()
    {
        using var folder = new SealedFolder();
        folder.Seal();
        folder.Edit("trial.json", "\"margin\": 0.25", "\"margin\": 0.3");
        var seal = folder.Open().Amend("we thought again").LatestSeal!;
        Assert.Equal(0, Script(folder.Path, seal.Fingerprint!.Digits, out var said));
        Assert.Contains("seal-2.json follows seal-1.json", said, StringComparison.Ordinal);
        Assert.Equal(0, Script(folder.Path, seal.Fingerprint.Spoken, out _));
        Assert.Equal(1, Script(folder.Path, new string('0', 64), out _));
        folder.Edit("seal-1.json", "Cool or warm?", "Cool or hot?");
        Assert.Equal(1, Script(folder.Path, seal.Fingerprint.Digits, out var broken));
        Assert.Contains("seal-1.json was changed after seal-2.json was made", broken, StringComparison.Ordinal);
    }

    [Fact]
    public void A_trial_that_was_copied_is_found_in_the_list()
    {
        using var parent = new TemporaryFolder();
        using var folder = new SealedFolder();
        folder.Seal();
        foreach (var name in new[] { "one", "two" })
        {
            Directory.CreateDirectory(parent.PathOf(name));
            foreach (var file in Directory.GetFiles(folder.Path, "*.json"))
                File.Copy(file, Path.Combine(parent.PathOf(name), Path.GetFileName(file)));
        }

        var list = TrialList.In(parent.Path);
        Assert.All(list.Trials,
            trial => Assert.Equal("one and two hold the same seal: copies of one trial, or two panels under one plan", trial.Note));
        Assert.Equal("2 trials: 0 tested; 2 sealed, of which 2 were never reported (one, two).", list.ToString());
    }

    [Fact]
    public void The_list_tells_what_was_tested_declared_and_reported()
    {
        using var parent = new TemporaryFolder();
        using (var draft = new SealedFolder()) Move(draft, "draft");
        using (var counted = Counted()) Move(counted, "counted");
        using (var reported = Counted())
        {
            reported.Edit("trial.json", "\"title\"",
                "\"published\": { \"seal\": \"the club's chat\", \"result\": \"the club's page\" }, \"title\"");
            Move(reported, "reported");
        }

        Directory.CreateDirectory(parent.PathOf("broken"));
        parent.Write("broken/trial.json", "{");
        var list = TrialList.In(parent.Path);
        Assert.Equal([TrialStage.Counted, TrialStage.Draft, TrialStage.Reported], list.Trials.Select(trial => trial.Stage));
        Assert.Equal("3 trials: 2 tested; 2 sealed, of which 1 was never reported (counted).", list.ToString());
        Assert.StartsWith("broken: the folder has one fault",
            Assert.Single(list.LeftOut).Replace("has 1 fault", "has one fault", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.Contains("Not sealed; a draft.", list.Trials[1].ToString(), StringComparison.Ordinal);
        Assert.Contains("; reported, by its author's word.", list.Trials[2].ToString(), StringComparison.Ordinal);

        void Move(SealedFolder folder, string name)
        {
            Directory.CreateDirectory(parent.PathOf(name));
            foreach (var file in Directory.GetFiles(folder.Path))
                File.Copy(file, Path.Combine(parent.PathOf(name), Path.GetFileName(file)));
        }
    }

    private static SealedFolder Counted()
    {
        var folder = new SealedFolder();
        folder.Seal();
        folder.Serve();
        folder.Answer(right: 12);
        return folder;
    }

    private static int Script(string folder, string fingerprint, out string said)
    {
        var script = Panel.Reference.PathOf(Path.Combine("..", "seal", "verify.sh"));
        using var process =
            Process.Start(new ProcessStartInfo("sh", [script, folder, fingerprint])
            {
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            })!;
        said = process.StandardOutput.ReadToEnd() + process.StandardError.ReadToEnd();
        process.WaitForExit();
        return process.ExitCode;
    }
}
