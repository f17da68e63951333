using System.Globalization;

namespace SplitBatch.Kernel.Jupyter.Wire;

/// <summary>
/// The kernel's own remarks, for whoever started it. Opened before the first cell: later, what is written to the console belongs to
/// the cell that runs.
/// </summary>
public sealed class KernelLog(TextWriter writer)
{
    private readonly Lock _lock = new();

    /// <summary>A log on the process's standard error.</summary>
    public static KernelLog OpenStandardError() => new(new StreamWriter(Console.OpenStandardError()) { AutoFlush = true });

    /// <summary>Writes one line. A reader that went away is no reason to stop.</summary>
    public void Write(string text)
    {
        lock (_lock)
        {
            try
            {
                writer.WriteLine(string.Create(CultureInfo.InvariantCulture, $"[splitbatch {DateTime.Now:HH:mm:ss}] {text}"));
            }
            catch (IOException)
            {
            }
        }
    }
}
