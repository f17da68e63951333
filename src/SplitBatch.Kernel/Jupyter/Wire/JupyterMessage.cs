namespace SplitBatch.Kernel.Jupyter.Wire;

/// <summary>A message as received: checked, its header read, its content still JSON.</summary>
/// <param name="Identities">Routing frames, to be given back with the reply.</param>
/// <param name="Header">The header, read.</param>
/// <param name="HeaderJson">The header's exact bytes; a reply gives them back as its parent.</param>
/// <param name="Content">The content's JSON bytes.</param>
public sealed record JupyterMessage(
    IReadOnlyList<byte[]> Identities,
    MessageHeader Header,
    byte[] HeaderJson,
    byte[] Content);
