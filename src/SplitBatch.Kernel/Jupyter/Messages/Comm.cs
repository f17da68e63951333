namespace SplitBatch.Kernel.Jupyter.Messages;

/// <summary><c>comm_open</c>, as far as it is read.</summary>
public sealed record CommOpenContent(string CommId = "", string TargetName = "");

/// <summary><c>comm_close</c>.</summary>
public sealed record CommCloseContent(string CommId)
{
    /// <summary>Always empty.</summary>
    public EmptyContent Data { get; } = new();
}

/// <summary><c>comm_info_reply</c>: this kernel has no comms.</summary>
public sealed record CommInfoReply
{
    /// <summary>Always <c>ok</c>.</summary>
    public string Status { get; } = "ok";

    /// <summary>Always empty.</summary>
    public EmptyContent Comms { get; } = new();
}
