namespace SplitBatch.Kernel.Jupyter.Messages;

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
