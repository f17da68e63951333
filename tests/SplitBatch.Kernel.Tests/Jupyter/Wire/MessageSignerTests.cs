using System.Text;
using Xunit;

namespace SplitBatch.Kernel.Jupyter.Wire;

public class MessageSignerTests
{
    /// <summary>Signed by jupyter_client itself; the script stands beside the file.</summary>
    public static TheoryData<string, string, string, string, string, string> JupyterClientSignatures()
    {
        var rows = new TheoryData<string, string, string, string, string, string>();
        foreach (var line in File.ReadLines(Path.Combine(AppContext.BaseDirectory, "reference", "jupyter", "signatures.csv")).Skip(2))
        {
            var f = line.Split(',');
            rows.Add(f[0], f[1], f[2], f[3], f[4], f[5]);
        }

        return rows;
    }

    [Theory]
    [MemberData(nameof(JupyterClientSignatures))]
    public void Signatures_agree_with_jupyter_client(string key, string header, string parent, string metadata, string content,
        string signature)
    {
        byte[][] f = [.. new[] { header, parent, metadata, content }.Select(Convert.FromHexString)];
        var signer = new MessageSigner(key);
        Assert.Equal(signature, Encoding.ASCII.GetString(signer.Sign(f[0], f[1], f[2], f[3])));
        Assert.True(signer.Verify(Encoding.ASCII.GetBytes(signature), f[0], f[1], f[2], f[3]));
    }

    [Theory]
    [InlineData("")]
    [InlineData("00")]
    [InlineData("0000000000000000000000000000000000000000000000000000000000000000")]
    public void A_wrong_signature_is_refused(string signature) =>
        Assert.False(new MessageSigner("key").Verify(Encoding.ASCII.GetBytes(signature), "{}"u8, "{}"u8, "{}"u8, "{}"u8));

    [Fact]
    public void A_signature_does_not_fit_a_changed_frame()
    {
        var signer = new MessageSigner("key");
        var signature = signer.Sign("{}"u8, "{}"u8, "{}"u8, "{\"code\":\"1\"}"u8);
        Assert.False(signer.Verify(signature, "{}"u8, "{}"u8, "{}"u8, "{\"code\":\"2\"}"u8));
    }

    [Fact]
    public void Without_a_key_nothing_is_signed_and_all_is_accepted()
    {
        var signer = new MessageSigner("");
        Assert.Empty(signer.Sign("{}"u8, "{}"u8, "{}"u8, "{}"u8));
        Assert.True(signer.Verify("anything"u8, "{}"u8, "{}"u8, "{}"u8, "{}"u8));
    }
}
