namespace SplitBatch.Trials;

public sealed partial class Trial
{
    /// <summary>
    /// The writer's own paragraphs, in Markdown, by the name of the file in <c>notes</c> without its ending: a write-up puts
    /// <c>introduction</c>, <c>method</c>, <c>results</c> and <c>discussion</c> into the sections of that name, and never changes them.
    /// </summary>
    public IReadOnlyDictionary<string, string> Notes => content.Notes;

    /// <summary>The files that the trial was read from, with their hashes.</summary>
    public IReadOnlyList<InputFile> InputFiles =>
        [.. Folder.Names("*.json").Concat(Folder.Names("*.csv")).Concat(Folder.Names("*.csv", "incoming")).Concat(Folder.Names("*.md", "notes")).Select(name => InputFile.Of(Folder, name))];

    /// <summary>The paragraphs of one name, or null when the writer wrote none.</summary>
    public string? Note(string name) => Notes.GetValueOrDefault(name);
}
