namespace SplitBatch.Kernel.Cells;

/// <summary>One thing a running cell put out.</summary>
public abstract record CellOutput;

/// <summary>Text written to standard output, or to standard error.</summary>
/// <param name="Text">As written, line ends included.</param>
/// <param name="IsError">True for standard error.</param>
public sealed record TextOutput(string Text, bool IsError = false) : CellOutput;

/// <summary>Something shown on the way, by <c>display</c>.</summary>
/// <param name="Data">One picture of the value per MIME type.</param>
/// <param name="DisplayId">The id by which it can be updated later, where it has one.</param>
public sealed record DisplayOutput(MimeBundle Data, string? DisplayId = null) : CellOutput;

/// <summary>A new picture for something shown earlier.</summary>
/// <param name="Data">One picture of the value per MIME type.</param>
/// <param name="DisplayId">The id the first <see cref="DisplayOutput"/> carried.</param>
public sealed record DisplayUpdate(MimeBundle Data, string DisplayId) : CellOutput;

/// <summary>The value that ends the cell.</summary>
/// <param name="Data">One picture of the value per MIME type.</param>
public sealed record ValueOutput(MimeBundle Data) : CellOutput;

/// <summary>Asks for earlier outputs of this cell to be removed.</summary>
/// <param name="Wait">True to wait with that until the next output.</param>
public sealed record ClearOutput(bool Wait = false) : CellOutput;

/// <summary>Long text for the reader's pager, such as a help page; a front end without one shows it below the cell.</summary>
/// <param name="Data">One form of the text per MIME type; <c>text/plain</c> is always among them.</param>
public sealed record PageOutput(MimeBundle Data) : CellOutput;
