using System.Text.Json.Nodes;
using SplitBatch.Kernel.Jupyter.Messages;
using SplitBatch.Kernel.Jupyter.Wire;

namespace SplitBatch.Kernel.Jupyter.Requests;

/// <summary>Gives back earlier cells: the last ones, a range, or those that fit a pattern.</summary>
public sealed class HistoryHandler(History history) : IRequestHandler
{
    /// <inheritdoc/>
    public string MessageType => "history_request";

    /// <inheritdoc/>
    public Task HandleAsync(Exchange exchange, CancellationToken cancellation)
    {
        var request = exchange.Content(WireJson.Plain.HistoryRequest);
        var found = request.HistAccessType switch
        {
            "tail" => history.Tail(request.N ?? 10),
            "range" => history.Range(request.Session, request.Start ?? 1, request.Stop),
            "search" => history.Search(request.Pattern ?? "*", request.N, request.Unique),
            var other => throw new ArgumentException($"hist_access_type is '{other}'; accepted are tail, range and search"),
        };
        exchange.Reply(new HistoryReply([.. found.Select(e => Row(e, request.Output))]), WireJson.Plain.HistoryReply);
        return Task.CompletedTask;
    }

    private static JsonArray Row(HistoryEntry entry, bool withOutput) =>
        [History.Session, entry.Line, withOutput ? new JsonArray(entry.Input, entry.Output) : JsonValue.Create(entry.Input)];
}
