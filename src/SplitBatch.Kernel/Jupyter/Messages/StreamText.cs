namespace SplitBatch.Kernel.Jupyter.Messages;

/// <summary><c>stream</c>: text on <c>stdout</c> or <c>stderr</c>.</summary>
public sealed record StreamText(string Name, string Text);
