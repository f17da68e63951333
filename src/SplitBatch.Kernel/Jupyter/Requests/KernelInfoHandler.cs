using SplitBatch.Kernel.Jupyter.Messages;
using SplitBatch.Kernel.Jupyter.Wire;

namespace SplitBatch.Kernel.Jupyter.Requests;

/// <summary>Says what this kernel is. Needs no host, so that a client is answered while the compiler still warms up.</summary>
public sealed class KernelInfoHandler : IRequestHandler
{
    private static readonly string Version = typeof(KernelInfoHandler).Assembly.GetName().Version?.ToString(3) ?? "0.0.0";

    private static readonly KernelInfoReply Info = new(
        JupyterSession.ProtocolVersion,
        "splitbatch",
        Version,
        new LanguageInfo("C#", "14.0", "text/x-csharp", ".cs", "csharp", "text/x-csharp"),
        $"SplitBatch {Version}, C# on .NET {Environment.Version}. The library is loaded: try Trial.Open(\"folder\").",
        []);

    /// <inheritdoc/>
    public string MessageType => "kernel_info_request";

    /// <inheritdoc/>
    public Task HandleAsync(Exchange exchange, CancellationToken cancellation)
    {
        exchange.Reply(Info, WireJson.Plain.KernelInfoReply);
        return Task.CompletedTask;
    }
}
