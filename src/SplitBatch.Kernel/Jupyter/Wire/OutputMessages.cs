using System.Text.Json.Serialization;
using SplitBatch.Kernel.Cells;

namespace SplitBatch.Kernel.Jupyter.Wire;

/// <summary><c>stream</c>: text on <c>stdout</c> or <c>stderr</c>.</summary>
public sealed record StreamText(string Name, string Text);

/// <summary><c>display_data</c> and <c>update_display_data</c>.</summary>
public sealed record DisplayDataContent(
    [property: JsonConverter(typeof(BundleConverter))] MimeBundle Data,
    Transient Transient)
{
    /// <summary>Always empty.</summary>
    public EmptyContent Metadata { get; } = new();
}

/// <summary>What is not kept in the notebook: the id by which a display can be updated.</summary>
public sealed record Transient(string? DisplayId = null);

/// <summary>An empty JSON object.</summary>
public sealed record EmptyContent;

/// <summary><c>execute_result</c>: the value that ends a cell.</summary>
public sealed record ExecuteResultContent(
    int ExecutionCount,
    [property: JsonConverter(typeof(BundleConverter))] MimeBundle Data)
{
    /// <summary>Always empty.</summary>
    public EmptyContent Metadata { get; } = new();
}

/// <summary><c>error</c>: why a cell failed.</summary>
public sealed record ErrorContent(string Ename, string Evalue, IReadOnlyList<string> Traceback);

/// <summary><c>clear_output</c>.</summary>
public sealed record ClearOutputContent(bool Wait);

/// <summary><c>status</c>: <c>starting</c>, <c>busy</c> or <c>idle</c>.</summary>
public sealed record StatusContent(string ExecutionState);
