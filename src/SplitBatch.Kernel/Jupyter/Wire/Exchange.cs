using System.Text.Json;
using System.Text.Json.Serialization.Metadata;

namespace SplitBatch.Kernel.Jupyter.Wire;

/// <summary>One request being served, and the ways to answer it. All it sends names the request as parent, however late.</summary>
public sealed class Exchange(JupyterSession session, JupyterChannel channel, JupyterMessage request)
{
    /// <summary>The request.</summary>
    public JupyterMessage Request { get; } = request;

    /// <summary>The request's content; an absent field has its default.</summary>
    /// <exception cref="JsonException">The content does not fit the message type.</exception>
    public T Content<T>(JsonTypeInfo<T> form) =>
        JsonSerializer.Deserialize(Request.Content, form) ?? throw new JsonException("the content is null");

    /// <summary>Answers the requester: <c>x_request</c> is answered with <c>x_reply</c>.</summary>
    public void Reply<T>(T content, JsonTypeInfo<T> form) =>
        session.Send(channel, Request, ReplyType(Request.Header.MsgType), content, form);

    /// <summary>Tells every client.</summary>
    public void Publish<T>(string type, T content, JsonTypeInfo<T> form) => session.Publish(Request, type, content, form);

    /// <summary>Puts a question to the requester's user.</summary>
    public void Ask(InputRequest question) =>
        session.Send(JupyterChannel.Stdin, Request, "input_request", question, WireJson.Plain.InputRequest);

    /// <summary>Tells every client that work on the request begins (<c>busy</c>) or has ended (<c>idle</c>).</summary>
    public void Status(string state) => Publish("status", new StatusContent(state), WireJson.Plain.StatusContent);

    private static string ReplyType(string requestType) =>
        (requestType.EndsWith("_request", StringComparison.Ordinal) ? requestType[..^"_request".Length] : requestType) + "_reply";
}
