namespace SplitBatch.Trials.Files;

/// <summary>Makes a file that must not be there yet: all of it, or nothing, and never over another.</summary>
/// <remarks>
/// It is written under a hidden name and then given its own, which is one step for the file system. A disk without hard links (as of
/// many cameras and keys) copies it instead, and a program killed within that copy can leave half a file there.
/// </remarks>
internal static class NewFile
{
    /// <summary>Makes the file.</summary>
    /// <param name="path">Where.</param>
    /// <param name="bytes">What it holds.</param>
    /// <returns>False where a file of that name was there already; it is left alone.</returns>
    /// <exception cref="IOException">It cannot be written; nothing is there.</exception>
    /// <exception cref="UnauthorizedAccessException">This account may not; nothing is there.</exception>
    public static bool TryMake(string path, ReadOnlySpan<byte> bytes)
    {
        if (File.Exists(path)) return false;
        var (disk, folder) = (Disk.Here, Path.GetDirectoryName(path)!);
        var draft = Path.Combine(folder, $".{Path.GetFileName(path)}-{Path.GetRandomFileName()}.draft");
        try
        {
            using (var file = disk.Open(draft, FileMode.CreateNew))
            {
                disk.Share(file, folder);
                disk.Write(file, bytes, 0);
                disk.Flush(file);
            }

            disk.Move(draft, path);
        }
        catch (IOException error) when (error is FileNotFoundException || IsThere(error))
        {
            // Another made the file meanwhile, and may have swept this draft away.
            Discard(draft);
            if (!File.Exists(path)) throw;
            return false;
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            Discard(draft);
            throw;
        }

        SweepDrafts(path);
        return true;
    }

    /// <summary>Deletes what programs that were killed left of this file. Once it is there, no draft of it is of use to anybody.</summary>
    public static void SweepDrafts(string path)
    {
        foreach (var left in Directory.EnumerateFiles(Path.GetDirectoryName(path)!, $".{Path.GetFileName(path)}-*.draft")) Discard(left);
    }

    private static void Discard(string draft)
    {
        try
        {
            Disk.Here.Delete(draft);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            // A hidden file that nothing reads stays behind; whoever adds to the file next may delete it.
        }
    }

    private static bool IsThere(IOException error) =>
        OperatingSystem.IsWindows() ? (error.HResult & 0xFFFF) is 80 or 183 : error.HResult == 17;
}
