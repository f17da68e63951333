using NetMQ;
using NetMQ.Sockets;
using SplitBatch.Kernel.Jupyter.Wire;

namespace SplitBatch.Kernel.Jupyter;

/// <summary>
/// The kernel's five sockets. One thread owns them all and does nothing but move frames, so a running cell never delays the heartbeat
/// or an interrupt. Messages that cannot be read are dropped with a line in the log.
/// </summary>
public sealed class KernelSockets : IOutbox, IDisposable
{
    private readonly WireFormat _format;
    private readonly KernelLog _log;
    private readonly Action<JupyterChannel, JupyterMessage> _received;
    private readonly RouterSocket _shell;
    private readonly RouterSocket _control;
    private readonly RouterSocket _stdin;
    private readonly PublisherSocket _iopub;
    private readonly RouterSocket _heartbeat;
    private readonly NetMQQueue<OutgoingMessage> _outgoing;
    private readonly NetMQPoller _poller;

    /// <summary>Binds the five sockets. <paramref name="received"/> is called on the sockets' thread and must not wait.</summary>
    /// <exception cref="IOException">A port is taken, and stayed so.</exception>
    public KernelSockets(ConnectionFile connection, KernelLog log, Action<JupyterChannel, JupyterMessage> received)
    {
        _format = new WireFormat(new MessageSigner(connection.Key));
        _log = log;
        _received = received;
        if (connection.Key.Length == 0)
            log.Write("the connection file has no key: whoever reaches the ports of this kernel can run code in it");

        // Each socket below makes connections of its own, within this process, on ports that the system chooses: they must not be ours.
        using var ports = new ReservedPorts(connection);
        (_shell, _control, _stdin, _iopub, _heartbeat) = (new(), new(), new(), new(), new());
        _outgoing = new();
        _poller = [];
        ports.Bind(_shell, connection.ShellPort);
        ports.Bind(_control, connection.ControlPort);
        ports.Bind(_stdin, connection.StdinPort);
        ports.Bind(_iopub, connection.IOPubPort);
        ports.Bind(_heartbeat, connection.HbPort);

        _shell.ReceiveReady += (_, _) => Receive(_shell, JupyterChannel.Shell);
        _control.ReceiveReady += (_, _) => Receive(_control, JupyterChannel.Control);
        _stdin.ReceiveReady += (_, _) => Receive(_stdin, JupyterChannel.Stdin);
        _heartbeat.ReceiveReady += (_, _) => Echo();
        _outgoing.ReceiveReady += (_, _) => SendAll();
        foreach (var socket in new[] { _shell, _control, _stdin, _heartbeat }) _poller.Add(socket);
        _poller.Add(_outgoing);
    }

    /// <summary>Starts the sockets' thread.</summary>
    public void Start() => _poller.RunAsync("Jupyter sockets", true);

    /// <inheritdoc/>
    public void Send(OutgoingMessage message) => _outgoing.Enqueue(message);

    /// <summary>Sends what is still queued, and closes the sockets.</summary>
    public void Dispose()
    {
        if (_poller.IsRunning)
        {
            _poller.Stop();
        }

        SendAll();
        _poller.Dispose();
        _outgoing.Dispose();
        _shell.Dispose();
        _control.Dispose();
        _stdin.Dispose();
        _iopub.Dispose();
        _heartbeat.Dispose();
    }

    private void Receive(RouterSocket socket, JupyterChannel channel)
    {
        for (var turn = 0; turn < 100; turn++)
        {
            List<byte[]> frames = [];
            if (!socket.TryReceiveMultipartBytes(ref frames))
            {
                return;
            }

            if (_format.TryRead(frames, out var message, out var fault))
            {
                _received(channel, message);
            }
            else
            {
                _log.Write($"a message on {channel} was dropped: {fault}");
            }
        }
    }

    private void Echo()
    {
        List<byte[]> frames = [];
        while (_heartbeat.TryReceiveMultipartBytes(ref frames))
        {
            _heartbeat.TrySendMultipartBytes(frames);
        }
    }

    private void SendAll()
    {
        while (_outgoing.TryDequeue(out var message, TimeSpan.Zero))
        {
            var socket = message.Channel switch
            {
                JupyterChannel.Shell => (NetMQSocket)_shell,
                JupyterChannel.Control => _control,
                JupyterChannel.Stdin => _stdin,
                _ => _iopub,
            };
            socket.TrySendMultipartBytes(_format.Write(message.Route, message.Header, message.ParentHeader, message.Content));
        }
    }
}
