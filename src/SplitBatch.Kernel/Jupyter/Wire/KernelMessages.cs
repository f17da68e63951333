namespace SplitBatch.Kernel.Jupyter.Wire;

/// <summary><c>kernel_info_reply</c>.</summary>
public sealed record KernelInfoReply(
    string ProtocolVersion,
    string Implementation,
    string ImplementationVersion,
    LanguageInfo LanguageInfo,
    string Banner,
    IReadOnlyList<HelpLink> HelpLinks)
{
    /// <summary>Always <c>ok</c>.</summary>
    public string Status { get; } = "ok";

    /// <summary>Always false: there is no debugger.</summary>
    public bool Debugger { get; }
}

/// <summary>The language of the cells, for a front end's colouring and file names.</summary>
public sealed record LanguageInfo(
    string Name,
    string Version,
    string Mimetype,
    string FileExtension,
    string PygmentsLexer,
    string CodemirrorMode);

/// <summary>A line in the front end's help menu.</summary>
public sealed record HelpLink(string Text, string Url);

/// <summary>The reply to any request that could not be served.</summary>
public sealed record ReplyError(string Ename, string Evalue, IReadOnlyList<string> Traceback)
{
    /// <summary>Always <c>error</c>.</summary>
    public string Status { get; } = "error";
}

/// <summary><c>shutdown_request</c>, also sent to every client when the kernel ends.</summary>
public sealed record ShutdownContent(bool Restart = false);

/// <summary><c>shutdown_reply</c>.</summary>
public sealed record ShutdownReply(bool Restart)
{
    /// <summary>Always <c>ok</c>.</summary>
    public string Status { get; } = "ok";
}

/// <summary><c>interrupt_reply</c>.</summary>
public sealed record InterruptReply
{
    /// <summary>Always <c>ok</c>.</summary>
    public string Status { get; } = "ok";
}

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
