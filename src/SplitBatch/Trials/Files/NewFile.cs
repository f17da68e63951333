namespace SplitBatch.Trials.Files;

/// <summary>Makes a file that must not be there yet: all of it, or nothing, and never over another.</summary>
internal static class NewFile
{
    /// <summary>Writes the file.</summary>
    /// <param name="path">Where.</param>
    /// <param name="bytes">What it holds.</param>
    /// <returns>False where a file of that name was there already; it is left alone.</returns>
    /// <exception cref="IOException">It cannot be written; nothing is there.</exception>
    public static bool TryMake(string path, ReadOnlySpan<byte> bytes)
    {
        if (File.Exists(path)) return false;
        var draft = Path.Combine(Path.GetDirectoryName(path)!, $".{Path.GetFileName(path)}-{Guid.NewGuid():N}.draft");
        try
        {
            using (var stream = new FileStream(draft, FileMode.CreateNew, FileAccess.Write))
            {
                stream.Write(bytes);
                stream.Flush(flushToDisk: true);
            }

            File.Move(draft, path, overwrite: false);
            return true;
        }
        catch (IOException) when (File.Exists(path))
        {
            return false;
        }
        finally
        {
            File.Delete(draft);
        }
    }
}
