using System.Reflection;
using System.Runtime.Loader;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp.Scripting;
using Microsoft.CodeAnalysis.Scripting;
using Microsoft.CodeAnalysis.Scripting.Hosting;
using Microsoft.DotNet.Interactive;
using Microsoft.DotNet.Interactive.CSharp;
using Microsoft.DotNet.Interactive.Commands;
using Microsoft.DotNet.Interactive.Events;
using Microsoft.DotNet.Interactive.Formatting;
using SplitBatch.Kernel.Cells;

namespace SplitBatch.Kernel.Engine;

/// <summary>
/// The cells that later cells are compiled on. The engine keeps every cell that ever ran, with all that the compiler looked up for it.
/// Here a cell is let go to which no later cell can refer: because it made nothing, or because the next makes again all that it made. A
/// kernel is then no larger after a thousand runs of a cell than after the first.
/// </summary>
/// <param name="kernel">The engine.</param>
/// <param name="findPackaged">Finds the assembly of a package by its name.</param>
internal sealed class CellChain(CSharpKernel kernel, Func<AssemblyName, Assembly?> findPackaged) : IDisposable
{
    private readonly InteractiveAssemblyLoader files = new();
    private readonly HashSet<AssemblyIdentity> known = [];
    private Link? last;

    /// <summary>Runs a cell and tells what became of it, as the engine would.</summary>
    public async Task RunAsync(SubmitCode command, KernelInvocationContext context)
    {
        try
        {
            var (state, hasValue) = await RunAsync(command.Code, context.CancellationToken).ConfigureAwait(true);
            await using var owned = new Owned(state, RunningCell.Current!.Owned);
            if (context.CancellationToken.IsCancellationRequested) context.Fail(command, message: "Command cancelled");
            else if (state.Exception is { } error) context.Fail(command, error, error.Message); // Its whole text can be megabytes.
            else if (hasValue) context.Publish(new ReturnValueProduced(state.ReturnValue, command, ValueFormat.Forms(state.ReturnValue)));
        }
        catch (CompilationErrorException error)
        {
            context.Fail(command, new CodeSubmissionCompilationErrorException(error), error.Message);
        }
    }

    /// <inheritdoc/>
    public void Dispose() => files.Dispose();

    private async Task<(ScriptState State, bool HasValue)> RunAsync(string code, CancellationToken cancellation)
    {
        // The engine itself runs a line of code when it is given a value from outside.
        if (!ReferenceEquals(kernel.ScriptState, last?.State)) last = new Link(kernel.ScriptState, CellMakes.Lasting, null);
        var before = last is { Under: { } under } && last.Makes.IsMadeAgainBy(code) ? under : last;
        var options = EngineParts.Options(kernel);
        var script = before is null ? CSharpScript.Create<object>(code, options) : before.State.Script.ContinueWith<object>(code, options);
        var shared = CellAssembly.Load(script, files, findPackaged, cancellation);
        AddFiles(script.GetCompilation());

        // What a library builds on a cell's types, a proxy for one, must be able to go with them.
        using var scope = AssemblyLoadContext.EnterContextualReflection(EngineParts.Executor(script).Method.Module.Assembly);
        ScriptState state = before is null
            ? await script.RunAsync(null, null, cancellation).ConfigureAwait(true)
            : await script.RunFromAsync(before.State, _ => true, cancellation).ConfigureAwait(true);
        var makes = shared ? CellMakes.Lasting : CellMakes.Of(script);
        if (!RunningCell.Current!.TryKeep(Keep)) throw new OperationCanceledException();
        return (state, EngineParts.HasValue(script));

        void Keep()
        {
            if (ReferenceEquals(makes, CellMakes.Nothing) && before is not null) return;
            last = new Link(state, makes, before is null ? null : before with { Under = null });
            EngineParts.Close(state);
            EngineParts.SetState(kernel, state);
        }
    }

    /// <summary>Lets cells find the assemblies that are known by a file only.</summary>
    private void AddFiles(Compilation compilation)
    {
        foreach (var assembly in compilation.Assembly.Modules.SelectMany(m => m.ReferencedAssemblySymbols)
            .Where(a => known.Add(a.Identity)))
        {
            if (compilation.GetMetadataReference(assembly) is PortableExecutableReference { FilePath: { } file })
                files.RegisterDependency(assembly.Identity, file);
        }
    }

    /// <summary>What a cell wants to be disposed of at its end, once its value was shown: the last first.</summary>
    private sealed class Owned(ScriptState state, IReadOnlyList<string> names) : IAsyncDisposable
    {
        public async ValueTask DisposeAsync()
        {
            foreach (var name in names.Reverse())
            {
                var value = state.GetVariable(name)?.Value;
                if (value is IAsyncDisposable later) await later.DisposeAsync().ConfigureAwait(true);
                else (value as IDisposable)?.Dispose();
            }
        }
    }

    /// <summary>A cell that is kept.</summary>
    /// <param name="State">What the engine has run, up to and with this cell.</param>
    /// <param name="Makes">What it made.</param>
    /// <param name="Under">The cell before it; not known of any but the last.</param>
    private sealed record Link(ScriptState State, CellMakes Makes, Link? Under);
}
