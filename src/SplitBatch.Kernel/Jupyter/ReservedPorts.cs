using System.Net;
using System.Net.Sockets;
using NetMQ;
using SplitBatch.Kernel.Jupyter.Wire;

namespace SplitBatch.Kernel.Jupyter;

/// <summary>
/// Holds the five ports of a connection file until the sockets take them over. A client chooses free ports and tells them; until the
/// kernel listens, any connection that is made on this machine may be given one of them, for a moment or for long.
/// </summary>
internal sealed class ReservedPorts : IDisposable
{
    /// <summary>So many messages wait for a client that does not read; what comes after is lost to it.</summary>
    private const int MostWaiting = 10_000;

    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(10);
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(50);

    private readonly ConnectionFile connection;
    private readonly Dictionary<int, Socket> held = [];

    /// <summary>Takes the ports, as soon as each is free.</summary>
    /// <exception cref="IOException">One is not free for a while.</exception>
    public ReservedPorts(ConnectionFile connection)
    {
        this.connection = connection;
        int[] ports = [connection.ShellPort, connection.ControlPort, connection.StdinPort, connection.IOPubPort, connection.HbPort];
        try
        {
            foreach (var port in ports) held[port] = Patiently(port, () => Hold(port));
        }
        catch (IOException)
        {
            Dispose();
            throw;
        }
    }

    /// <summary>Lets a socket listen on a port.</summary>
    /// <exception cref="IOException">It is not free for a while.</exception>
    public void Bind(NetMQSocket socket, int port)
    {
        socket.Options.Linger = TimeSpan.FromSeconds(1);
        socket.Options.SendHighWatermark = socket.Options.ReceiveHighWatermark = MostWaiting;
        if (held.Remove(port, out var holder)) holder.Dispose();
        Patiently(port, () =>
        {
            socket.Bind(connection.Endpoint(port));
            return true;
        });
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (var holder in held.Values) holder.Dispose();
        held.Clear();
    }

    private Socket Hold(int port)
    {
        var address = IPAddress.Parse(connection.Ip);
        var holder = new Socket(address.AddressFamily, SocketType.Stream, ProtocolType.Tcp);
        try
        {
            holder.Bind(new IPEndPoint(address, port));
            return holder;
        }
        catch (SocketException)
        {
            holder.Dispose();
            throw;
        }
    }

    private T Patiently<T>(int port, Func<T> attempt)
    {
        for (var end = DateTime.UtcNow + Patience; ;)
        {
            try
            {
                return attempt();
            }
            catch (Exception error) when (error is SocketException or NetMQException && DateTime.UtcNow < end)
            {
                Thread.Sleep(Pause);
            }
            catch (Exception error) when (error is SocketException or NetMQException)
            {
                throw new IOException($"The kernel cannot listen on port {port} of {connection.Ip}: {error.Message}", error);
            }
        }
    }
}
