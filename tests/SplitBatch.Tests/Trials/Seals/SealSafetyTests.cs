using SplitBatch.Trials.Files;

namespace SplitBatch.Trials.Seals;

/// <summary>
/// A program that is killed at each step of each write, from the first seal to the close: nothing is half done, and what was begun can be
/// finished.
/// </summary>
public class SealSafetyTests
{
    [Fact]
    public void A_program_killed_at_every_write_leaves_a_folder_that_opens_and_can_be_finished()
    {
        var kills = 0;
        for (var step = 1; ; step++)
        {
            using var folder = new SealedFolder(SealedFolder.Plain.Replace("\"seed\": 7, ", "", StringComparison.Ordinal));
            using var keys = new TemporaryFolder();
            var ended = SealWriter.Start(folder.Path, keys.Path, step);
            if (ended != 0) kills++;
            Check(folder, $"killed at step {step}");
            var before = folder.Folder.Names("seal-*.json").ToDictionary(file => file, folder.Read);
            Assert.Equal(0, ended == 0 ? 0 : SealWriter.Start(folder.Path, keys.Path, 0));
            Finished(folder, before, $"finished after step {step}");
            if (ended == 0) break;
        }

        // A new file is opened, written, flushed in its middle and at its end, and named: six steps. Two seals, the key, the codes, the
        // key that is brought back and the log of events are new files; the second event is opened, and written and flushed twice.
        Assert.Equal((6 * 6) + 7, kills);
    }

    /// <summary>The folder opens; every seal in it is whole; nothing says that it was served or closed which is not.</summary>
    private static void Check(SealedFolder folder, string when)
    {
        var faults = Trial.Check(folder.Path);
        Assert.False(faults.Any(fault => fault.Severity == Severity.Error), $"{when}: {string.Join("; ", faults)}");
        var trial = folder.Open();
        Assert.Empty(trial.Plan.Chain.Breaks);
        Assert.All(trial.Plan.Chain.Seals,
            seal => Assert.Equal(seal.Fingerprint, Fingerprint.Of(File.ReadAllBytes(folder.Folder.PathOf(seal.File)))));
        if (trial.Plan.Of("main", PanelEventKind.Served).Any()) Assert.NotNull(trial.Panel().Codes);
        if (trial.Plan.Of("main", PanelEventKind.Closed).Any()) Assert.NotNull(trial.Panel().Serving);
    }

    private static void Finished(SealedFolder folder, Dictionary<string, string> before, string when)
    {
        Check(folder, when);
        Assert.All(before, pair => Assert.Equal(pair.Value, folder.Read(pair.Key)));
        var panel = folder.Open().Panel();
        Assert.Equal((2, 16, 20), (folder.Open().LatestSeal!.Number, panel.Scored.Correct, panel.Scored.Counted));
        Assert.Empty(panel.Custody.Breaks);
        Assert.Equal(["seal-1.json", "seal-2.json"],
            folder.Folder.Names("*").Where(file => file.Contains("seal", StringComparison.Ordinal)));
        Assert.DoesNotContain(folder.Folder.Names("*"), file => file.EndsWith(".draft", StringComparison.Ordinal));
    }
}
