using System.Text.Json;

namespace SplitBatch.Cli.Jupyter;

/// <summary>What a browser found, as the scripts of <c>tests/browser</c> print it: one line of JSON.</summary>
internal static class Seen
{
    /// <summary>Where the browser puts its pictures: the folder named by SPLITBATCH_PICTURES, to be looked at, or else this one.</summary>
    public static string Pictures(string folder) =>
        Environment.GetEnvironmentVariable("SPLITBATCH_PICTURES") is { Length: > 0 } kept
            ? Directory.CreateDirectory(kept).FullName
            : folder;

    /// <summary>What was found; fails where the script stopped early.</summary>
    public static JsonElement By(string output)
    {
        var line = output.Split('\n').LastOrDefault(l => l.StartsWith('{'));
        Assert.True(line is not null, output);
        using var json = JsonDocument.Parse(line);
        var found = json.RootElement.Clone();
        Assert.False(found.TryGetProperty("failed", out var failed), $"{failed} {line}");
        return found;
    }

    /// <summary>Fails where there are fewer pictures, or where one is nearly empty, nearly full or of too few colours.</summary>
    public static void AreDrawn(JsonElement pictures, int count)
    {
        Assert.Equal(count, pictures.GetArrayLength());
        foreach (var picture in pictures.EnumerateArray())
        {
            Assert.InRange(picture.GetProperty("width").GetInt32(), 300, 1200);
            Assert.InRange(picture.GetProperty("height").GetInt32(), 100, 1000);
            Assert.InRange(picture.GetProperty("drawn").GetDouble(), 0.02, 0.9);
            Assert.True(picture.GetProperty("colours").GetInt32() >= 4, picture.GetRawText());
        }
    }
}
