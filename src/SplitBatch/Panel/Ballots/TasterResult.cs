using static System.FormattableString;

namespace SplitBatch.Panel;

/// <summary>The count of one taster.</summary>
/// <param name="Taster">The taster.</param>
/// <param name="Served">Sets served.</param>
/// <param name="Counted">Sets counted.</param>
/// <param name="Correct">Sets counted as correct.</param>
public sealed record TasterResult(string Taster, int Served, int Counted, int Correct)
{
    /// <summary>For example <c>T07: 3 of 4</c>.</summary>
    public override string ToString() => Invariant($"{Taster}: {Correct} of {Counted}{(Counted < Served ? Invariant($" ({Served} served)") : "")}");
}
