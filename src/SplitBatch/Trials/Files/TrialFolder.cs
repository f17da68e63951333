using System.Text;

namespace SplitBatch.Trials.Files;

/// <summary>The folder of one trial on disk: reads its files whole and refuses those that could do harm.</summary>
public sealed class TrialFolder
{
    /// <summary>The largest file that is read: far more than a trial can hold by hand.</summary>
    public const long LargestFile = 20_000_000;

    /// <summary>The file that every trial folder holds.</summary>
    public const string DescriptionFile = "trial.json";

    /// <summary>The file that marks a folder as a working copy of an example.</summary>
    private const string CopyMark = "working-copy.txt";

    private static readonly EnumerationOptions AnyCase = new()
    {
        MatchCasing = MatchCasing.CaseInsensitive,
        MatchType = MatchType.Win32,
        AttributesToSkip = FileAttributes.None,
    };

    /// <summary>A folder, which need not hold a trial.</summary>
    public TrialFolder(string path) => Path = System.IO.Path.GetFullPath(Guard.NotBlank(path));

    /// <summary>The full path.</summary>
    public string Path { get; }

    /// <summary>The folder's own name, which goes into messages and write-ups in place of its path.</summary>
    public string Name => System.IO.Path.GetFileName(System.IO.Path.TrimEndingDirectorySeparator(Path));

    /// <summary>Whether the folder holds a trial.</summary>
    public bool HoldsTrial => Holds(DescriptionFile);

    /// <summary>Whether this is a working copy of an example.</summary>
    public bool IsWorkingCopy => Holds(CopyMark);

    /// <summary>Whether the folder holds a file of that name, such as <c>hops.csv</c> or <c>incoming/return.csv</c>.</summary>
    public bool Holds(string name) => File.Exists(PathOf(name));

    /// <summary>The names of the files in the folder (or in one folder within it) that match a pattern, in a fixed order.</summary>
    public IReadOnlyList<string> Names(string pattern, string within = "")
    {
        var folder = within.Length == 0 ? Path : PathOf(within);
        return Directory.Exists(folder)
            ? [.. Directory.EnumerateFiles(folder, pattern, AnyCase)
                .Select(file => within.Length == 0 ? System.IO.Path.GetFileName(file) : $"{within}/{System.IO.Path.GetFileName(file)}")
                .Order(StringComparer.Ordinal)]
            : [];
    }

    /// <summary>The path of a file within the folder.</summary>
    /// <exception cref="ArgumentException">The name leads out of the folder.</exception>
    public string PathOf(string name)
    {
        var full = System.IO.Path.GetFullPath(System.IO.Path.Combine(Path, Guard.NotBlank(name).Replace('\\', '/')));
        var inside = full.StartsWith(System.IO.Path.TrimEndingDirectorySeparator(Path) + System.IO.Path.DirectorySeparatorChar,
            StringComparison.Ordinal);
        return inside ? AsSpelt(full) : throw new ArgumentException($"\"{name}\" leads out of the trial folder.", nameof(name));
    }

    /// <summary>
    /// The path as the disk spells it: a folder from a system that takes "Hops.csv" and "hops.csv" for one file means the same here. The
    /// exact spelling comes first.
    /// </summary>
    private string AsSpelt(string full)
    {
        var place = Path;
        foreach (var part in System.IO.Path.GetRelativePath(Path, full).Split(System.IO.Path.DirectorySeparatorChar))
        {
            var next = System.IO.Path.Combine(place, part);
            if (!System.IO.Path.Exists(next) && Directory.Exists(place))
            {
                next = Directory.EnumerateFileSystemEntries(place)
                    .FirstOrDefault(
                        entry => string.Equals(System.IO.Path.GetFileName(entry), part, StringComparison.OrdinalIgnoreCase)) ?? next;
            }

            place = next;
        }

        return place;
    }

