using SplitBatch.Kernel.Notebooks;
using SplitBatch.Trials;
using SplitBatch.Trials.Files;

namespace SplitBatch.Kernel.Headless;

/// <summary>Copies of trial folders below the output folder, one for each original, so that a run never changes the original.</summary>
internal sealed class WorkingCopies(string output)
{
    private readonly Dictionary<string, TrialFolder> copies = [];

    /// <summary>The copies made so far.</summary>
    public IReadOnlyCollection<TrialFolder> All => copies.Values;

    /// <summary>The copy of a trial, made afresh the first time it is asked for.</summary>
    /// <exception cref="NotebookException">The copy's place is taken by something else, or cannot be written.</exception>
    public TrialFolder Of(TrialFolder original)
    {
        if (copies.TryGetValue(original.Path, out var made)) return made;
        var name = original.Name;
        for (var i = 2; copies.Values.Any(c => c.Name == name); i++) name = $"{original.Name}-{i}";
        var target = Path.Combine(output, name);
        if (Overlap(target, original.Path))
        {
            throw new NotebookException($"The trial {original.Name} lies where its working copy would go; choose another output folder.");
        }

        try
        {
            return copies[original.Path] = original.CopyTo(target);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new NotebookException($"The trial {original.Name} cannot be copied to the output folder: {error.Message}", error);
        }
    }

    private static bool Overlap(string a, string b)
    {
        var one = Path.TrimEndingDirectorySeparator(a) + Path.DirectorySeparatorChar;
        var other = Path.TrimEndingDirectorySeparator(b) + Path.DirectorySeparatorChar;
        return one.StartsWith(other, StringComparison.Ordinal) || other.StartsWith(one, StringComparison.Ordinal);
    }
}
