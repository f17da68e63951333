using System.Text;

namespace SplitBatch.Kernel.Cells;

/// <summary>
/// The console as cells see it: what a cell writes goes to that cell, and what anybody else writes goes where the
/// process's console went before.
/// </summary>
/// <remarks>Process-wide: <see cref="Install"/> is called by every kernel before its first cell and works once.</remarks>
internal static class CellConsole
{
    private static readonly Lock Gate = new();
    private static TextWriter? output;
    private static TextWriter? error;
    private static TextReader? input;

    /// <summary>Puts the console in place, again if something replaced it.</summary>
    public static void Install()
    {
        lock (Gate)
        {
            output ??= new Writer(false, Console.Out);
            error ??= new Writer(true, Console.Error);
            if (input is null) Console.SetIn(input = new Reader());
            Console.SetOut(output);
            Console.SetError(error);
        }
    }

    private sealed class Writer(bool isError, TextWriter outside) : TextWriter
    {
        public override Encoding Encoding => Encoding.Unicode;

        public override void Write(char value) => Write([value]);

        public override void Write(char[] buffer, int index, int count) => Write(buffer.AsSpan(index, count));

        public override void Write(string? value) => Write(value.AsSpan());

        public override void Write(ReadOnlySpan<char> buffer)
        {
            if (RunningCell.Current is { } cell) cell.Write(isError, buffer);
            else outside.Write(buffer);
        }

        public override void WriteLine(string? value) => Write(value + NewLine);

        public override void Flush()
        {
            if (RunningCell.Current is null) outside.Flush();
        }
    }

    private sealed class Reader : TextReader
    {
        private readonly Queue<char> pending = [];

        public override int Peek() => Fill() ? pending.Peek() : -1;

        public override int Read() => Fill() ? pending.Dequeue() : -1;

        public override string? ReadLine()
        {
            if (pending.Count == 0) return Ask();
            var rest = new string([.. pending]).TrimEnd('\n');
            pending.Clear();
            return rest;
        }

        private bool Fill()
        {
            if (pending.Count > 0) return true;
            if (Ask() is not { } line) return false;
            foreach (var c in line) pending.Enqueue(c);
            pending.Enqueue('\n');
            return true;
        }

        private static string? Ask() =>
            RunningCell.Current is { } cell ? Task.Run(() => cell.AskAsync("", password: false)).GetAwaiter().GetResult() : null;
    }
}
