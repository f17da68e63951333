using System.Net;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace SplitBatch.Kernel.Jupyter.Wire;

/// <summary>What a Jupyter client writes to tell a kernel where to listen and how to sign.</summary>
/// <param name="Transport">Only <c>tcp</c> is spoken.</param>
/// <param name="Ip">A loopback address; anything else is refused by <see cref="Check"/>.</param>
/// <param name="ShellPort">Requests.</param>
/// <param name="ControlPort">Interrupt and shutdown.</param>
/// <param name="StdinPort">Questions to the user.</param>
/// <param name="IOPubPort">Everything put out.</param>
/// <param name="HbPort">Echo, to see that the kernel lives.</param>
/// <param name="Key">The HMAC key; empty for unsigned messages.</param>
/// <param name="SignatureScheme">Only <c>hmac-sha256</c> is spoken.</param>
public sealed record ConnectionFile(
    string Transport,
    string Ip,
    [property: JsonPropertyName("shell_port")] int ShellPort,
    [property: JsonPropertyName("control_port")] int ControlPort,
    [property: JsonPropertyName("stdin_port")] int StdinPort,
    [property: JsonPropertyName("iopub_port")] int IOPubPort,
    [property: JsonPropertyName("hb_port")] int HbPort,
    string Key,
    [property: JsonPropertyName("signature_scheme")] string SignatureScheme = "hmac-sha256")
{
    /// <summary>Reads and checks a connection file.</summary>
    /// <exception cref="InvalidDataException">The file is not a connection file, or asks for what this kernel does not do.</exception>
    public static ConnectionFile Read(string path)
    {
        try
        {
            return Parse(File.ReadAllText(path));
        }
        catch (InvalidDataException e)
        {
            throw new InvalidDataException($"{path}: {e.Message}", e);
        }
    }

    /// <summary>Reads and checks the text of a connection file.</summary>
    /// <exception cref="InvalidDataException">The text is not a connection file, or asks for what this kernel does not do.</exception>
    public static ConnectionFile Parse(string json)
    {
        ConnectionFile? file;
        try
        {
            file = JsonSerializer.Deserialize(json, WireJson.Plain.ConnectionFile);
        }
        catch (JsonException e)
        {
            throw new InvalidDataException("this is not a Jupyter connection file: " + e.Message, e);
        }

        return (file ?? throw new InvalidDataException("this is not a Jupyter connection file: it is empty")).Check();
    }

    /// <summary>The address a socket binds to.</summary>
    public string Endpoint(int port) => $"tcp://{Ip}:{port}";

    private ConnectionFile Check()
    {
        if (Transport is not "tcp")
        {
            throw new InvalidDataException($"transport is '{Transport}'; this kernel speaks 'tcp' only");
        }

        var ip = Ip is "localhost" ? "127.0.0.1" : Ip;
        if (!IPAddress.TryParse(ip, out var address) || !IPAddress.IsLoopback(address))
        {
            throw new InvalidDataException($"ip is '{Ip}'; this kernel listens on a loopback address only, such as 127.0.0.1");
        }

        if (!string.IsNullOrEmpty(Key) && SignatureScheme is not "hmac-sha256")
        {
            throw new InvalidDataException($"signature_scheme is '{SignatureScheme}'; this kernel signs with 'hmac-sha256' only");
        }

        (string Name, int Port)[] ports =
        [
            ("shell_port", ShellPort), ("control_port", ControlPort), ("stdin_port", StdinPort), ("iopub_port", IOPubPort),
                ("hb_port", HbPort),
        ];
        foreach (var (name, port) in ports)
        {
            if (port is < 1 or > 65535)
            {
                throw new InvalidDataException($"{name} is {port}; a port from 1 to 65535 is accepted");
            }
        }

        return this with { Ip = ip, Key = Key ?? "" };
    }
}
