namespace SplitBatch.Display.Sheets;

/// <summary>A test that prints with Chromium; skipped by name where there is none, except on the build server.</summary>
internal sealed class ChromiumFactAttribute : FactAttribute
{
    public ChromiumFactAttribute()
    {
        if (Path is null && Environment.GetEnvironmentVariable("CI") != "true") Skip = "chromium is not installed on this machine";
    }

    internal static string? Path { get; } = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(System.IO.Path.PathSeparator)
        .SelectMany(folder => new[] { "chromium", "chromium-browser", "google-chrome" }.Select(name => System.IO.Path.Combine(folder, name)))
        .FirstOrDefault(File.Exists);
}
