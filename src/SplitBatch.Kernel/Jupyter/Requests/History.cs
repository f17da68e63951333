using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using SplitBatch.Kernel.Jupyter.Wire;

namespace SplitBatch.Kernel.Jupyter.Requests;

/// <summary>The cells of this session, in order. Kept in memory only: nothing of a notebook is written anywhere by the kernel.</summary>
public sealed class History
{
    /// <summary>The number of the only session there is.</summary>
    public const int Session = 1;

    private readonly List<HistoryEntry> _entries = [];
    private readonly Lock _lock = new();

    /// <summary>Adds a cell that was run.</summary>
    public void Add(HistoryEntry entry)
    {
        lock (_lock)
        {
            _entries.Add(entry);
        }
    }

    /// <summary>The last <paramref name="count"/> cells.</summary>
    public IReadOnlyList<HistoryEntry> Tail(int count)
    {
        lock (_lock)
        {
            return [.. _entries.TakeLast(Math.Max(count, 0))];
        }
    }

    /// <summary>The cells of a session whose line is in [start, stop).</summary>
    /// <param name="session">This session is 0 or <see cref="Session"/>; any other is empty.</param>
    /// <param name="start">First line, from 1.</param>
    /// <param name="stop">The line after the last; null for no end.</param>
    public IReadOnlyList<HistoryEntry> Range(int session, int start, int? stop)
    {
        lock (_lock)
        {
            return session is 0 or Session ? [.. _entries.Where(e => e.Line >= start && e.Line < (stop ?? int.MaxValue))] : [];
        }
    }

    /// <summary>The cells that fit a pattern, oldest first.</summary>
    /// <param name="pattern">The whole cell's text, where <c>*</c> is any text and <c>?</c> any one character.</param>
    /// <param name="count">Only the last so many; null for all.</param>
    /// <param name="unique">Only the last of equal cells.</param>
    public IReadOnlyList<HistoryEntry> Search(string pattern, int? count, bool unique)
    {
        var glob = Glob(pattern);
        lock (_lock)
        {
            var found = _entries.Where(e => glob.IsMatch(e.Input));
            if (unique)
            {
                found = found.Reverse().DistinctBy(e => e.Input).Reverse();
            }

            return [.. found.TakeLast(count ?? int.MaxValue)];
        }
    }

    private static Regex Glob(string pattern)
    {
        var text = new StringBuilder("^");
        foreach (var c in pattern)
        {
            text.Append(c switch { '*' => ".*", '?' => ".", _ => Regex.Escape(c.ToString()) });
        }

        return new Regex(text.Append('$')
            .ToString(), RegexOptions.Singleline | RegexOptions.NonBacktracking | RegexOptions.CultureInvariant);
    }
}

/// <summary>One cell that was run.</summary>
/// <param name="Line">Its execution count.</param>
/// <param name="Input">Its text.</param>
/// <param name="Output">Its value as plain text, or null when it had none.</param>
public sealed record HistoryEntry(int Line, string Input, string? Output);

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
