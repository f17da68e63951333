using System.Text.RegularExpressions;

namespace SplitBatch.Kernel.Packages;

/// <summary>
/// The packages that a cell asks for, by <c>#r "nuget: Name, 1.2.3"</c>, and the places it names for them, by <c>#i "nuget: folder or
/// address"</c>.
/// </summary>
/// <param name="Wishes">The packages, in order; a version is null for the newest.</param>
/// <param name="Sources">Places to look in, beside the user's own; folders as whole paths.</param>
/// <param name="Rest">The cell without those lines; they are left empty, so that lines keep their numbers.</param>
internal sealed partial record PackageRequest(IReadOnlyList<(string Name, string? Version)> Wishes, IReadOnlyList<string> Sources,
    string Rest)
{
    /// <summary>Whether the cell asks for nothing.</summary>
    public bool IsEmpty => Wishes.Count == 0 && Sources.Count == 0;

    /// <summary>Reads the lines off a cell.</summary>
    /// <exception cref="FormatException">A line is not written as it should be.</exception>
    public static PackageRequest Read(string code)
    {
        if (!code.Contains("nuget", StringComparison.OrdinalIgnoreCase)) return new([], [], code);
        List<(string, string?)> wishes = [];
        List<string> sources = [];
        var rest = Line().Replace(code, line =>
        {
            var what = line.Groups["what"].Value.Trim();
            if (line.Groups["word"].Value is "i") sources.Add(Source(what));
            else wishes.Add(Wish(what));
            return "";
        });
        return new(wishes, sources, rest);
    }

    private static (string, string?) Wish(string text)
    {
        var match = NameAndVersion().Match(text);
        return match.Success
            ? (match.Groups["name"].Value, match.Groups["version"] is { Success: true, Value: not "*-*" and var version } ? version : null)
            : throw new FormatException(
                $"\"nuget: {text}\" names no package. Write it as #r \"nuget: Name, 1.2.3\", or without a version for the newest.");
    }

    private static string Source(string text) => text switch
    {
        "" => throw new FormatException(
            "The line names no place for packages. Write it as #i \"nuget: folder\" or with an address that begins with https."),
        _ when text.Contains("://", StringComparison.Ordinal) => text,
        _ => Path.GetFullPath(text),
    };

    [GeneratedRegex("""^[ \t]*#(?<word>[ri])[ \t]+"nuget:(?<what>[^"\r\n]*)"[ \t]*(?=\r?$)""",
        RegexOptions.Multiline | RegexOptions.IgnoreCase)]
    private static partial Regex Line();

    [GeneratedRegex(@"^(?<name>[A-Za-z0-9_.\-]+)\s*(,\s*(?<version>[0-9A-Za-z.\-+*\[\]\(\), ]+))?$")]
    private static partial Regex NameAndVersion();
}
