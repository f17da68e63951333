using System.Text;
using SplitBatch.Trials.Files;
using SplitBatch.Trials.Reading;

namespace SplitBatch.Trials.Scaffold;

/// <summary>Makes the folder of a new trial: all of it, or nothing.</summary>
public static class TrialScaffold
{
    /// <summary>Writes a trial folder.</summary>
    /// <param name="trial">What is known of the trial.</param>
    /// <param name="folder">The folder to make; it may be there already if it is empty.</param>
    /// <param name="notebooks">The folder whose numbered notebooks are copied; null for none.</param>
    /// <returns>What was made, and the next step.</returns>
    /// <exception cref="IOException">The folder holds files, or cannot be made. Nothing was written.</exception>
    /// <exception cref="InvalidDataException">A notebook cannot be copied. Nothing was written.</exception>
    public static ScaffoldReceipt Write(NewTrial trial, string folder, string? notebooks = null)
    {
        ArgumentNullException.ThrowIfNull(trial);
        var place = new TrialFolder(folder);
        if (File.Exists(place.Path)) throw new IOException($"\"{place.Name}\" is a file, so nothing was written; name a new folder.");
        if (Directory.Exists(place.Path) && Directory.EnumerateFileSystemEntries(place.Path).Any())
        {
            throw new IOException($"The folder \"{place.Name}\" holds files, so nothing was written; name a new or an empty folder.");
        }

        var files = FilesOf(trial, place.Name, notebooks);
        var parent = Path.GetDirectoryName(Path.TrimEndingDirectorySeparator(place.Path))!;
        Directory.CreateDirectory(parent);
        var draft = Directory.CreateDirectory(Path.Combine(parent, $".{place.Name}-{Guid.NewGuid():N}"));
        try
        {
            foreach (var (name, text) in files) Write(Path.Combine(draft.FullName, name), text);
            if (Directory.Exists(place.Path)) Directory.Delete(place.Path); // Refuses a folder that has been filled meanwhile.
            draft.MoveTo(place.Path);
        }
        catch
        {
            if (Directory.Exists(draft.FullName)) draft.Delete(recursive: true);
            throw;
        }

        return new ScaffoldReceipt(place, [.. files.Keys.Order(StringComparer.Ordinal)]);
    }

    private static Dictionary<string, string> FilesOf(NewTrial trial, string name, string? notebooks)
    {
        var files = new Dictionary<string, string>(NewSheets.Of(trial))
        {
            [TrialFolder.DescriptionFile] = NewDescription.Of(trial),
            ["README.md"] = NewReadme.Of(trial, name),

            // A version control that rewrites line ends would change the bytes, and with them the fingerprints.
            [".gitattributes"] = "seal-*.json -text\nserving-*.csv -text\n*.tsr binary\n",
        };
        if (notebooks is null) return files;
        foreach (var notebook in Directory.EnumerateFiles(notebooks, "?-*.ipynb").Order(StringComparer.Ordinal))
        {
            var file = Path.GetFileName(notebook);
            files[$"notebooks/{file}"] = NotebookCopy.For(file, File.ReadAllText(notebook), "..", name);
        }

        return files;
    }

    private static void Write(string path, string text)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        NewFile.TryMake(path, Encoding.UTF8.GetBytes(text));
    }
}

/// <summary>What was made of a new trial.</summary>
/// <param name="Folder">The folder.</param>
/// <param name="Files">Its files, by name.</param>
public sealed record ScaffoldReceipt(TrialFolder Folder, IReadOnlyList<string> Files)
{
    /// <summary>The next thing to do.</summary>
    /// <param name="folder">The folder as the person wrote it.</param>
    public static string NextStep(string folder) =>
        $"Next step: write your hop lots into {Path.Combine(folder, HopLotReader.FileName)}, then: splitbatch check {folder}; when the "
            + $"plan is final: splitbatch declare {folder}";

    /// <summary>The folder and the number of files.</summary>
    public override string ToString() => $"{Folder.Name}: {Files.Count} files.";
}
