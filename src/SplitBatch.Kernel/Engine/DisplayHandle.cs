using SplitBatch.Kernel.Cells;

namespace SplitBatch.Kernel.Engine;

/// <summary>A value shown in a notebook, which can be replaced where it stands.</summary>
public sealed class DisplayHandle
{
    private readonly RunningCell? cell;
    private readonly string[] mimeTypes;

    private DisplayHandle(RunningCell? cell, string[] mimeTypes)
    {
        this.cell = cell;
        this.mimeTypes = mimeTypes;
    }

    /// <summary>The id under which the front end knows the value.</summary>
    public string DisplayId { get; } = Guid.NewGuid().ToString("N");

    /// <summary>Shows another value in this one's place, from the same cell or a later one.</summary>
    public void Update(object? value) =>
        (RunningCell.Current ?? cell)?.Publish(new DisplayUpdate(ValueFormat.Bundle(value, mimeTypes), DisplayId));

    /// <summary>Shows a value; outside a cell it is written to the console.</summary>
    internal static DisplayHandle Show(object? value, string[] mimeTypes)
    {
        var handle = new DisplayHandle(RunningCell.Current, mimeTypes);
        var data = ValueFormat.Bundle(value, mimeTypes);
        if (handle.cell is { } cell) cell.Publish(new DisplayOutput(data, handle.DisplayId));
        else Console.WriteLine(data.Forms.GetValueOrDefault("text/plain") ?? data.Forms.Values.First());
        return handle;
    }
}
