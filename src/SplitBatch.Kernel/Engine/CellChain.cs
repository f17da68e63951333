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

namespace SplitBatch.Kernel.Engine;

/// <summary>
/// The cells that later cells are compiled on. The engine keeps every cell that ever ran, with all that the compiler looked up for it. Here
/// a cell is let go to which no later cell can refer: because it made nothing, or because the next makes again all that it made. A kernel
/// is then no larger after a thousand runs of a cell than after the first.
/// </summary>
internal sealed class CellChain(CSharpKernel kernel) : IDisposable
{
    private readonly HelpWorkspace help = new(kernel);
    private readonly InteractiveAssemblyLoader files = new();
    private readonly HashSet<AssemblyIdentity> known = [];
    private Link? last;

    /// <summary>Runs a cell and tells what became of it, as the engine would.</summary>
    public async Task RunAsync(SubmitCode command, KernelInvocationContext context)
    {
        try
        {
            var (state, hasValue) = await RunAsync(command.Code, context.CancellationToken).ConfigureAwait(true);
            if (context.CancellationToken.IsCancellationRequested) context.Fail(command, message: "Command cancelled");
            else if (state.Exception is { } error) context.Fail(command, error);
            else if (hasValue) context.Publish(new ReturnValueProduced(state.ReturnValue, command, Forms(state.ReturnValue)));
        }
        catch (CompilationErrorException error)
        {
            context.Fail(command, new CodeSubmissionCompilationErrorException(error), error.Message);
        }
    }

    /// <summary>Brings what completions are found in up to the last cell. Asked for before each.</summary>
    public Task CatchUpAsync() => help.CatchUpAsync(kernel.ScriptState?.Script);

    /// <inheritdoc/>
    public void Dispose()
    {
        help.Dispose();
        files.Dispose();
    }

    private async Task<(ScriptState State, bool HasValue)> RunAsync(string code, CancellationToken cancellation)
    {
        // The engine itself runs a line of code when it is given a value from outside.
        if (!ReferenceEquals(kernel.ScriptState, last?.State)) last = new Link(kernel.ScriptState, CellMakes.Lasting, null);
        var before = last is { Under: { } under } && last.Makes.IsMadeAgainBy(code) ? under : last;
        var options = EngineParts.Options(kernel);
        var script = before is null ? CSharpScript.Create<object>(code, options) : before.State.Script.ContinueWith<object>(code, options);
        var shared = CellAssembly.Load(script, files, cancellation);
        AddFiles(script.GetCompilation());

        // What a library builds on a cell's types, a proxy for one, must be able to go with them.
        using var scope = AssemblyLoadContext.EnterContextualReflection(EngineParts.Executor(script).Method.Module.Assembly);
        ScriptState state = before is null
            ? await script.RunAsync(null, null, cancellation).ConfigureAwait(true)
            : await script.RunFromAsync(before.State, _ => true, cancellation).ConfigureAwait(true);
        var makes = shared ? CellMakes.Lasting : CellMakes.Of(script);
        if (!ReferenceEquals(makes, CellMakes.Nothing) || before is null)
        {
            last = new Link(state, makes, before is null ? null : before with { Under = null });
            EngineParts.Close(state);
            EngineParts.SetState(kernel, state);
        }

        return (state, EngineParts.HasValue(script));
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

    private static IReadOnlyList<FormattedValue> Forms(object? value) => value switch
    {
        FormattedValue one => [one],
        IEnumerable<FormattedValue> many => [.. many],
        _ => FormattedValue.CreateManyFromObject(value),
    };

    /// <summary>A cell that is kept.</summary>
    /// <param name="State">What the engine has run, up to and with this cell.</param>
    /// <param name="Makes">What it made.</param>
    /// <param name="Under">The cell before it; not known of any but the last.</param>
    private sealed record Link(ScriptState State, CellMakes Makes, Link? Under);
}
