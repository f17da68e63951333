namespace SplitBatch.Display.WriteUp;

/// <summary>The write-ups of the three invented trials, made once for all tests, as the command makes them.</summary>
public sealed class ThreeWriteUps : IDisposable
{
    private readonly DirectoryInfo _output = Directory.CreateTempSubdirectory("write-ups-");

    public ThreeWriteUps() => All = WriteUps.Make(Names.Select(Trial), Output).ToDictionary(made => made.Name);

    public static string[] Names { get; } = ["amber-cone-or-pellet", "lager-one-rest-or-two", "stout-early-or-late"];

    public string Output => _output.FullName;

    public IReadOnlyDictionary<string, MadeWriteUp> All { get; }

    /// <summary>A file or folder of the repository.</summary>
    public static string Repository(params string[] parts)
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Notebooks.sln"))) folder = folder.Parent;
        return Path.Combine([folder!.FullName, .. parts]);
    }

    public static string Trial(string name) => Repository("data-demo", name);

    public string PathOf(string name, string file) => Path.Combine(Output, name, file);

    public void Dispose() => _output.Delete(recursive: true);
}
