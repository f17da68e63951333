using System.Text.Json.Serialization;
using SplitBatch.Kernel.Host;
using SplitBatch.Kernel.Jupyter.Wire;

namespace SplitBatch.Kernel.Jupyter.Messages;

/// <summary><c>execute_result</c>: the value that ends a cell.</summary>
public sealed record ExecuteResultContent(
    int ExecutionCount,
    [property: JsonConverter(typeof(BundleConverter))] MimeBundle Data)
{
    /// <summary>Always empty.</summary>
    public EmptyContent Metadata { get; } = new();
}
