using System.Net;
using System.Net.Sockets;
using System.Text;
using System.Text.Json.Nodes;
using NetMQ;
using NetMQ.Sockets;
using SplitBatch.Kernel.Jupyter.Wire;

namespace SplitBatch.Kernel.Jupyter;

/// <summary>A client on real sockets.</summary>
public sealed class SocketClient : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(20);

    private readonly WireFormat _format;
    private readonly DealerSocket _shell = new();
    private readonly DealerSocket _control = new();
    private readonly DealerSocket _heartbeat = new();
    private readonly SubscriberSocket _iopub = new();
    private readonly string _name = Guid.NewGuid().ToString("N");
    private int _sent;

    public SocketClient(ConnectionFile connection)
    {
        _format = new WireFormat(new MessageSigner(connection.Key));
        _shell.Connect(connection.Endpoint(connection.ShellPort));
        _control.Connect(connection.Endpoint(connection.ControlPort));
        _heartbeat.Connect(connection.Endpoint(connection.HbPort));
        _iopub.Options.ReceiveHighWatermark = 0;
        _iopub.Connect(connection.Endpoint(connection.IOPubPort));
        _iopub.SubscribeToAnyTopic();
    }

    /// <summary>
    /// Below the ports that the system gives to connections of its own, and each only once, so that nobody else takes one meanwhile.
    /// </summary>
    private static int _next = 20_000 + (5 * Random.Shared.Next(2_000));

    public static ConnectionFile FreePorts(string key = "secret")
    {
        int[] ports = [.. Enumerable.Range(0, 5).Select(_ => FreePort())];
        return new ConnectionFile("tcp", "127.0.0.1", ports[0], ports[1], ports[2], ports[3], ports[4], key);
    }

    private static int FreePort()
    {
        while (true)
        {
            var port = Interlocked.Increment(ref _next);
            try
            {
                using var listener = new TcpListener(IPAddress.Loopback, port);
                listener.Start();
                return port;
            }
            catch (SocketException)
            {
                // Taken: the next one.
            }
        }
    }

    public string Say(string type, string content, bool control = false)
    {
        var frames = Frames(type, content, out var id);
        (control ? _control : _shell).SendMultipartBytes(frames);
        return id;
    }

    /// <summary>The frames of a good message, for tests that spoil them.</summary>
    public IReadOnlyList<byte[]> Frames(string type, string content, out string id)
    {
        id = $"{_name}-{++_sent}";
        return _format.Write([], new MessageHeader(id, "client", "tester", "2026-01-02T03:04:05Z", type, "5.3"), [],
            Encoding.UTF8.GetBytes(content));
    }

    public void SayRaw(params IReadOnlyList<byte[]> frames) => _shell.SendMultipartBytes(frames);

    public (string Type, JsonNode Content, string? Parent) HearShell() => Read(_shell);

    public (string Type, JsonNode Content, string? Parent) HearControl() => Read(_control);

    public (string Type, JsonNode Content, string? Parent) HearIOPub() => Read(_iopub);

    public byte[] Echo(byte[] bytes)
    {
        _heartbeat.SendMultipartBytes([], bytes);
        List<byte[]> frames = [];
        return _heartbeat.TryReceiveMultipartBytes(Patience, ref frames) ? frames[^1] : throw new TimeoutException("no heartbeat");
    }

    public void Dispose()
    {
        _shell.Dispose();
        _control.Dispose();
        _heartbeat.Dispose();
        _iopub.Dispose();
    }

    private (string Type, JsonNode Content, string? Parent) Read(NetMQSocket socket)
    {
        List<byte[]> frames = [];
        if (!socket.TryReceiveMultipartBytes(Patience, ref frames))
        {
            throw new TimeoutException("the kernel did not answer");
        }

        Assert.True(_format.TryRead(frames, out var message, out var fault), fault);
        var parent = JsonNode.Parse(frames[frames.FindIndex(f => f.AsSpan().SequenceEqual("<IDS|MSG>"u8)) + 3]);
        return (message.Header.MsgType, JsonNode.Parse(message.Content)!, (string?)parent?["msg_id"]);
    }
}
