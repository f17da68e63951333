using System.Text.Json.Serialization;
using SplitBatch.Kernel.Host;
using SplitBatch.Kernel.Jupyter.Wire;

namespace SplitBatch.Kernel.Jupyter.Messages;

/// <summary><c>inspect_request</c>; the position counts code points, null means the end.</summary>
public sealed record InspectRequest(string Code = "", int? CursorPos = null, int DetailLevel = 0);

/// <summary><c>inspect_reply</c>.</summary>
public sealed record InspectReply(bool Found, [property: JsonConverter(typeof(BundleConverter))] MimeBundle Data)
{
    /// <summary>Always <c>ok</c>.</summary>
    public string Status { get; } = "ok";

    /// <summary>Always empty.</summary>
    public EmptyContent Metadata { get; } = new();
}
