using Microsoft.DotNet.Interactive.Commands;
using Microsoft.DotNet.Interactive.Events;
using SplitBatch.Kernel.Cells;

namespace SplitBatch.Kernel.Engine;

/// <summary>Turns the engine's events into a cell's outputs.</summary>
internal sealed class CellEvents(RunningCell cell, SubmitCode command, Action<CommandFailed> onFailed) : IObserver<KernelEvent>
{
    private readonly HashSet<string> shown = [];

    public void OnNext(KernelEvent value)
    {
        if (!ReferenceEquals(Root(value.Command), command)) return;
        switch (value)
        {
            case ReturnValueProduced returned:
                if (returned.Value is not DisplayHandle && ValueFormat.Bundle(returned.FormattedValues) is { Forms.Count: > 0 } result)
                {
                    cell.Publish(new ValueOutput(result));
                }

                break;
            case DisplayedValueProduced displayed when ValueFormat.Bundle(displayed.FormattedValues) is { Forms.Count: > 0 } data:
                shown.Add(displayed.ValueId);
                cell.Publish(new DisplayOutput(data, displayed.ValueId));
                break;
            case DisplayedValueUpdated updated when ValueFormat.Bundle(updated.FormattedValues) is { Forms.Count: > 0 } data:
                // The engine's own Display extension answers with an id nobody has seen; a value shown late is better than one lost.
                cell.Publish(shown.Contains(updated.ValueId) ? new DisplayUpdate(data, updated.ValueId)
                    : new DisplayOutput(data, updated.ValueId));
                shown.Add(updated.ValueId);
                break;
            case StandardOutputValueProduced text:
                cell.Write(false, Text(text));
                break;
            case StandardErrorValueProduced text:
                cell.Write(true, Text(text));
                break;
            case ErrorProduced problem:
                cell.Write(true, problem.Message + "\n");
                break;
            case CommandFailed failed when ReferenceEquals(failed.Command, command):
                onFailed(failed);
                break;
        }
    }

    public void OnCompleted()
    {
    }

    public void OnError(Exception error)
    {
    }

    private static string Text(DisplayEvent e) => string.Concat(e.FormattedValues.Select(f => f.Value));

    private static KernelCommand? Root(KernelCommand? command)
    {
        while (command?.Parent is { } parent) command = parent;
        return command;
    }
}
