namespace SplitBatch.Trials.Files;

/// <summary>Makes a file that must not be there yet: all of it, or nothing, and never over another.</summary>
internal static class NewFile
{
    /// <summary>Called at each step of making a file, where a test wants to end the program there.</summary>
    internal static Action<string>? Reached { get; set; }

    /// <summary>Writes the file. A draft that was left by a program that was ended is no part of the folder, and is swept away.</summary>
    /// <param name="path">Where.</param>
    /// <param name="bytes">What it holds.</param>
    /// <returns>False where a file of that name was there already; it is left alone.</returns>
    /// <exception cref="IOException">It cannot be written; nothing is there.</exception>
    public static bool TryMake(string path, ReadOnlySpan<byte> bytes)
    {
        var (folder, name) = (Path.GetDirectoryName(path)!, Path.GetFileName(path));
        if (File.Exists(path)) return false;
        var draft = Path.Combine(folder, $".{name}-{Path.GetRandomFileName()}.draft");
        try
        {
            using (var stream = new FileStream(draft, FileMode.CreateNew, FileAccess.Write, FileShare.None, bufferSize: 0))
            {
                Reached?.Invoke("made");
                stream.Write(bytes[..(bytes.Length / 2)]);
                Reached?.Invoke("half");
                stream.Write(bytes[(bytes.Length / 2)..]);
                stream.Flush(flushToDisk: true);
            }

            Reached?.Invoke("whole");
            File.Move(draft, path, overwrite: false);
            Reached?.Invoke("there");
        }
        catch (IOException) when (File.Exists(path))
        {
            return false;
        }
        finally
        {
            File.Delete(draft);
        }

        foreach (var left in Directory.EnumerateFiles(folder, $".{name}-*.draft")) File.Delete(left);
        return true;
    }
}
