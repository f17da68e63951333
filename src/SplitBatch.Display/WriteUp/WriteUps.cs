using SplitBatch.Trials;
using SplitBatch.Trials.Files;

namespace SplitBatch.Display.WriteUp;

/// <summary>One write-up that was made.</summary>
/// <param name="Name">The trial folder's name, which is also the name of the write-up's folder.</param>
/// <param name="Document">What was written.</param>
/// <param name="Files">The files written, relative to the write-up's folder.</param>
public sealed record MadeWriteUp(string Name, Document Document, IReadOnlyList<string> Files);

/// <summary>Write-ups of whole trial folders, each in a folder of the trial's name.</summary>
public static class WriteUps
{
    /// <summary>
    /// Writes up each trial. A trial is worked on as a copy that is thrown away afterwards: files that the lab sent and that
    /// nobody has logged yet are logged in the copy, and the trial itself stays as it is. A file of an earlier write-up that a
    /// person has changed is kept beside the new one.
    /// </summary>
    /// <param name="trials">The trial folders.</param>
    /// <param name="output">Where the write-ups go; made where it is missing.</param>
    /// <exception cref="ArgumentException">Two trial folders have one name, so their write-ups would go to one place.</exception>
    /// <exception cref="TrialFolderException">A folder cannot be used; the message lists every fault. Nothing was written.</exception>
    public static IReadOnlyList<MadeWriteUp> Make(IEnumerable<string> trials, string output)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(output);
        var folders = trials.Select(path => new TrialFolder(path)).ToList();
        if (folders.GroupBy(folder => folder.Name).FirstOrDefault(same => same.Count() > 1) is { } twice)
            throw new ArgumentException($"Two of the folders are called \"{twice.Key}\", so their write-ups would overwrite each other; "
                + $"write them up one at a time, each with its own --out.", nameof(trials));
        var documents = folders.Select(folder => (folder.Name, Document: OfCopy(folder))).ToList();
        return [.. documents.Select(
            made => new MadeWriteUp(made.Name, made.Document, made.Document.SaveTo(Path.Combine(output, made.Name))))];
    }

    private static Document OfCopy(TrialFolder folder)
    {
        Trial.Open(folder.Path);
        var place = Directory.CreateTempSubdirectory("split-batch-");
        try
        {
            return TrialReport.Of(Trial.Open(folder.CopyTo(Path.Combine(place.FullName, folder.Name)).Path).ImportReturns());
        }
        finally
        {
            place.Delete(recursive: true);
        }
    }
}
