using System.Globalization;
using SplitBatch.Kernel.Jupyter.Wire;

namespace SplitBatch.Kernel.Jupyter;

/// <summary>A kernel on real sockets, with a scripted host behind it.</summary>
public sealed class KernelOnSockets : IAsyncDisposable
{
    private readonly StringWriter _log = new(CultureInfo.InvariantCulture);
    private readonly ScriptedHost _host = new();
    private readonly CancellationTokenSource _end = new();
    private readonly Task _running;

    public KernelOnSockets(string key = "secret")
    {
        Connection = SocketClient.FreePorts(key);
        _running = JupyterKernel.ServeAsync(Connection, _host, new KernelLog(_log), _end.Token);
    }

    public ConnectionFile Connection { get; }

    public int[] Ports => [Connection.ShellPort, Connection.ControlPort, Connection.StdinPort, Connection.IOPubPort, Connection.HbPort];

    public void WaitForLog(string text)
    {
        var until = DateTime.UtcNow.AddSeconds(10);
        while (!_log.ToString().Contains(text, StringComparison.Ordinal) && DateTime.UtcNow < until)
        {
            Thread.Sleep(20);
        }

        Assert.Contains(text, _log.ToString(), StringComparison.Ordinal);
    }

    public async ValueTask DisposeAsync()
    {
        await _end.CancelAsync();
        await _running;
        _end.Dispose();
        await _host.DisposeAsync();
        await _log.DisposeAsync();
    }
}
