using System.Reflection;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Scripting;
using Microsoft.CodeAnalysis.Scripting.Hosting;
using Microsoft.DotNet.Interactive.CSharp;

namespace SplitBatch.Kernel.Engine;

/// <summary>What the engine and the compiler keep to themselves and this kernel uses: each by name, and what breaks if it goes.</summary>
public class EnginePartsTests
{
    private const BindingFlags Hidden = BindingFlags.Instance | BindingFlags.NonPublic | BindingFlags.Public;

    private static readonly Type Executed =
        typeof(Script).Assembly.GetType("Microsoft.CodeAnalysis.Scripting.ScriptExecutionState", throwOnError: true)!;

    public static TheoryData<Type, string, string> Parts => new()
    {
        { typeof(CSharpKernel), "_scriptOptions", "cells would know neither the library nor the line of an error" },
        { typeof(CSharpKernel), "_workingDirectory", "a path in #r or #load would start from the folder in which the kernel was started" },
        { typeof(CSharpKernel), "set_ScriptState", "a value that a cell made would not be known to #!who and #!share" },
        { typeof(CSharpKernel), "_workspace", "there would be no completion and no help" },
        { typeof(Workspace), "SetCurrentSolution", "completion would offer what cells that were let go had made" },
        { typeof(Script<object>), "_lazyExecutor", "a cell's assembly could not be let go" },
        { typeof(Script), "HasReturnValue", "a cell that ends in a value could not be told from one that does not" },
        { typeof(ScriptState), "get_ExecutionState", "a cell that failed would still be in the list that the next one adds to" },
        { Executed, "FreezeAndClone", "a cell that was let go would still be in the list that the next one adds to" },
        { typeof(InteractiveAssemblyLoader), "ResolveAssembly", "what a cell refers to by file would not be found when it runs" },
    };

    [Theory]
    [MemberData(nameof(Parts))]
    public void It_is_still_there(Type owner, string member, string otherwise)
    {
        ArgumentNullException.ThrowIfNull(owner);
        Assert.True(owner.GetMember(member, Hidden).Length > 0, $"{owner.Name}.{member} is gone: {otherwise}.");
    }
}
