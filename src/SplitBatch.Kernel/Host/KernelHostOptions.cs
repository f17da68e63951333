using SplitBatch.Kernel.Engine;

namespace SplitBatch.Kernel.Host;

/// <summary>How a kernel is set up.</summary>
public sealed record KernelHostOptions
{
    /// <summary>Whether <c>#r "nuget: ..."</c> is understood. It needs an SDK at run time.</summary>
    public bool NuGet { get; init; } = true;

    /// <summary>Whether what earlier kernels of this process have registered for showing values is forgotten at the start.</summary>
    public bool FreshDisplays { get; init; }

    /// <summary>Makes the engine, given what runs a cell on a thread of its own.</summary>
    internal Func<Func<Func<Task>, Task>, ICellEngine> Engine { get; init; } = onThread => new CSharpEngine(onThread);

    /// <summary>Code to run before the first cell, after the usual namespaces; its output is dropped.</summary>
    public string? StartCode { get; init; }
}
