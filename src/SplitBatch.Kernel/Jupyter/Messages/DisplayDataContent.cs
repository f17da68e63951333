using System.Text.Json.Serialization;
using SplitBatch.Kernel.Host;
using SplitBatch.Kernel.Jupyter.Wire;

namespace SplitBatch.Kernel.Jupyter.Messages;

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
