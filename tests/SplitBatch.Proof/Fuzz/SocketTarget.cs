using SplitBatch.Kernel.Jupyter;

namespace SplitBatch.Proof.Fuzz;

/// <summary>
/// The Jupyter socket: spoilt frames and spoilt contents under good signatures; after each the kernel must still answer.
/// </summary>
internal sealed class SocketTarget : Target, IAsyncDisposable
{
    private static readonly string[] Types =
    [
        "execute_request", "complete_request", "inspect_request", "is_complete_request", "history_request", "kernel_info_request",
        "comm_info_request", "comm_open", "comm_msg", "comm_close",
        "input_reply", "debug_request", "interrupt_request", "no_such_request", "",
    ];

    private static readonly string[] Contents =
    [
        """{"code":"say 1","silent":false,"store_history":true,"user_expressions":{"a":"value"""
            + """ 1"},"allow_stdin":false,"stop_on_error":true}""",
        """{"code":"Tri","cursor_pos":3,"detail_level":0}""",
        """{"hist_access_type":"range","session":0,"start":0,"stop":9,"n":5,"pattern":"*","raw":true,"output":false,"unique":false}""",
        """{"comm_id":"c","target_name":"t","data":{}}""", """{"value":"x"}""", "{}",
    ];

    private readonly KernelOnSockets kernel = new();
    private readonly SocketClient client;

    public SocketTarget() => client = new SocketClient(kernel.Connection);

    public override string Name => "Jupyter socket";

    protected override string? Try(int seed)
    {
        var mutator = new Mutator(seed);
        byte[] content = System.Text.Encoding.UTF8.GetBytes(mutator.Of(Contents));
        if (mutator.Below(2) == 0)
        {
            // A good signature over spoilt content: JSON of the wrong shape.
            content = mutator.Spoil(content, () => "[1]"u8.ToArray());
            client.Say(mutator.Of(Types), System.Text.Encoding.UTF8.GetString(content));
        }
        else
        {
            List<byte[]> frames = [.. client.Frames(mutator.Of(Types), System.Text.Encoding.UTF8.GetString(content), out _)];
            int at = mutator.Below(frames.Count);
            switch (mutator.Below(5))
            {
                case 0: frames.RemoveAt(at); break;
                case 1: frames.Insert(at, frames[mutator.Below(frames.Count)]); break;
                case 2: frames.RemoveRange(at, frames.Count - at); break;
                default: frames[at] = mutator.Spoil(frames[at], () => frames[mutator.Below(frames.Count)]); break;
            }

            if (frames.Count > 0) client.SayRaw(frames);
        }

        string id = client.Say("kernel_info_request", "{}");
        for (int i = 0; i < 5; i++)
        {
            var (type, _, parent) = client.HearShell();
            if (parent == id) return type == "kernel_info_reply" ? null : $"{type} in answer to kernel_info_request";
        }

        return "no answer to kernel_info_request among five messages";
    }

    public async ValueTask DisposeAsync()
    {
        client.Dispose();
        await kernel.DisposeAsync();
    }
}
