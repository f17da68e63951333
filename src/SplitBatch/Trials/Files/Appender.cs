using System.Text;
using Microsoft.Win32.SafeHandles;

namespace SplitBatch.Trials.Files;

/// <summary>
/// Adds lines to the end of a file in which people's data stand: all of them or none, whatever fails and whenever the program is
/// killed. The only way by which such files are added to.
/// </summary>
/// <remarks>
/// <para>
/// A file that is not there is made whole (<see cref="NewFile"/>). To one that is, the lines are written with a zero byte in place of
/// their first, and flushed; then that one byte is put right, and flushed. A zero byte at the start of a line therefore tells that
/// what follows was never acknowledged: readers leave it out and name it (<see cref="Whole"/>), and the next writer moves it to a file
/// ending in .torn. The file keeps its own line ends, and a last line that a spreadsheet left without one is ended first.
/// </para>
/// <para>
/// The promise rests on the file system's own. Local disks keep it; some network drives do not lock, or say that a flush is done
/// before it is. After a power cut, a file made in the last moments may be missing from its folder on some file systems.
/// </para>
/// </remarks>
/// <param name="path">The file, which may not be there yet; its folder must be.</param>
internal sealed class Appender(string path)
{
    private const byte Mark = 0;
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);
    private static readonly byte[] ByteOrderMark = [0xEF, 0xBB, 0xBF];

    private string Name => Path.GetFileName(path);

    /// <summary>How long to wait for another writer before giving up.</summary>
    public TimeSpan Patience { get; init; } = Turn.Patience;

    /// <summary>
    /// Where what somebody else's program cut short starts, or null; by itself, only the remains of this writer are known.
    /// </summary>
    public Func<ReadOnlySpan<byte>, int?> CutShort { get; init; } = _ => null;

    /// <summary>Adds lines.</summary>
    /// <param name="lines">The lines to add, without line ends, to what the file holds; it may refuse with an exception, and nothing is
    /// written then.</param>
    /// <returns>The text of lines cut short earlier that were moved to a file of their own, or null. The new lines are on the
    /// disk.</returns>
    /// <exception cref="LogException">The file cannot be added to.</exception>
    public string? Append(Func<byte[], IReadOnlyList<string>> lines)
    {
        try
        {
            while (true)
            {
                if (!File.Exists(path))
                {
                    if (NewFile.TryMake(path, Bytes(lines([]), "\n"))) return null;
                    continue;
                }

                using var file = Turn.Wait(path, Patience, () => Disk.Here.Open(path, FileMode.Open));
                NewFile.SweepDrafts(path);
                var bytes = Disk.Here.Read(file);
                var aside = SetAside(file, ref bytes);
                var added = lines(bytes);
                if (added.Count == 0) Disk.Here.Flush(file);
                else new Addition(file, bytes.Length, Ending(bytes), Bytes(added, LineEnd(bytes))).Write();
                return aside;
            }
        }
        catch (UnauthorizedAccessException error)
        {
            throw new LogException($"This account may not add to {Name}; whoever owns it can let others write to it and to its folder. "
                + $"Nothing was logged.", error);
        }
        catch (IOException error)
        {
            throw new LogException($"{Name} cannot be added to: {error.Message} Nothing was logged.", error);
        }
    }

    /// <summary>A file's bytes without lines at its end that were never written whole.</summary>
    /// <param name="bytes">All that the file holds.</param>
    /// <param name="remains">What was left out, or null.</param>
    public static byte[] Whole(byte[] bytes, out string? remains)
    {
        remains = MarkIn(bytes) is { } mark ? Encoding.UTF8.GetString(bytes.AsSpan(mark + 1)) : null;
        return MarkIn(bytes) is { } at ? bytes[..at] : bytes;
    }

    /// <summary>The text of a file's bytes, without a byte-order mark.</summary>
    /// <exception cref="LogException">It is not UTF-8.</exception>
    public static string Text(string name, ReadOnlySpan<byte> bytes)
    {
        try
        {
            return Utf8.GetString(bytes).TrimStart('\uFEFF');
        }
        catch (DecoderFallbackException error)
        {
            throw new LogException($"{name} is not UTF-8 text, so adding to it could spoil it; save it as \"CSV UTF-8\" first.", error);
        }
    }

    /// <summary>The one zero byte of a file, if it stands at the start of a line; a file with several is no text.</summary>
    private static int? MarkIn(ReadOnlySpan<byte> bytes)
    {
        var at = bytes.IndexOf(Mark);
        if (at < 0 || at != bytes.LastIndexOf(Mark)) return null;
        return at == 0 || bytes[at - 1] == '\n' || bytes[..at].SequenceEqual(ByteOrderMark) ? at : null;
    }

    private string? SetAside(SafeFileHandle file, ref byte[] bytes)
    {
        var whole = Whole(bytes, out var remains);
        if (remains is null && CutShort(bytes) is { } start)
            (whole, remains) = (bytes[..start], Encoding.UTF8.GetString(bytes.AsSpan(start)));
        if (remains is null) return null;
        var disk = Disk.Here;
        using (var aside = Turn.Wait(path + ".torn", Patience, () => disk.Open(path + ".torn", FileMode.OpenOrCreate)))
        {
            var end = RandomAccess.GetLength(aside);
            if (end == 0) disk.Share(aside, Path.GetDirectoryName(path)!);
            disk.Write(aside, Encoding.UTF8.GetBytes(remains + "\n"), end);
            disk.Flush(aside);
        }

        disk.Cut(file, whole.Length);
        disk.Flush(file);
        bytes = whole;
        return remains;
    }

    private static string LineEnd(ReadOnlySpan<byte> bytes) => bytes.IndexOf("\r\n"u8) >= 0 ? "\r\n" : "\n";

    /// <summary>What ends the last line, where it has no end of its own.</summary>
    private static byte[] Ending(byte[] bytes)
    {
        if (bytes.Length == 0 || bytes.AsSpan().SequenceEqual(ByteOrderMark)) return [];
        var tail = CsvTail.Of(Encoding.Latin1.GetString(bytes), ',');
        if (tail.EndsLine) return [];
        return Utf8.GetBytes((tail.IsOpen ? "\"" : "") + (bytes[^1] == '\r' ? "\n" : LineEnd(bytes)));
    }

    private static byte[] Bytes(IReadOnlyList<string> lines, string lineEnd)
    {
        if (lines.FirstOrDefault(line => line.AsSpan().IndexOfAny('\n', '\r', '\0') >= 0) is { } bad)
        {
            throw new ArgumentException($"A row is one line of text, and this is none: {bad.Replace('\0', ' ').ReplaceLineEndings(" ")}");
        }

        return Utf8.GetBytes(string.Concat(lines.Select(line => line + lineEnd)));
    }

    /// <summary>One addition to a file that is open: it is there at once, or not at all.</summary>
    private sealed record Addition(SafeFileHandle File, long End, byte[] Ending, byte[] Lines)
    {
        public void Write()
        {
            var disk = Disk.Here;
            var shown = false;
            try
            {
                disk.Write(File, [.. Ending, Mark, .. Lines.AsSpan(1)], End);
                disk.Flush(File);
                shown = true;
                disk.Write(File, Lines.AsSpan(0, 1), End + Ending.Length);
                disk.Flush(File);
            }
            catch (Exception error) when (error is IOException or UnauthorizedAccessException)
            {
                TakeBack(disk, shown, error);
                throw;
            }
        }

        private void TakeBack(Disk disk, bool shown, Exception cause)
        {
            try
            {
                disk.Cut(File, End);
            }
            catch (Exception error) when (error is IOException or UnauthorizedAccessException)
            {
                if (!shown) return; // The mark still stands before the remains, so that nobody takes them for rows.
                var what = $"The disk failed while a row was written ({cause.Message}), and the file may hold it or not";
                throw new LogException($"{what}: look at its end before you log the row again.", cause);
            }
        }
    }
}