    /// <summary>
    /// The text of a file, its lines ended by \n whatever system wrote it, or null when it cannot be read, with the reason added to
    /// <paramref name="faults"/>.
    /// </summary>
    internal string? ReadText(string name, FaultList faults)
    {
        ArgumentNullException.ThrowIfNull(faults);
        try
        {
            var file = new FileInfo(PathOf(name));
            if (!file.Exists) return Refuse("The file is missing.", $"a file of this name in the folder \"{Name}\"");
            if (LeadsOut(file)) return Refuse("The file is a link that leads out of the trial folder.", "a file of its own");
            if (file.Length > LargestFile)
                return Refuse($"The file has {Printed.Count(file.Length)} bytes, too many for a trial.",
                    $"at most {Printed.Count(LargestFile)} bytes");
            var bytes = Appender.Whole(Turn.ReadBytes(file.FullName), out var remains);
            var text = new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(bytes).TrimStart('\uFEFF');
            if (remains is not null) faults.Add(CutShort(name, text, remains));
            return text.Replace("\r\n", "\n", StringComparison.Ordinal).Replace('\r', '\n');
        }
        catch (DecoderFallbackException)
        {
            return Refuse("The file is not UTF-8 text, so letters such as ° and ü would be lost.",
                "a file saved as \"CSV UTF-8\" (or plain text in UTF-8)");
        }
        catch (Exception error) when (error is IOException or LogException or UnauthorizedAccessException or ArgumentException
            or NotSupportedException)
        {
            return Refuse("The file cannot be opened.", "a file that this account may read, and that no other program holds");
        }

        string? Refuse(string problem, string accepted)
        {
            faults.Add(new Fault(name, problem) { Accepted = accepted });
            return null;
        }
    }

    /// <summary>That rows at the end of a file were cut short; they are left out, and kept when the next row is written.</summary>
    /// <param name="name">The file.</param>
    /// <param name="text">What stands before them.</param>
    /// <param name="remains">What is left of them.</param>
    internal static Fault CutShort(string name, string text, string remains) =>
        new(name, "The last row was cut short while it was written, and was never acknowledged; it is left out.")
        {
            Row = text.AsSpan().Count('\n') + 1,
            Value = remains.TrimEnd(),
            Severity = Severity.Warning,
            Suggestion = "Log it again if it was not; the next row logged moves the remains out of the way.",
        };

    /// <summary>Copies the folder's files to another, and marks that one as a working copy.</summary>
    /// <param name="target">The folder to make; an earlier working copy there is replaced.</param>
    /// <exception cref="IOException">The target holds files and is not a working copy.</exception>
    public TrialFolder CopyTo(string target)
    {
        var copy = new TrialFolder(target);
        if (copy.IsWorkingCopy) Directory.Delete(copy.Path, recursive: true);
        else if (Directory.Exists(copy.Path) && Directory.EnumerateFileSystemEntries(copy.Path).Any())
        {
            throw new IOException($"The folder \"{copy.Name}\" holds files and is not a working copy, so it is left alone; name another.");
        }

        // The mark comes first and the description last, so that a copy that was cut short is known for one, and made again.
        Directory.CreateDirectory(copy.Path);
        File.WriteAllText(copy.PathOf(CopyMark),
            $"A working copy of the example \"{Name}\". Logging here leaves the example as it came; delete this folder to start "
                + $"afresh.\n");
        var noLinks = new EnumerationOptions { RecurseSubdirectories = true, AttributesToSkip = FileAttributes.ReparsePoint };
        foreach (var file in Directory.EnumerateFiles(Path, "*", noLinks).Where(file => file != PathOf(CopyMark))
            .OrderBy(file => file == PathOf(DescriptionFile)))
        {
            var to = System.IO.Path.Combine(copy.Path, System.IO.Path.GetRelativePath(Path, file));
            Directory.CreateDirectory(System.IO.Path.GetDirectoryName(to)!);
            File.Copy(file, to);
        }

        return copy;
    }

    private bool LeadsOut(FileInfo file) =>
        file.ResolveLinkTarget(returnFinalTarget: true) is { } target
        && !target.FullName.StartsWith(Path + System.IO.Path.DirectorySeparatorChar, StringComparison.Ordinal);
}
