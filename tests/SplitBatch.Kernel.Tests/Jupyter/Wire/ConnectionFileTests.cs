using Xunit;

namespace SplitBatch.Kernel.Jupyter.Wire;

public class ConnectionFileTests
{
    private const string Good =
        """
        {"shell_port": 50001, "iopub_port": 50002, "stdin_port": 50003, "control_port": 50004, "hb_port": 50005,
         "ip": "127.0.0.1", "key": "k", "transport": "tcp", "signature_scheme": "hmac-sha256", "kernel_name": "splitbatch"}
        """;

    [Fact]
    public void A_file_as_jupyter_writes_it_is_read()
    {
        var file = ConnectionFile.Parse(Good);
        Assert.Equal((50001, 50002, 50003, 50004, 50005), (file.ShellPort, file.IOPubPort, file.StdinPort, file.ControlPort, file.HbPort));
        Assert.Equal("tcp://127.0.0.1:50001", file.Endpoint(file.ShellPort));
    }

    [Theory]
    [InlineData("127.0.0.1", "0.0.0.0", "loopback")]
    [InlineData("127.0.0.1", "*", "loopback")]
    [InlineData("127.0.0.1", "192.168.0.7", "loopback")]
    [InlineData("127.0.0.1", "::", "loopback")]
    [InlineData("tcp", "ipc", "tcp")]
    [InlineData("hmac-sha256", "hmac-md5", "hmac-sha256")]
    [InlineData("50003", "0", "stdin_port")]
    [InlineData("50003", "70000", "stdin_port")]
    public void What_this_kernel_does_not_do_is_refused_by_name(string accepted, string asked, string named)
    {
        var error =
            Assert.Throws<InvalidDataException>(() => ConnectionFile.Parse(Good.Replace(accepted, asked, StringComparison.Ordinal)));
        Assert.Contains(asked, error.Message, StringComparison.Ordinal);
        Assert.Contains(named, error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("null")]
    [InlineData("{\"shell_port\":")]
    public void Another_text_is_refused(string text) =>
        Assert.Contains("connection file", Assert.Throws<InvalidDataException>(() => ConnectionFile.Parse(text)).Message,
            StringComparison.Ordinal);
}
