using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace SplitBatch.Kernel.Jupyter.Wire;

/// <summary>Reads and writes message contents without reflection, which keeps the kernel's start short.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    NumberHandling = JsonNumberHandling.AllowReadingFromString)]
[JsonSerializable(typeof(ConnectionFile))]
[JsonSerializable(typeof(MessageHeader))]
[JsonSerializable(typeof(ClearOutputContent))]
[JsonSerializable(typeof(CommCloseContent))]
[JsonSerializable(typeof(CommInfoReply))]
[JsonSerializable(typeof(CommOpenContent))]
[JsonSerializable(typeof(CompleteReply))]
[JsonSerializable(typeof(CompleteRequest))]
[JsonSerializable(typeof(DisplayDataContent))]
[JsonSerializable(typeof(ErrorContent))]
[JsonSerializable(typeof(ExecuteErrorReply))]
[JsonSerializable(typeof(ExecuteAbortedReply))]
[JsonSerializable(typeof(ExecuteInputContent))]
[JsonSerializable(typeof(ExecuteReply))]
[JsonSerializable(typeof(ExecuteRequest))]
[JsonSerializable(typeof(ExecuteResultContent))]
[JsonSerializable(typeof(HistoryReply))]
[JsonSerializable(typeof(HistoryRequest))]
[JsonSerializable(typeof(InputReply))]
[JsonSerializable(typeof(InputRequest))]
[JsonSerializable(typeof(InspectReply))]
[JsonSerializable(typeof(InspectRequest))]
[JsonSerializable(typeof(InterruptReply))]
[JsonSerializable(typeof(IsCompleteReply))]
[JsonSerializable(typeof(IsCompleteRequest))]
[JsonSerializable(typeof(KernelInfoReply))]
[JsonSerializable(typeof(ReplyError))]
[JsonSerializable(typeof(ShutdownContent))]
[JsonSerializable(typeof(ShutdownReply))]
[JsonSerializable(typeof(StatusContent))]
[JsonSerializable(typeof(StreamText))]
public sealed partial class WireJson : JsonSerializerContext
{
    /// <summary>Escapes only what JSON itself needs; HTML stays half as long as with the default.</summary>
    public static WireJson Plain { get; } = new(new JsonSerializerOptions
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        NumberHandling = JsonNumberHandling.AllowReadingFromString,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    });
}
