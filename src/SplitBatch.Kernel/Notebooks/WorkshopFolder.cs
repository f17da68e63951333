namespace SplitBatch.Kernel.Notebooks;

/// <summary>
/// A folder of workshop notebooks: <c>source/*.md</c>, from which the learner's notebooks in the folder itself and the instructor's
/// in <c>instructor</c> are made, so that the two cannot drift apart.
/// </summary>
public static class WorkshopFolder
{
    /// <summary>The folder of the sources within the workshop's folder.</summary>
    public const string Source = "source";

    /// <summary>The folder of the instructor's notebooks within the workshop's folder.</summary>
    public const string Instructor = "instructor";

    /// <summary>What each notebook is to hold, by its path within the folder; nothing is written.</summary>
    /// <param name="folder">The workshop's folder.</param>
    /// <exception cref="NotebookException">There is no source, or one cannot be read; the message says where.</exception>
    public static IReadOnlyDictionary<string, string> Make(string folder)
    {
        var from = Path.Combine(folder, Source);
        var sources = Directory.Exists(from) ? Directory.GetFiles(from, "*.md").Order(StringComparer.Ordinal).ToList() : [];
        if (sources.Count == 0) throw new NotebookException($"{from} holds no source (no file whose name ends in .md).");
        var made = new Dictionary<string, string>();
        foreach (var path in sources)
        {
            var source = WorkshopSource.Parse(Path.Combine(Source, Path.GetFileName(path)), File.ReadAllText(path));
            var name = Path.GetFileNameWithoutExtension(path) + ".ipynb";
            made[name] = WorkshopNotebook.For(source, Audience.Learner).ToString();
            made[$"{Instructor}/{name}"] = WorkshopNotebook.For(source, Audience.Instructor).ToString();
        }

        return made;
    }

    /// <summary>Writes every notebook, over those that are there.</summary>
    /// <param name="folder">The workshop's folder.</param>
    /// <returns>The paths written, within the folder.</returns>
    /// <exception cref="NotebookException">There is no source, or one cannot be read; nothing is written then.</exception>
    public static IReadOnlyList<string> Write(string folder)
    {
        var made = Make(folder);
        Directory.CreateDirectory(Path.Combine(folder, Instructor));
        foreach (var (name, text) in made) File.WriteAllText(Path.Combine(folder, name), text);
        return [.. made.Keys];
    }
}
