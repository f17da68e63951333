using System.Globalization;
using System.Text.RegularExpressions;
using SplitBatch.BrewDay;
using SplitBatch.Lab;

namespace SplitBatch.Evidence.Findings;

/// <summary>Something that was meant to be held equal, beside what the batch log says of it: an intention is no measurement.</summary>
public sealed partial record MeantEqual : Finding
{
    private MeantEqual(int number, string statement, IReadOnlyList<ParityLine>? lines)
        : base(Subject.Batches, FindingId.Of("limit", "equal", number.ToString(CultureInfo.InvariantCulture))) =>
            (Statement, Lines) = (statement, lines);

    /// <inheritdoc/>
    public override FindingRole Role => FindingRole.Limit;

    /// <summary>The intention, as trial.json states it.</summary>
    public string Statement { get; }

    /// <summary>The lines of the log whose quantity it names; empty where none is, null where no log is kept.</summary>
    public IReadOnlyList<ParityLine>? Lines { get; }

    /// <summary>Whether the log shows that something in it was not equal.</summary>
    public bool IsContradicted => Lines?.Any(line => line.Verdict == Parity.Confound) == true;

    /// <summary>Each intention beside the log.</summary>
    /// <param name="statements">The intentions, as trial.json states them.</param>
    /// <param name="parity">The log's comparison of the halves; null where none is kept.</param>
    public static IReadOnlyList<MeantEqual> Of(IEnumerable<string> statements, ParityCheck? parity) =>
        [.. statements.Select(
            (statement, i) => new MeantEqual(i + 1, statement,
                parity is null ? null : [.. parity.Lines.Where(line => !line.IsDerived && Names(statement, line.Quantity))])
            {
                Method = "intention in trial.json beside the batch log",
                Sources = ["trial.json", .. parity is null ? Array.Empty<string>() : ["batch-log.csv"]],
            })];

    /// <summary>Whether a statement names a quantity: all words of the quantity stand in one of its parts.</summary>
    private static bool Names(string statement, string quantity) =>
        Part().Split(statement).Any(part => Words(quantity).IsSubsetOf(Words(part)));

    private static HashSet<string> Words(string text) =>
        new(Word().Matches(text).Select(match => Plain(match.Value.ToLowerInvariant())));

    /// <summary>A day is a date, and one temperature is of the kind of several.</summary>
    private static string Plain(string word) => word is "day" ? "date" : word.EndsWith('s') && word.Length > 3 ? word[..^1] : word;

    [GeneratedRegex(@"[\p{L}\p{N}]+")]
    private static partial Regex Word();

    [GeneratedRegex(@",|;|\band\b")]
    private static partial Regex Part();
}
