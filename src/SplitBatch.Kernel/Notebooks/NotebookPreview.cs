using System.Text.Json.Nodes;

namespace SplitBatch.Kernel.Notebooks;

/// <summary>
/// Puts the results of a run into notebooks as they are kept under version control: tables, sentences and static pictures
/// without any script, so that a code host's preview shows them and a changed number shows as a changed line.
/// </summary>
public static class NotebookPreview
{
    /// <summary>The largest notebook that a preview may become, in bytes.</summary>
    public const int LargestPreview = 400_000;

    private const string Plain = "text/plain";
    private const string Html = "text/html";
    private const string Svg = "image/svg+xml";

    /// <summary>The notebook with the results of its executed copy, reduced; cells are matched by their ids.</summary>
    /// <param name="notebook">The notebook; it is changed.</param>
    /// <param name="executed">Its executed copy.</param>
    /// <exception cref="NotebookException">The result is larger than <see cref="LargestPreview"/>.</exception>
    public static void Fill(Notebook notebook, Notebook executed)
    {
        ArgumentNullException.ThrowIfNull(notebook);
        ArgumentNullException.ThrowIfNull(executed);
        var results = executed.Cells.Where(cell => cell is { Kind: CellKind.Code, Id: not null }).ToDictionary(cell => cell.Id!);
        var count = 0;
        foreach (var cell in notebook.Cells.Where(cell => cell.Kind == CellKind.Code))
        {
            var outputs = cell.ClearOutputs();
            cell.ExecutionCount = ++count;
            if (cell.Id is not { } id || !results.TryGetValue(id, out var result)) continue;
            foreach (var output in result.Outputs)
            {
                var reduced = Reduced(output!.AsObject());
                if (reduced["execution_count"] is not null) reduced["execution_count"] = count;
                outputs.Add(reduced);
            }
        }

        var size = notebook.ToString().Length;
        if (size > LargestPreview)
            throw new NotebookException(
                $"With its results the notebook would have {Printed.Count(size)} characters; at most {Printed.Count(LargestPreview)} are "
                    + $"kept. Show fewer rows "
                + $"or charts.");
    }

    private static JsonObject Reduced(JsonObject output)
    {
        var copy = output.DeepClone().AsObject();
        if (copy["data"] is JsonObject data) copy["data"] = Forms(data);
        return copy;
    }

    private static JsonObject Forms(JsonObject data)
    {
        var html = MultilineText.Join(data[Html]);
        string[] kept = data.ContainsKey(Svg) ? [Svg, Plain] : html.Contains("<table", StringComparison.Ordinal) ? [Html, Plain] : [Plain];
        return new JsonObject(kept.Where(data.ContainsKey).Select(form => KeyValuePair.Create(form, data[form]?.DeepClone())));
    }
}
