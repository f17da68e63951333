namespace SplitBatch.Kernel.Host;

/// <summary>How a kernel is set up.</summary>
public sealed record KernelHostOptions
{
    /// <summary>Whether <c>#r "nuget: ..."</c> is understood. It needs an SDK at run time.</summary>
    public bool NuGet { get; init; } = true;

    /// <summary>Code to run before the first cell, after the usual namespaces; its output is dropped.</summary>
    public string? StartCode { get; init; }
}
