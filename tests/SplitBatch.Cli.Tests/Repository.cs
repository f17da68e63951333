namespace SplitBatch.Cli;

/// <summary>Finds the files of this repository from wherever the tests run.</summary>
internal static class Repository
{
    public static string Root { get; } = Find();

    public static string Path(params string[] parts) => System.IO.Path.Combine([Root, .. parts]);

    private static string Find()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(System.IO.Path.Combine(folder.FullName, "Notebooks.sln"))) return folder.FullName;
        }

        throw new DirectoryNotFoundException("No folder above the tests holds Notebooks.sln.");
    }
}
