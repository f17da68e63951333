using SplitBatch.Display.WriteUp;
using SplitBatch.Trials;
using SplitBatch.Trials.Files;
using SplitBatch.Trials.Reading;

namespace SplitBatch.Proof.Fuzz;

/// <summary>The trial folder: spoilt, missing, swapped and linked files of the demo trials, read, judged and written up.</summary>
internal sealed class TrialTarget : Target
{
    private readonly string place, outside;
    private readonly List<Dictionary<string, byte[]>> trials;

    /// <param name="demo">The folder of demo trials.</param>
    /// <param name="scratch">A folder to work in; it must exist.</param>
    public TrialTarget(string demo, string scratch)
    {
        place = Path.Combine(scratch, "trial");
        outside = Path.Combine(scratch, "outside.csv");
        File.WriteAllText(outside, "lot,form\nsecret,pellet\n");
        trials = [.. Directory.GetDirectories(demo).Order(StringComparer.Ordinal).Select(folder =>
            Directory.GetFiles(folder, "*", SearchOption.AllDirectories).Order(StringComparer.Ordinal)
                .ToDictionary(file => Path.GetRelativePath(folder, file), File.ReadAllBytes))];
    }

    public override string Name => "trial folder";

    protected override string? Try(int seed)
    {
        var mutator = new Mutator(seed);
        Lay(mutator);
        var faults = Trial.Check(place, new DateOnly(2026, 6, 1));
        foreach (var fault in faults)
        {
            if (fault.File.Length == 0 || fault.Problem.Length == 0) return $"a fault without a file or a problem: {fault}";
            if (Find.RuntimeWordsIn(fault.ToString()) is { } words) return $"a fault in the runtime's words (\"{words}\"): {fault}";
        }

        if (File.ReadAllText(outside) != "lot,form\nsecret,pellet\n") return "a file outside the folder was changed";
        if (faults.Any(fault => fault.Severity == Severity.Error))
        {
            try
            {
                Trial.Open(place);
                return "a folder with errors was opened";
            }
            catch (TrialFolderException)
            {
                return null;
            }
        }

        return Judge(Trial.Open(place), writeUp: mutator.Below(40) == 0);
    }

    /// <summary>What may be said of a trial that opened; a write-up draws doses a million times, so not each is written.</summary>
    private static string? Judge(Trial trial, bool writeUp)
    {
        try
        {
            string text = string.Join('\n', trial.Verdict().Claims.Select(claim => claim.Sentence)) + trial.Verdict().Headline;
            if (writeUp) text += TrialReport.Of(trial).ToMarkdown();
            return Find.RuntimeWordsIn(text) is { } words ? $"a write-up in the runtime's words (\"{words}\")" : null;
        }
        catch (TrialIncompleteException)
        {
            return null; // It says which step makes what is missing.
        }
    }

    private void Lay(Mutator mutator)
    {
        if (Directory.Exists(place)) Directory.Delete(place, recursive: true);
        var files = new Dictionary<string, byte[]>(mutator.Of(trials));
        int changes = 1 + mutator.Below(2);
        for (int i = 0; i < changes; i++)
        {
            string name = mutator.Of([.. files.Keys]);
            if (mutator.Below(20) == 0) files.Remove(name);
            else files[name] = mutator.Spoil(files[name], () => mutator.Of([.. mutator.Of(trials).Values]));
        }

        foreach (var (name, bytes) in files)
        {
            string path = Path.Combine(place, name);
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            switch (mutator.Below(600))
            {
                case 0: File.CreateSymbolicLink(path, outside); break;
                case 1: Directory.CreateDirectory(path); break;
                case 2: File.CreateSymbolicLink(path, path); break;
                default: File.WriteAllBytes(path, bytes); break;
            }
        }
    }
}
