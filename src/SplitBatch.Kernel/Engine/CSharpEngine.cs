using Microsoft.CodeAnalysis.Text;
using Microsoft.DotNet.Interactive;
using Microsoft.DotNet.Interactive.CSharp;
using Microsoft.DotNet.Interactive.Commands;
using Microsoft.DotNet.Interactive.Events;
using SplitBatch.Kernel.Cells;
using LinePosition = Microsoft.CodeAnalysis.Text.LinePosition;

namespace SplitBatch.Kernel.Engine;

/// <summary>The C# kernel of .NET Interactive, with its cells run by <see cref="CellChain"/> in its place.</summary>
internal sealed class CSharpEngine : ICellEngine
{
    private const string Name = "csharp";

    private readonly CompositeKernel kernel = [];
    private readonly CSharpKernel csharp = new CSharpKernel(Name).UseWho().UseValueSharing();
    private readonly Func<Func<Task>, Task> onThread;
    private readonly CellChain cells;

    /// <summary>Makes an engine that has run nothing yet.</summary>
    /// <param name="onThread">Runs a cell's code on a thread of its own, and ends as that does.</param>
    public CSharpEngine(Func<Func<Task>, Task> onThread)
    {
        this.onThread = onThread;
        ref var options = ref EngineParts.Options(csharp);
        options = options.WithEmitDebugInformation(true).WithFileEncoding(System.Text.Encoding.UTF8).WithFilePath("cell");
        // An error says its line.
        MappedReferences.Attach(csharp, StartSetting.References);
        cells = new CellChain(csharp);
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
    public void AddReferences(IEnumerable<string> files) => csharp.AddAssemblyReferences(files);

    /// <inheritdoc/>
    public async Task<IReadOnlyList<Completion>> CompleteAsync(string code, LinePosition cursor, CancellationToken cancellation)
    {
        var events = await AskAsync(new RequestCompletions(code, At(cursor), Name), cancellation).ConfigureAwait(false);
        return [.. events.OfType<CompletionsProduced>().SelectMany(c => c.Completions)
            .Select(c => new Completion(c.InsertText ?? c.DisplayText, c.Kind))];
    }

    /// <inheritdoc/>
    public async Task<string?> HoverAsync(string code, LinePosition cursor, CancellationToken cancellation)
    {
        var events = await AskAsync(new RequestHoverText(code, At(cursor), Name), cancellation).ConfigureAwait(false);
        return events.OfType<HoverTextProduced>().SelectMany(h => h.Content).FirstOrDefault()?.Value;
    }

    /// <inheritdoc/>
    public async Task<IReadOnlyList<CallSignature>> SignaturesAsync(string code, LinePosition cursor, CancellationToken cancellation)
    {
        var events = await AskAsync(new RequestSignatureHelp(code, At(cursor), Name), cancellation).ConfigureAwait(false);
        return [.. events.OfType<SignatureHelpProduced>().Take(1).SelectMany(h => h.Signatures).Select(s => new CallSignature(
            s.Label,
            s.Documentation?.Value ?? "",
            [.. s.Parameters.Select(p => (p.Label, p.Documentation?.Value ?? ""))]))];
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        kernel.Dispose();
        cells.Dispose();
    }

    private static Microsoft.DotNet.Interactive.LinePosition At(LinePosition cursor) => new(cursor.Line, cursor.Character);

    private async Task<IEnumerable<KernelEvent>> AskAsync(KernelCommand command, CancellationToken cancellation)
    {
        await cells.CatchUpAsync().ConfigureAwait(false);
        return (await kernel.SendAsync(command, cancellation).ConfigureAwait(false)).Events;
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
