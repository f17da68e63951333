using SplitBatch.Trials.Files;

namespace SplitBatch.Trials;

public sealed class PastTrialsTests : IDisposable
{
    private readonly DirectoryInfo root = Directory.CreateTempSubdirectory("past-");

    public void Dispose() => root.Delete(recursive: true);

    [Fact]
    public void Beers_with_a_lab_value_are_paired_and_the_rest_is_named()
    {
        foreach (var name in new[] { "amber-cone-or-pellet", "stout-early-or-late" })
            new TrialFolder(Examples.Folder(name)).CopyTo(Path.Combine(root.FullName, name));
        File.WriteAllText(Path.Combine(root.CreateSubdirectory("broken").FullName, "trial.json"), "{}");

        var past = PastTrials.In(root.FullName);

        // The stout's lab means: (35.2 + 35.8)/2 and (42.6 + 43.2)/2.
        Assert.Equal([35.5, 42.9], past.Pairs.Select(pair => Math.Round(pair.Measured, 9)));
        Assert.All(past.Pairs, pair => Assert.InRange(pair.Estimated, 37, 39));
        Assert.Contains(past.LeftOut, text => text.StartsWith("amber-cone-or-pellet: no lab return yet", StringComparison.Ordinal));
        Assert.Contains(past.LeftOut, text => text.StartsWith("broken: the folder has", StringComparison.Ordinal));
    }
}
