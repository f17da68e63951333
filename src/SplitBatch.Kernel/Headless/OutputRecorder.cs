using System.Text.Json.Nodes;
using SplitBatch.Kernel.Cells;
using SplitBatch.Kernel.Notebooks;

namespace SplitBatch.Kernel.Headless;

/// <summary>Keeps what cells put out, in the notebook format, in the cells they belong to.</summary>
internal sealed class OutputRecorder
{
    private readonly Lock gate = new();
    private readonly Dictionary<string, List<JsonObject>> displays = [];
    private bool closed;

    /// <summary>The sink for one cell's outputs; outputs of its background tasks are kept until <see cref="Close"/>.</summary>
    public ICellSink For(JsonArray outputs, int executionCount) => new Sink(this, outputs, executionCount);

    /// <summary>Adds the error that ended a cell.</summary>
    public static void AddError(JsonArray outputs, CellError error) => outputs.Add(new JsonObject
    {
        ["ename"] = error.Name,
        ["evalue"] = error.Message,
        ["output_type"] = "error",
        ["traceback"] = new JsonArray([.. error.Traceback.Select(l => (JsonNode)l)]),
    });

    /// <summary>Does something while nothing is recorded: what earlier cells still put out waits for it.</summary>
    public void Pause(Action action)
    {
        lock (gate) action();
    }

    /// <summary>From now on nothing more is recorded.</summary>
    public void Close()
    {
        lock (gate) closed = true;
    }

    private static JsonObject Bundle(MimeBundle data) => new(data.Forms.Select(form => KeyValuePair.Create(
        form.Key,
        MimeBundle.IsJson(form.Key) ? JsonNode.Parse(form.Value) : form.Key is "image/png" or "image/jpeg" ? form.Value
            : MultilineText.Split(form.Value))));

    private sealed class Sink(OutputRecorder recorder, JsonArray outputs, int executionCount) : ICellSink
    {
        private bool clearFirst;

        public void Publish(CellOutput output)
        {
            lock (recorder.gate)
            {
                if (!recorder.closed) Record(output);
            }
        }

        public Task<string> ReadLineAsync(string prompt, bool password, CancellationToken cancellation) =>
            throw new InvalidOperationException(
                "The cell asks for input, and in a headless run nobody is there to answer. Put the value into the cell, or into the "
                + "parameters cell and give it with --set.");

        private void Record(CellOutput output)
        {
            if (output is DisplayUpdate update)
            {
                foreach (var shown in recorder.displays.GetValueOrDefault(update.DisplayId, [])) shown["data"] = Bundle(update.Data);
                return;
            }

            if (output is ClearOutput clear)
            {
                clearFirst = clear.Wait;
                if (!clear.Wait) outputs.Clear();
                return;
            }

            if (clearFirst) outputs.Clear();
            clearFirst = false;
            switch (output)
            {
                case TextOutput text:
                    AddText(text);
                    break;
                case DisplayOutput shown:
                    var display =
                        new JsonObject { ["data"] = Bundle(shown.Data), ["metadata"] = new JsonObject(),
                            ["output_type"] = "display_data" };
                    if (shown.DisplayId is { } id) Remember(id, display);
                    outputs.Add(display);
                    break;
                case ValueOutput value:
                    outputs.Add(new JsonObject
                    {
                        ["data"] = Bundle(value.Data),
                        ["execution_count"] = executionCount,
                        ["metadata"] = new JsonObject(),
                        ["output_type"] = "execute_result",
                    });
                    break;
            }
        }

        private void AddText(TextOutput text)
        {
            var name = text.IsError ? "stderr" : "stdout";
            if (outputs.LastOrDefault() is JsonObject last && (string?)last["output_type"] == "stream" && (string?)last["name"] == name)
            {
                var lines = (JsonArray)last["text"]!;
                var open = lines.Count > 0 && (string)lines[^1]! is { } end && !end.EndsWith('\n') ? end : "";
                if (open.Length > 0) lines.RemoveAt(lines.Count - 1);
                foreach (var line in MultilineText.Split(open + text.Text).ToList()) lines.Add((string)line!);
            }
            else
            {
                outputs.Add(new JsonObject { ["name"] = name, ["output_type"] = "stream", ["text"] = MultilineText.Split(text.Text) });
            }
        }

        private void Remember(string id, JsonObject display)
        {
            if (!recorder.displays.TryGetValue(id, out var shown)) recorder.displays[id] = shown = [];
            shown.Add(display);
        }
    }
}
