using System.Net;
using SplitBatch.Kernel.Cells;
using SplitBatch.Trials;
using SplitBatch.Trials.Reading;

namespace SplitBatch.Kernel.Host;

/// <summary>
/// Cells that cannot be run yet because the trial does not hold what they need. Such a cell is not an error: it says what is
/// missing, and the cells that build on it say that they wait. So does a cell whose question has no answer for this panel.
/// </summary>
/// <remarks>Names are told from the cells' text, because a variable whose cell did not end well may hold a value that means
/// nothing.</remarks>
internal sealed class MissingData
{
    private const string NotHere = "Not for this panel.";

    private readonly Dictionary<string, string> waiting = new(StringComparer.Ordinal);

    /// <summary>What a cell waits for, as a sentence; null when nothing it builds on is missing.</summary>
    public string? WaitedFor(CellNames cell) =>
        cell.Taken.Where(waiting.ContainsKey).Order(StringComparer.Ordinal).FirstOrDefault() is { } name ? waiting[name] : null;

    /// <summary>What an exception says is missing; null when it is about something else.</summary>
    public static string? Of(Exception? exception)
    {
        for (var e = exception; e is not null; e = e.InnerException)
        {
            if (e is TrialIncompleteException missing) return missing.Message;
            if (e is NotApplicableException other) return $"{NotHere} {other.Message}";
        }

        return null;
    }

    /// <summary>The cell did not make its names, for a reason.</summary>
    public void Wait(CellNames cell, string reason)
    {
        foreach (var name in cell.Made) waiting[name] = reason;
    }

    /// <summary>The cell ran well and made its names.</summary>
    public void Ran(CellNames cell)
    {
        foreach (var name in cell.Made) waiting.Remove(name);
    }

    /// <summary>The note in the cell's place.</summary>
    /// <param name="reason">What is missing.</param>
    /// <param name="waits">Whether an earlier cell said it already; what to do is then not said again.</param>
    public static DisplayOutput Note(string reason, bool waits)
    {
        var text = reason.StartsWith(NotHere, StringComparison.Ordinal) ? reason
            : waits ? $"Not yet: this cell builds on an earlier one. {reason.Split(':')[0].TrimEnd('.')}." : $"Not yet. {reason}";
        return new DisplayOutput(new MimeBundle(new Dictionary<string, string>
        {
            ["text/plain"] = text,
            ["text/html"] =
                $"<p class=\"splitbatch-not-yet\" style=\"border-left:0.3em solid #888;margin:0.4em 0;padding:0.2em "
                + $"0.8em;max-width:48em\">{WebUtility.HtmlEncode(text)}</p>",
        }));
    }
}
