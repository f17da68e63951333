using Microsoft.CodeAnalysis.Text;
using SplitBatch.Kernel.Cells;

namespace SplitBatch.Kernel.Engine;

/// <summary>
/// The one door to the engine that compiles and runs cells. The packages of .NET Interactive behind it get no fixes any more, so nothing
/// outside of this folder knows them.
/// </summary>
internal interface ICellEngine : IDisposable
{
    /// <summary>Compiles a cell and runs it on top of those that ran before.</summary>
    /// <param name="code">The cell's text.</param>
    /// <param name="cell">Where its outputs go, and when it is to stop.</param>
    Task<CellOutcome> RunAsync(string code, RunningCell cell);

    /// <summary>Makes libraries known to this cell and later ones.</summary>
    /// <param name="files">The files, as whole paths.</param>
    void AddReferences(IEnumerable<string> files);

    /// <summary>What could stand at the cursor, whatever stands before it already.</summary>
    Task<IReadOnlyList<Completion>> CompleteAsync(string code, LinePosition cursor, CancellationToken cancellation);

    /// <summary>What stands at the cursor, as Markdown; null or blank where nothing is known.</summary>
    Task<string?> HoverAsync(string code, LinePosition cursor, CancellationToken cancellation);

    /// <summary>The ways to make the call within whose parentheses the cursor stands.</summary>
    Task<IReadOnlyList<CallSignature>> SignaturesAsync(string code, LinePosition cursor, CancellationToken cancellation);
}

/// <summary>What became of a cell.</summary>
/// <param name="Finished">False when it was stopped first; nothing else is known then.</param>
/// <param name="Failed">Whether it failed.</param>
/// <param name="Message">Why, in the engine's words.</param>
/// <param name="Exception">What it threw, or the compiler's complaint.</param>
internal sealed record CellOutcome(bool Finished, bool Failed = false, string? Message = null, Exception? Exception = null);

/// <summary>One way to make a call.</summary>
/// <param name="Label">The call as it is declared.</param>
/// <param name="Documentation">What it does, as Markdown.</param>
/// <param name="Parameters">Its parameters, each with its documentation.</param>
internal sealed record CallSignature(string Label, string Documentation, IReadOnlyList<(string Label, string Documentation)> Parameters);
