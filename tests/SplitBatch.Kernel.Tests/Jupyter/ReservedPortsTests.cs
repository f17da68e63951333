using System.Net;
using System.Net.Sockets;

namespace SplitBatch.Kernel.Jupyter;

public class ReservedPortsTests
{
    [Fact]
    public async Task A_port_that_is_taken_for_a_moment_is_waited_for()
    {
        var connection = SocketClient.FreePorts();
        var other = new TcpListener(IPAddress.Loopback, connection.StdinPort);
        other.Start();
        var waiting = Task.Run(() => new ReservedPorts(connection).Dispose());
        await Task.Delay(300);
        Assert.False(waiting.IsCompleted);
        other.Dispose();
        await waiting.WaitAsync(TimeSpan.FromMinutes(1));
    }

    [Fact]
    public void No_other_socket_gets_a_port_that_is_held()
    {
        var connection = SocketClient.FreePorts();
        using var held = new ReservedPorts(connection);
        using var other = new Socket(AddressFamily.InterNetwork, SocketType.Stream, ProtocolType.Tcp) { ExclusiveAddressUse = true };
        Assert.Throws<SocketException>(() => other.Bind(new IPEndPoint(IPAddress.Loopback, connection.ShellPort)));
    }
}
