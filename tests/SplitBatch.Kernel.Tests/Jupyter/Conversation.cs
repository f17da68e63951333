using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using System.Threading.Channels;
using SplitBatch.Kernel.Jupyter.Wire;

namespace SplitBatch.Kernel.Jupyter;

/// <summary>Talks to a kernel in memory: no socket, no signature, every message in the order sent.</summary>
public sealed class Conversation : IOutbox, IAsyncDisposable
{
    private readonly Channel<OutgoingMessage> _heard = Channel.CreateUnbounded<OutgoingMessage>();
    private readonly StringWriter _log = new(CultureInfo.InvariantCulture);
    private readonly ScriptedHost _host = new();
    private readonly JupyterKernel _kernel;
    private readonly Task _running;

    public Conversation()
    {
        _kernel = new JupyterKernel(_host, this, new KernelLog(_log));
        _running = _kernel.RunAsync(CancellationToken.None);
    }

    public string Log => _log.ToString();

    public Task Running => _running;

    public void Send(OutgoingMessage message) => _heard.Writer.TryWrite(message);

    public void Say(JupyterChannel channel, string type, string content, string id, string client = "a")
    {
        var header = new MessageHeader(id, "client", "tester", "2026-01-02T03:04:05Z", type, "5.3");
        var json = Encoding.UTF8.GetBytes($$"""{"msg_id":"{{id}}","msg_type":"{{type}}","session":"client"}""");
        _kernel.Receive(channel, new JupyterMessage([Encoding.UTF8.GetBytes(client)], header, json, Encoding.UTF8.GetBytes(content)));
    }

    public async Task<Heard> HearAsync()
    {
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(20));
        return new Heard(await _heard.Reader.ReadAsync(patience.Token));
    }

    /// <summary>All that is said up to and with the idle of a request.</summary>
    public async Task<List<Heard>> HearUntilIdleAsync(string id)
    {
        List<Heard> all = [];
        do
        {
            all.Add(await HearAsync());
        }
        while (!(all[^1].Type == "status" && all[^1].Parent == id && (string?)all[^1].Content["execution_state"] == "idle"));
        return all;
    }

    public async ValueTask DisposeAsync()
    {
        _kernel.Stop();
        await _running;
        _kernel.Dispose();
        await _host.DisposeAsync();
        await _log.DisposeAsync();
    }
}

/// <summary>One message a client heard.</summary>
public sealed class Heard(OutgoingMessage message)
{
    public string Type => message.Header.MsgType;

    public JupyterChannel Channel => message.Channel;

    public string Route => Encoding.UTF8.GetString(message.Route[0]);

    public string? Parent => message.ParentHeader.Length == 0 ? null : (string?)JsonNode.Parse(message.ParentHeader)!["msg_id"];

    public JsonNode Content { get; } = JsonNode.Parse(message.Content)!;

    public override string ToString() =>
        $"< {Parent ?? "-"} {Channel.ToString().ToLowerInvariant()} {Type} {Content.ToJsonString(WireJson.Plain.Options)}";
}
