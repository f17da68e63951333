using System.Net;
using System.Net.NetworkInformation;
using System.Net.Sockets;
using Xunit;

namespace SplitBatch.Kernel.Jupyter;

public class KernelSocketsTests
{
    [Fact]
    public async Task A_client_on_sockets_is_answered()
    {
        await using var kernel = new KernelOnSockets();
        using var client = new SocketClient(kernel.Connection);
        AssertLives(client);
        Assert.Equal([1, 2, 3], client.Echo([1, 2, 3]));
    }

    [Fact]
    public async Task Wrong_signatures_are_dropped_and_the_kernel_goes_on()
    {
        await using var kernel = new KernelOnSockets();
        using var client = new SocketClient(kernel.Connection);
        using var stranger = new SocketClient(kernel.Connection with { Key = "another" });
        stranger.Say("execute_request", """{"code":"say stolen"}""");
        stranger.Say("shutdown_request", """{"restart":false}""", control: true);
        AssertLives(client);
        kernel.WaitForLog("the signature does not fit");
    }

    [Fact]
    public async Task A_message_that_comes_again_is_refused()
    {
        await using var kernel = new KernelOnSockets();
        using var client = new SocketClient(kernel.Connection);
        var recorded = client.Frames("comm_info_request", "{}", out _);
        client.SayRaw(recorded);
        Assert.Equal("comm_info_reply", client.HearShell().Type);
        client.SayRaw(recorded);
        AssertLives(client);
        kernel.WaitForLog("it was received before");
    }

    [Fact]
    public async Task A_connection_without_a_key_is_warned_of()
    {
        await using var kernel = new KernelOnSockets(key: "");
        kernel.WaitForLog("has no key");
    }

    [Fact]
    public async Task Truncated_messages_and_unknown_types_are_dropped_and_the_kernel_goes_on()
    {
        await using var kernel = new KernelOnSockets();
        using var client = new SocketClient(kernel.Connection);
        var whole = client.Frames("comm_info_request", "{}", out _);
        for (var length = 1; length < whole.Count; length++)
        {
            client.SayRaw([.. whole.Take(length)]);
        }

        client.SayRaw([[]]);
        client.SayRaw([[.. Enumerable.Repeat((byte)0xff, 100_000)]]);
        client.Say("brew_request", "{}");
        client.Say("execute_request", "[]");
        var (type, content, _) = client.HearShell();
        Assert.Equal(("execute_reply", "error"), (type, (string?)content["status"]));
        AssertLives(client);
        kernel.WaitForLog("brew_request");
    }

    [Theory]
    [InlineData("GET / HTTP/1.1\r\nHost: x\r\n\r\n")]
    [InlineData("\u0001\u0002")]
    [InlineData("")]
    public async Task What_is_not_ZeroMQ_at_all_is_hung_up_on_and_the_kernel_goes_on(string bytes)
    {
        await using var kernel = new KernelOnSockets();
        foreach (var port in kernel.Ports)
        {
            using var tcp = new TcpClient();
            tcp.Connect(IPAddress.Loopback, port);
            tcp.GetStream().Write(System.Text.Encoding.Latin1.GetBytes(bytes));
        }

        using var client = new SocketClient(kernel.Connection);
        AssertLives(client);
    }

    [Fact]
    public async Task A_greeting_of_ZeroMQ_with_nonsense_behind_it_does_not_end_the_kernel()
    {
        await using var kernel = new KernelOnSockets();
        byte[] greeting = [0xff, 0, 0, 0, 0, 0, 0, 0, 1, 0x7f, 3, 0, .. "NULL"u8, .. new byte[48]];
        var random = new Random(7);
        for (var attempt = 0; attempt < 30; attempt++)
        {
            var nonsense = new byte[random.Next(1, 400)];
            random.NextBytes(nonsense);
            using var tcp = new TcpClient();
            tcp.Connect(IPAddress.Loopback, attempt % 2 == 0 ? kernel.Connection.ShellPort : kernel.Connection.IOPubPort);
            tcp.GetStream().Write(greeting);
            tcp.GetStream().Write(nonsense);
        }

        using var client = new SocketClient(kernel.Connection);
        AssertLives(client);
    }

    [Fact]
    public async Task Every_client_hears_what_any_client_runs()
    {
        await using var kernel = new KernelOnSockets();
        using var first = new SocketClient(kernel.Connection);
        using var second = new SocketClient(kernel.Connection);
        AssertLives(second);
        AssertLives(first);
        var id = first.Say("execute_request", """{"code":"value 5"}""");
        while (second.HearIOPub() is var heard && (heard.Parent, heard.Type) != (id, "execute_result"))
        {
        }
    }

    [Fact]
    public async Task The_sockets_listen_on_loopback_only()
    {
        await using var kernel = new KernelOnSockets();
        var listeners = IPGlobalProperties.GetIPGlobalProperties().GetActiveTcpListeners().Where(l => kernel.Ports.Contains(l.Port))
            .ToList();
        Assert.Equal(kernel.Ports.Order(), listeners.Select(l => l.Port).Order());
        Assert.All(listeners, l => Assert.Equal(IPAddress.Loopback, l.Address));
    }

    [Fact]
    public async Task A_flood_of_output_arrives_whole()
    {
        await using var kernel = new KernelOnSockets();
        using var client = new SocketClient(kernel.Connection);
        AssertLives(client);
        var code = string.Join("\\n", Enumerable.Range(0, 5000).Select(i => $"show d{i} text"));
        client.Say("execute_request", $$"""{"code":"{{code}}"}""");
        Assert.Equal("execute_reply", client.HearShell().Type);
        var shown = 0;
        while (client.HearIOPub() is var heard
            && !(heard.Type == "status" && (string?)heard.Content["execution_state"] == "idle" && shown > 0))
        {
            shown += heard.Type == "display_data" ? 1 : 0;
        }

        Assert.Equal(5000, shown);
    }

    /// <summary>Asks until the answer to a request of its own comes back, and drains iopub up to that request's idle.</summary>
    private static void AssertLives(SocketClient client)
    {
        var id = client.Say("kernel_info_request", "{}");
        while (client.HearShell().Parent != id)
        {
        }

        // A subscription takes a moment; what is asked until then is not heard on iopub.
        for (var attempt = 0; ; attempt++)
        {
            var control = client.Say("kernel_info_request", "{}", control: true);
            Assert.Equal("kernel_info_reply", client.HearControl().Type);
            Thread.Sleep(20);
            if (attempt > 10)
            {
                while (client.HearIOPub() is var heard
                    && !(heard.Parent == control && (string?)heard.Content["execution_state"] == "idle"))
                {
                }

                return;
            }
        }
    }
}
