using System.Reflection;
using System.Runtime.CompilerServices;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Scripting;
using Microsoft.CodeAnalysis.Scripting.Hosting;
using Microsoft.DotNet.Interactive.CSharp;

namespace SplitBatch.Kernel.Engine;

/// <summary>What the engine and the compiler's scripting keep to themselves and <see cref="CellChain"/> needs.</summary>
internal static class EngineParts
{
    private const string MadeByScripts = "Microsoft.CodeAnalysis.Scripting.ScriptExecutionState, Microsoft.CodeAnalysis.Scripting";

    /// <summary>What the engine has run so far. Only it can set it, so it is set where it keeps it.</summary>
    [UnsafeAccessor(UnsafeAccessorKind.Method, Name = "set_ScriptState")]
    public static extern void SetState(CSharpKernel kernel, ScriptState state);

    /// <summary>With what the next cell is compiled.</summary>
    [UnsafeAccessor(UnsafeAccessorKind.Field, Name = "_scriptOptions")]
    public static extern ref ScriptOptions Options(CSharpKernel kernel);

    /// <summary>The folder from which relative paths start.</summary>
    [UnsafeAccessor(UnsafeAccessorKind.Field, Name = "_workingDirectory")]
    public static extern ref string Folder(CSharpKernel kernel);

    /// <summary>What runs the script; made when it is first run.</summary>
    public static ref Func<object[], Task<object>> Executor(Script<object> script) => ref Typed<object>.Executor(script);

    /// <summary>Whether the script ends in a value.</summary>
    [UnsafeAccessor(UnsafeAccessorKind.Method, Name = "HasReturnValue")]
    public static extern bool HasValue(Script script);

    /// <summary>
    /// Lets the next script that continues here copy the list of what scripts made. The first to do so would write into the same list,
    /// which then held what that script made, even once it is let go.
    /// </summary>
    public static void Close(ScriptState state) => Close(Made(state));

    /// <summary>Finds an assembly that cells refer to by file.</summary>
    [UnsafeAccessor(UnsafeAccessorKind.Method, Name = "ResolveAssembly")]
    public static extern Assembly? Resolve(InteractiveAssemblyLoader loader, string name, Assembly? requesting);

    [UnsafeAccessor(UnsafeAccessorKind.Method, Name = "get_ExecutionState")]
    [return: UnsafeAccessorType(MadeByScripts)]
    private static extern object Made(ScriptState state);

    [UnsafeAccessor(UnsafeAccessorKind.Method, Name = "FreezeAndClone")]
    [return: UnsafeAccessorType(MadeByScripts)]
    private static extern object Close([UnsafeAccessorType(MadeByScripts)] object made);

    private static class Typed<T>
    {
        [UnsafeAccessor(UnsafeAccessorKind.Field, Name = "_lazyExecutor")]
        public static extern ref Func<object[], Task<T>> Executor(Script<T> script);
    }
}
