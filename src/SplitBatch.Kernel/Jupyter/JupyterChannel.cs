namespace SplitBatch.Kernel.Jupyter;

/// <summary>The sockets that carry messages; the heartbeat carries none.</summary>
public enum JupyterChannel
{
    /// <summary>Requests, served one after another.</summary>
    Shell,

    /// <summary>Requests that must not wait behind a running cell.</summary>
    Control,

    /// <summary>Questions to the user, and answers.</summary>
    Stdin,

    /// <summary>Everything put out, to every client.</summary>
    IOPub,
}
