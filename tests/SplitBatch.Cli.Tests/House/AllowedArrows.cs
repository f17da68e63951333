using System.Text;

namespace SplitBatch.Cli.House;

/// <summary>The list of allowed arrows: a folder, and below it, indented, the folders that it may look into.</summary>
internal static class AllowedArrows
{
    private const string Heading = """
        # What each folder of src may look into. A folder that is not listed looks into none.
        # The test "Every_arrow_is_allowed_and_every_allowed_arrow_is_used" compares; DEVELOPERS.md has the picture.

        """;

    public static IEnumerable<(string From, string To)> Read(IEnumerable<string> lines)
    {
        var from = "";
        foreach (var line in lines.Where(line => line.Trim().Length > 0 && !line.StartsWith('#')))
        {
            if (!char.IsWhiteSpace(line[0])) from = line.Trim();
            else foreach (var to in line.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
                yield return (from, to);
        }
    }

    public static string Write(IEnumerable<(string From, string To)> arrows)
    {
        var text = new StringBuilder(Heading);
        foreach (var folder in arrows.GroupBy(arrow => arrow.From, arrow => arrow.To).OrderBy(group => group.Key, StringComparer.Ordinal))
        {
            text.Append('\n').Append(folder.Key).Append('\n');
            foreach (var line in folder.Order(StringComparer.Ordinal).GroupBy(to => to.Split('/')[0]))
                text.Append("    ").AppendJoin(", ", line).Append('\n');
        }

        return text.ToString();
    }
}
