using System.Runtime.InteropServices;
using System.Text;
using Microsoft.Win32.SafeHandles;

namespace SplitBatch.Trials.Files;

/// <summary>
/// The calls on the file system by which people's data are written. A test puts another disk in this one's place, which fails at one
/// of them.
/// </summary>
internal class Disk
{
    private const UnixFileMode Group = UnixFileMode.GroupRead | UnixFileMode.GroupWrite;
    private const UnixFileMode Others = UnixFileMode.OtherRead | UnixFileMode.OtherWrite;
    private static readonly Disk Real = new();
    private static readonly AsyncLocal<Disk?> InItsPlace = new();

    /// <summary>The disk that is written to.</summary>
    public static Disk Here
    {
        get => InItsPlace.Value ?? Real;
        set => InItsPlace.Value = value;
    }

    /// <summary>
    /// Opens a file for nobody else to read or write until it is closed; the system closes it when the program ends, however it ends.
    /// </summary>
    public virtual SafeFileHandle Open(string path, FileMode mode) => File.OpenHandle(path, mode, FileAccess.ReadWrite, FileShare.None);

    /// <summary>All that the file holds.</summary>
    public virtual byte[] Read(SafeFileHandle file)
    {
        var bytes = new byte[RandomAccess.GetLength(file)];
        for (var done = 0; done < bytes.Length;)
        {
            var read = RandomAccess.Read(file, bytes.AsSpan(done), done);
            if (read == 0) return bytes[..done];
            done += read;
        }

        return bytes;
    }

    /// <summary>Writes bytes at a place.</summary>
    public virtual void Write(SafeFileHandle file, ReadOnlySpan<byte> bytes, long at) => RandomAccess.Write(file, bytes, at);

    /// <summary>Waits until what was written is on the disk.</summary>
    public virtual void Flush(SafeFileHandle file) => RandomAccess.FlushToDisk(file);

    /// <summary>Shortens the file.</summary>
    public virtual void Cut(SafeFileHandle file, long length) => RandomAccess.SetLength(file, length);

    /// <summary>Lets those write to a new file who may write to its folder.</summary>
    public virtual void Share(SafeFileHandle file, string folder)
    {
        if (OperatingSystem.IsWindows()) return; // A file has its folder's rights there.
        var may = File.GetUnixFileMode(folder);
        if (may.HasFlag(UnixFileMode.StickyBit)) return; // There, a file is its maker's.
        var shared = (may.HasFlag(UnixFileMode.GroupWrite) ? Group : 0) | (may.HasFlag(UnixFileMode.OtherWrite) ? Others : 0);
        if (shared == 0) return;
        try
        {
            File.SetUnixFileMode(file, File.GetUnixFileMode(file) | shared);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            // A disk without such rights, as of a key: there, everybody may write or nobody.
        }
    }

    /// <summary>Gives a file its name, and never over another.</summary>
    /// <remarks>
    /// Outside Windows, File.Move looks whether a file is there and then renames, so that of two at once the later takes the place of the
    /// earlier. A hard link is refused where the name is taken; so is the copy that is made on a disk without hard links.
    /// </remarks>
    public virtual void Move(string from, string to)
    {
        if (OperatingSystem.IsWindows())
        {
            File.Move(from, to, overwrite: false);
            return;
        }

        if (Link(PathBytes(from), PathBytes(to)) != 0) File.Copy(from, to, overwrite: false);
        File.Delete(from);
    }

    /// <summary>Deletes a file, if it is there.</summary>
    public virtual void Delete(string path) => File.Delete(path);

    private static byte[] PathBytes(string path) => Encoding.UTF8.GetBytes(path + '\0');

    /// <summary>POSIX link(2): a second name for a file, or an error where the name is taken.</summary>
    [DllImport("libc", EntryPoint = "link")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Link(byte[] from, byte[] to);
}
