using System.Text;

namespace SplitBatch.Trials.Files;

/// <summary>
/// A CSV file whose rows have ids and are only ever added to: an id is given once, a correction is a row of its own, and nothing already
/// there is changed. A row is checked, and is on the disk when its receipt is returned.
/// </summary>
internal sealed class AppendLog
{
    private readonly Lock mine = new();
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
        path = new TrialFolder(folder).PathOf(format.FileName);
    }

    /// <summary>The trial folder.</summary>
    public string Folder { get; }

    /// <summary>Which log.</summary>
    public LogFormat Format { get; }

    /// <summary>How long to wait for another writer before giving up.</summary>
    public TimeSpan Patience { get; init; } = Turn.Patience;

    /// <summary>
    /// How the file writes decimals; where null, a comma in a file whose values are separated by semicolons, else a point.
    /// </summary>
    public DecimalMark? Mark { get; init; }

    /// <summary>Adds one row.</summary>
    /// <param name="cells">Column to text; numbers with a decimal point. Columns left out stay blank. <c>id</c> is needed.</param>
    /// <returns>A receipt; the row is on the disk. Logging the very same row again is harmless.</returns>
    /// <exception cref="LogException">The row does not fit, its id is taken by another row, or the file cannot be added to. Nothing was
    /// written.</exception>
    public LogReceipt Append(IReadOnlyDictionary<string, string> cells) => AppendAll([cells])[0];

    /// <summary>Adds several rows, all of them or none: the file is read once and written once, however many they are.</summary>
    /// <param name="rows">The rows, each as <see cref="Append"/> takes it.</param>
    /// <returns>A receipt for each; all rows are on the disk.</returns>
    /// <exception cref="LogException">A row does not fit, its id is taken, or the file cannot be added to. Nothing was
    /// written.</exception>
    public IReadOnlyList<LogReceipt> AppendAll(IEnumerable<IReadOnlyDictionary<string, string>> rows)
    {
        ArgumentNullException.ThrowIfNull(rows);
        LogRow[] given = [.. rows.Select(cells => LogRow.Of(cells, Format))];
        var added = new HashSet<LogRow>();
        if (given.Length == 0) return [];
        string? aside;
        lock (mine) aside = new Appender(path) { Patience = Patience, CutShort = TornAt }.Append(bytes =>
        {
            var now = Sheet(bytes);
            if (given.Length > 1) sheet = null; // It takes in rows before the file has them.
            added.Clear();
            foreach (var row in given.Where(row => IsNew(row, now)))
            {
                added.Add(row);
                if (given.Length > 1) now.History.Add(row);
            }

            var lines = given.Where(added.Contains).Select(now.Render);
            return added.Count == 0 ? [] : now.MissingHeader is { } header ? [header, .. lines] : [.. lines];
        });
        return [.. given.Select(row => new LogReceipt(Format.FileName, row.Id, added.Contains(row), aside))];
    }

    /// <summary>Whether a row is not in the log yet; refuses one whose id another row has, or whose correction does not fit.</summary>
    private bool IsNew(LogRow row, LogSheet now)
    {
        if (now.History.Find(row.Id) is not { } earlier)
        {
            now.CheckCorrection(row);
            return true;
        }

        return row.SameAs(earlier) ? false
            : throw new LogException(new Fault(Format.FileName, $"The id is taken by another row, which reads: {earlier}.")
            {
                Column = "id",
                Value = row.Id,
                Accepted = "an id of its own; to correct a row, log a new one that supersedes it and says why",
            });
    }

    /// <summary>Every whole row now in the file; none where there is no file. Waits for a writer to finish.</summary>
    /// <exception cref="LogException">The file cannot be read as this log.</exception>
    public IReadOnlyList<LogRow> Read()
    {
        if (!File.Exists(path)) return [];
        var bytes = Appender.Whole(Turn.ReadBytes(path, Patience), out _);
        return LogSheet.Read(Format, Appender.Text(Format.FileName, bytes.AsSpan(0, TornAt(bytes) ?? bytes.Length)), Mark).History.Rows;
    }

    /// <summary>The rows, which of them are in force, and who superseded what.</summary>
    /// <exception cref="LogException">The file cannot be read as this log.</exception>
    public BrewDay.LogHistory<LogRow> History() => new(Read());

    /// <summary>The log as it stands; what was read before is kept where the file still starts with it.</summary>
    private LogSheet Sheet(byte[] bytes)
    {
        if (sheet is null || !bytes.AsSpan().StartsWith(seen) || !sheet.ReadOn(Appender.Text(Format.FileName, bytes.AsSpan(seen.Length))))
        {
            sheet = LogSheet.Read(Format, Appender.Text(Format.FileName, bytes), Mark);
        }

        seen = bytes;
        return sheet;
    }

    /// <summary>
    /// Where a row starts that an earlier version or another program cut short. Bytes and characters agree on places in Latin-1.
    /// </summary>
    private int? TornAt(ReadOnlySpan<byte> bytes) => LogSheet.TornAt(Format, Encoding.Latin1.GetString(bytes));
}
