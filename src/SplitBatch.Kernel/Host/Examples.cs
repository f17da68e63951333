using System.Text.RegularExpressions;
using System.Xml.Linq;
using SplitBatch.Display;
using SplitBatch.Trials;

namespace SplitBatch.Kernel.Host;

/// <summary>The examples of the library's documentation, which the engine's own help leaves out.</summary>
internal static partial class Examples
{
    private static readonly Lazy<IReadOnlyDictionary<string, string>> ByName = new(Read);

    /// <summary>The example of the member, or else the type, that a help text is about; null when it has none.</summary>
    /// <param name="help">The help text, whose first line shows the signature.</param>
    public static string? For(string help)
    {
        var line = help.Split('\n').FirstOrDefault(text => text.Trim().Length > 0) ?? "";
        return Words().Matches(line.Split('(') is [{ Length: > 0 } before, ..] ? before : line.TrimStart('(')).Select(Member)
            .Reverse()
            .Concat(Words().Matches(line).Select(Member))
            .Select(name => ByName.Value.GetValueOrDefault(name)).FirstOrDefault(text => text is not null);
    }

    /// <summary>Examples by <c>Type.Member</c> and by <c>Type</c>.</summary>
    private static Dictionary<string, string> Read()
    {
        var found = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var file in new[] { typeof(Trial).Assembly, typeof(Display.Tables.Table).Assembly }
            .Select(assembly => Path.ChangeExtension(assembly.Location, ".xml")).Where(File.Exists))
        {
            foreach (var member in XDocument.Load(file).Descendants("member"))
            {
                if (member.Element("example")?.Element("code")?.Value.Trim() is not { Length: > 0 } code) continue;
                var path = ((string)member.Attribute("name")!)[2..].Split('(')[0].Split('.');
                var key = ((string)member.Attribute("name")!)[0] == 'T' ? path[^1] : $"{path[^2]}.{path[^1]}";
                found.TryAdd(key, code);
            }
        }

        return found;
    }

    /// <summary>The type and the member at the end of a path that may start with rooms.</summary>
    private static string Member(Match path) => string.Join('.', path.Value.Split('.').TakeLast(2));

    [GeneratedRegex(@"[A-Za-z_]\w*(\.[A-Za-z_]\w*)*")]
    private static partial Regex Words();
}
