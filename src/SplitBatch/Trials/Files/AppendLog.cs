using System.Text;

namespace SplitBatch.Trials.Files;

/// <summary>
/// A CSV file that is only ever added to. A row is checked, written in one piece at the end of the file and flushed to the disk
/// before its receipt is returned; nothing already there is changed.
/// </summary>
/// <remarks>
/// <para>
/// Programs and threads take turns by a lock on the folder. The last cell of every row is written in quotation marks, so a row
/// cut short by a crash can always be told from a whole one: it is moved to a file ending in .torn before the next row is written.
/// </para>
/// <para>
/// The promise rests on the file system's own: local disks keep it; some network drives do not lock, or acknowledge a flush
/// before it is done. After a power cut, a file made in the last moments may be missing from its folder on some file systems.
/// </para>
/// </remarks>
public sealed class AppendLog
{
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);
    private readonly string path;
    private byte[] seen = [];
    private LogSheet? sheet;

    /// <summary>A log in a trial folder; the file may not be there yet.</summary>
    /// <param name="folder">The trial folder, which must exist.</param>
    /// <param name="format">Which log.</param>
    /// <exception cref="DirectoryNotFoundException">There is no such folder.</exception>
    public AppendLog(string folder, LogFormat format)
    {
        ArgumentNullException.ThrowIfNull(format);
        if (!Directory.Exists(Guard.NotBlank(folder))) throw new DirectoryNotFoundException($"There is no folder {folder}.");
        Folder = folder;
        Format = format;
        path = Path.Combine(folder, format.FileName);
    }

    /// <summary>The trial folder.</summary>
    public string Folder { get; }

    /// <summary>Which log.</summary>
    public LogFormat Format { get; }

    /// <summary>How long to wait for another writer before giving up.</summary>
    public TimeSpan Patience { get; init; } = TimeSpan.FromSeconds(30);

    /// <summary>How the file writes decimals; where null, a comma in a file whose values are separated by semicolons, else a point.</summary>
    public DecimalMark? Mark { get; init; }

    /// <summary>Bytes written and flushed at a time, as on a slow disk, where a test wants a row that can be cut short; null to write a row in one piece.</summary>
    internal int? PieceSize { get; init; }

    /// <summary>Adds one row.</summary>
    /// <param name="cells">Column to text; numbers with a decimal point. Columns left out stay blank. <c>id</c> is needed.</param>
    /// <returns>A receipt; the row is on the disk. Logging the very same row again is harmless.</returns>
    /// <exception cref="LogException">The row does not fit, its id is taken by another row, or the file cannot be added to. Nothing was written.</exception>
    public LogReceipt Append(IReadOnlyDictionary<string, string> cells)
    {
        ArgumentNullException.ThrowIfNull(cells);
        var row = LogRow.Of(cells, Format);
        using var turn = LogLock.Take(Folder, Patience);
        var aside = SetTornTailAside();
        var now = Sheet();
        if (now.History.Find(row.Id) is { } earlier)
        {
            if (!row.SameAs(earlier))
            {
                throw new LogException(new Fault(Format.FileName, $"The id is taken by another row, which reads: {earlier}.")
                {
                    Column = "id",
                    Value = row.Id,
                    Accepted = "an id of its own; to correct a row, log a new one that supersedes it and says why",
                });
            }

            Write("");
            return new LogReceipt(Format.FileName, row.Id, false, aside);
        }

        now.CheckCorrection(row);
        Write(now.Render(row));
        return new LogReceipt(Format.FileName, row.Id, true, aside);
    }

    /// <summary>Every whole row now in the file; none where there is no file. Waits for a writer to finish.</summary>
    /// <exception cref="LogException">The file cannot be read as this log.</exception>
    public IReadOnlyList<LogRow> Read()
    {
        if (!File.Exists(path)) return [];
        using var turn = LogLock.TakeIfAllowed(Folder, Patience);
        var text = ReadText();
        return LogSheet.Read(Format, text[..(LogSheet.TornAt(Format, text) ?? text.Length)], Mark).History.Rows;
    }

    /// <summary>The rows, which of them are in force, and who superseded what.</summary>
    /// <exception cref="LogException">The file cannot be read as this log.</exception>
    public BrewDay.LogHistory<LogRow> History() => new(Read());

    /// <summary>The log as it stands; what was read before is kept where the file still starts with it.</summary>
    private LogSheet Sheet()
    {
        var bytes = File.Exists(path) ? ReadBytes() : [];
        if (sheet is null || !bytes.AsSpan().StartsWith(seen) || !sheet.ReadOn(Decode(bytes.AsSpan(seen.Length))))
        {
            sheet = LogSheet.Read(Format, Decode(bytes).TrimStart('\uFEFF'), Mark);
        }

        seen = bytes;
        return sheet;
    }

    private string ReadText() => Decode(ReadBytes()).TrimStart('\uFEFF');

    private string Decode(ReadOnlySpan<byte> bytes)
    {
        try
        {
            return Utf8.GetString(bytes);
        }
        catch (DecoderFallbackException error)
        {
            throw new LogException($"{Format.FileName} is not UTF-8 text, so adding to it could spoil it; save it as \"CSV UTF-8\" first.", error);
        }
    }

    private byte[] ReadBytes()
    {
        using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }

    /// <summary>Moves a row that was cut short to a file of its own; it was never acknowledged.</summary>
    private string? SetTornTailAside()
    {
        if (!File.Exists(path)) return null;
        var bytes = ReadBytes();

        // Bytes and characters must agree on positions, so the text is taken as Latin-1; quotation marks and delimiters are ASCII.
        if (LogSheet.TornAt(Format, Encoding.Latin1.GetString(bytes)) is not { } start) return null;
        var torn = Encoding.UTF8.GetString(bytes.AsSpan(start));
        using (var aside = new FileStream(path + ".torn", FileMode.Append, FileAccess.Write, FileShare.Read))
        {
            aside.Write(bytes.AsSpan(start));
            aside.Write("\n"u8);
            aside.Flush(flushToDisk: true);
        }

        using var stream = new FileStream(path, FileMode.Open, FileAccess.Write, FileShare.ReadWrite);
        stream.SetLength(start);
        stream.Flush(flushToDisk: true);
        return torn;
    }

    /// <summary>Writes text at the end and flushes the file, be there new text or not; takes back what could not be written whole.</summary>
    private void Write(string text)
    {
        var bytes = Utf8.GetBytes(text);
        try
        {
            using var handle = File.OpenHandle(path, FileMode.OpenOrCreate, FileAccess.Write, FileShare.ReadWrite);
            var end = RandomAccess.GetLength(handle);
            try
            {
                var piece = Math.Max(1, PieceSize ?? bytes.Length);
                for (var done = 0; done < bytes.Length; done += piece)
                {
                    RandomAccess.Write(handle, bytes.AsSpan(done, Math.Min(piece, bytes.Length - done)), end + done);
                    if (PieceSize is not null) RandomAccess.FlushToDisk(handle);
                }

                RandomAccess.FlushToDisk(handle);
            }
            catch (IOException)
            {
                RandomAccess.SetLength(handle, end);
                throw;
            }
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new LogException($"{Format.FileName} cannot be added to: {error.Message} Nothing was logged.", error);
        }
    }
}
