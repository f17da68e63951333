using System.Text.Json.Nodes;
using SplitBatch.Kernel.Notebooks;

namespace SplitBatch.Kernel.Headless;

/// <summary>Takes the folders of this machine out of what a notebook shows: a path becomes relative or a short word.</summary>
internal sealed class PathWords
{
    private readonly List<(string Path, string Word)> rules = [];

    /// <summary>
    /// Says <paramref name="word"/> wherever <paramref name="path"/> stands. Longer paths win over those they begin with.
    /// </summary>
    public void Add(string path, string word)
    {
        if (path.Length < 4) return; // "/", "C:\": a word of its own, not a place.
        rules.Add((path, word));
        rules.Sort((a, b) => b.Path.Length.CompareTo(a.Path.Length));
    }

    public string Clean(string text)
    {
        foreach (var (path, word) in rules) text = Replace(text, path, word);
        return text;
    }

    public void Clean(Notebook notebook)
    {
        foreach (var cell in notebook.Cells.Where(c => c.Kind == CellKind.Code))
        {
            foreach (var output in cell.Outputs) CleanText(output);
            if (cell.Tags.Contains(ParameterCell.InjectedTag)) cell.Source = Clean(cell.Source);
        }
    }

    private void CleanText(JsonNode? node)
    {
        switch (node)
        {
            case JsonObject group:
                foreach (var (name, value) in group.ToList())
                {
                    if (Changed(value) is { } text) group[name] = text;
                    else CleanText(value);
                }

                break;
            case JsonArray list:
                for (var i = 0; i < list.Count; i++)
                {
                    if (Changed(list[i]) is { } text) list[i] = text;
                    else CleanText(list[i]);
                }

                break;
        }
    }

    private string? Changed(JsonNode? node)
    {
        if (node is not JsonValue value || !value.TryGetValue<string>(out var text)) return null;
        var cleaned = Clean(text);
        return ReferenceEquals(cleaned, text) || cleaned == text ? null : cleaned;
    }

    /// <summary>Replaces a path where it is whole: what follows is its end or a separator, not more of a name.</summary>
    private static string Replace(string text, string path, string word)
    {
        var at = text.IndexOf(path, StringComparison.Ordinal);
        if (at < 0) return text;
        var result = new System.Text.StringBuilder();
        var from = 0;
        for (; at >= 0; at = text.IndexOf(path, at + 1, StringComparison.Ordinal))
        {
            var end = at + path.Length;
            var whole = (end == text.Length || !IsName(text[end])) && (at == 0 || !IsName(text[at - 1]));
            if (!whole || at < from) continue;
            result.Append(text, from, at - from).Append(word);
            from = end;
        }

        return result.Append(text, from, text.Length - from).ToString();
    }

    private static bool IsName(char c) => char.IsLetterOrDigit(c) || c is '-' or '_';
}
