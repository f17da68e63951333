namespace SplitBatch.Trials;

/// <summary>The example trials that come with the project.</summary>
internal static class Examples
{
    public static string Folder(string name)
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            var path = Path.Combine(folder.FullName, "data-demo", name);
            if (Directory.Exists(path)) return path;
        }

        throw new DirectoryNotFoundException(name);
    }
}
