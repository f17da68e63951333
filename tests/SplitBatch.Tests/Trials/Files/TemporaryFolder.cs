namespace SplitBatch.Trials.Files;

/// <summary>A folder that is deleted when the test ends.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("splitbatch-").FullName;

    public string PathOf(string file) => System.IO.Path.Combine(Path, file);

    public string Read(string file) => File.ReadAllText(PathOf(file));

    public void Write(string file, string text) => File.WriteAllText(PathOf(file), text);

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
