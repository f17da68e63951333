using System.Reflection;
using Microsoft.DotNet.Interactive;
using Microsoft.DotNet.Interactive.CSharp;
using Microsoft.DotNet.Interactive.Commands;
using Microsoft.DotNet.Interactive.Events;
using SplitBatch.Kernel.Cells;

namespace SplitBatch.Kernel.Engine;

/// <summary>The C# kernel of .NET Interactive, with its cells run by <see cref="CellChain"/> in its place.</summary>
internal sealed class CSharpEngine : ICellEngine
{
    private const string Name = "csharp";

    private readonly CompositeKernel kernel = [];
    private readonly CSharpKernel csharp = new CSharpKernel(Name).UseWho().UseValueSharing();
    private readonly Func<Func<Task>, Task> onThread;
    private readonly CellChain cells;
    private readonly CellHelp help;

    /// <summary>Makes an engine that has run nothing yet.</summary>
    /// <param name="onThread">Runs a cell's code on a thread of its own, and ends as that does.</param>
    /// <param name="findPackaged">Finds the assembly of a package by its name.</param>
    public CSharpEngine(Func<Func<Task>, Task> onThread, Func<AssemblyName, Assembly?> findPackaged)
    {
        this.onThread = onThread;
        ref var options = ref EngineParts.Options(csharp);
        options = options.WithEmitDebugInformation(true).WithFileEncoding(System.Text.Encoding.UTF8).WithFilePath("cell");
        // An error says its line.
        MappedReferences.Attach(csharp, StartSetting.References);
        cells = new CellChain(csharp, findPackaged);
        help = new CellHelp(() => csharp.ScriptState?.Script);
        csharp.AddMiddleware(RunOnThreadAsync, nameof(CSharpEngine));
        kernel.Add(csharp);
        kernel.DefaultKernelName = Name;
        kernel.RegisterCommandHandler<RequestInput>(AnswerInputAsync);
    }

    /// <inheritdoc/>
    public async Task<CellOutcome> RunAsync(string code, RunningCell cell)
    {
        var command = new SubmitCode(code, Name);
        CommandFailed? failed = null;
        CellConsole.Install();
        using var subscription = kernel.KernelEvents.Subscribe(new CellEvents(cell, command, f => failed = f));
        try
        {
            await kernel.SendAsync(command, cell.Cancellation).ConfigureAwait(false);
        }
        catch (OperationCanceledException) when (cell.Cancellation.IsCancellationRequested)
        {
            return new CellOutcome(Finished: false);
        }

        if (failed is not null) return new CellOutcome(true, true, failed.Message, failed.Exception);
        MappedReferences.Settle(csharp);
        return new CellOutcome(true);
    }

    /// <inheritdoc/>
    public void AddReferences(IEnumerable<string> files) => MappedReferences.Add(csharp, files);

    /// <inheritdoc/>
    public Task<IReadOnlyList<Completion>> CompleteAsync(string code, int cursor, CancellationToken cancellation) =>
        help.CompleteAsync(code, cursor, cancellation);

    /// <inheritdoc/>
    public Task<string?> HoverAsync(string code, int cursor, CancellationToken cancellation) =>
        help.HoverAsync(code, cursor, cancellation);

    /// <inheritdoc/>
    public Task<IReadOnlyList<CallSignature>> SignaturesAsync(string code, int cursor, CancellationToken cancellation) =>
        help.SignaturesAsync(code, cursor, cancellation);

    /// <inheritdoc/>
    public void Dispose()
    {
        kernel.Dispose();
        cells.Dispose();
        help.Dispose();
    }

    private async Task RunOnThreadAsync(KernelCommand command, KernelInvocationContext context, KernelPipelineContinuation next)
    {
        if (command is not SubmitCode submit)
        {
            await next(command, context).ConfigureAwait(false);
            return;
        }

        // The engine puts its own console in place for every command; put back the one that follows the cell.
        CellConsole.Install();
        MappedReferences.Follow(csharp);
        await onThread(() => cells.RunAsync(submit, context)).ConfigureAwait(false);
    }

    private static async Task AnswerInputAsync(RequestInput command, KernelInvocationContext context)
    {
        if (RunningCell.Current is not { } cell) throw new InvalidOperationException("No cell is running that could ask.");
        var answer = await cell.AskAsync(command.Prompt ?? "", command.InputTypeHint == "password").ConfigureAwait(false);
        context.Publish(new InputProduced(answer, command));
    }
}
