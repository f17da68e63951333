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
}
