using System.Diagnostics;
using System.Globalization;

namespace SplitBatch.Trials.Files;

/// <summary>The test assembly, started as a program that writes log rows.</summary>
internal sealed class LogWriter : IDisposable
{
    private readonly Process process;
    private readonly Task<List<string>> lines;
    private readonly TaskCompletionSource ready = new();
    private readonly TaskCompletionSource enough = new();
    private readonly int wanted;

    public LogWriter(string folder, string name, int first, int count, int pieceSize, int wanted = int.MaxValue,
        IReadOnlyList<string>? through = null)
    {
        this.wanted = wanted;
        string[] words = [.. through ?? [], "dotnet", typeof(LogWriter).Assembly.Location, WriterProgram.Word, folder, name, Text(first),
            Text(count), Text(pieceSize)];
        process = Process.Start(new ProcessStartInfo(words[0], words[1..])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            Environment = { ["DOTNET_TieredPGO"] = "0" },
        })!;
        lines = Task.Run(ReadAll);
    }

    /// <summary>Lets it write.</summary>
    public async Task Go()
    {
        await ready.Task.WaitAsync(TimeSpan.FromSeconds(120));
        await process.StandardInput.WriteLineAsync("go");
        await process.StandardInput.FlushAsync();
    }

    /// <summary>
    /// Waits for the wanted number of rows and a moment longer, kills it without a chance to tidy up, and returns the ids it had
    /// acknowledged.
    /// </summary>
    public async Task<List<string>> Kill(TimeSpan after)
    {
        await enough.Task.WaitAsync(TimeSpan.FromSeconds(120));
        await Task.Delay(after);
        process.Kill();
        return await End();
    }

    /// <summary>Waits until it ends and returns the ids it had acknowledged.</summary>
    public async Task<List<string>> End()
    {
        var acknowledged = await lines.WaitAsync(TimeSpan.FromSeconds(120));
        await process.WaitForExitAsync().WaitAsync(TimeSpan.FromSeconds(120));
        return acknowledged;
    }

    public int ExitCode => process.ExitCode;

    public void Dispose()
    {
        if (!process.HasExited) process.Kill();
        process.Dispose();
    }

    private async Task<List<string>> ReadAll()
    {
        var acknowledged = new List<string>();
        while (await process.StandardOutput.ReadLineAsync() is { } line)
        {
            if (line == "ready") ready.SetResult();
            else acknowledged.Add(line);
            if (acknowledged.Count == wanted) enough.TrySetResult();
        }

        return acknowledged;
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
