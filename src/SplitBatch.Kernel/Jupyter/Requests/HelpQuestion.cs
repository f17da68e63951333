using System.Text.RegularExpressions;
using SplitBatch.Kernel.Cells;

namespace SplitBatch.Kernel.Jupyter.Requests;

/// <summary>
/// A cell that only asks what something is: a dotted name with a question mark behind it, as in <c>Trial.Open?</c>. No C# looks so.
/// </summary>
public static partial class HelpQuestion
{
    /// <summary>Whether the cell is such a question, and about what.</summary>
    public static bool TryRead(string code, out string subject)
    {
        var match = Question().Match(code);
        subject = match.Groups["name"].Value;
        return match.Success;
    }

    /// <summary>The answer, for the reader's pager.</summary>
    public static async Task<CellOutput> AnswerAsync(ICellHost host, string subject, CancellationToken cancellation)
    {
        var found = await host.InspectAsync(subject, subject.Length, cancellation).ConfigureAwait(false);
        return found is null
            ? new TextOutput($"Nothing is known here by the name {subject}.\n")
            : new PageOutput(found);
    }

    [GeneratedRegex(@"^\s*(?<name>[\p{L}_][\w]*(\.[\p{L}_][\w]*)*)\?\s*$", RegexOptions.CultureInvariant)]
    private static partial Regex Question();
}
