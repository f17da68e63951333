using SplitBatch.Trials.Files;
using System.Security.Cryptography.X509Certificates;

namespace SplitBatch.Trials.Seals;

/// <summary>
/// Replies made by OpenSSL's time-stamp authority (tests/reference/seal/timestamp.sh; its version stands beside it), which also found the
/// second of them good.
/// </summary>
public class TimestampTests
{
    private static readonly byte[] Data = Bytes("seal.txt");

    [Fact]
    public void A_reply_whose_certificate_lies_beside_it_is_checked()
    {
        var stamp = Timestamp.Read("seal-1.tsr", Bytes("without-certificate.tsr"), Data, "seal-1.json", [Authority()]);
        Assert.True(stamp.Verified);
        Assert.Matches("^seal-1.tsr says that seal-1.json was there at 2026-[0-9-]+ [0-9:]+ UTC, and its signature is good by the "
            + "certificate of An invented time authority, which lies beside it. Whether that signer is to be trusted is for the reader "
            + "to say.$", stamp.Says);
    }

    [Fact]
    public void A_certificate_within_the_reply_is_said_to_be_one()
    {
        var stamp = Timestamp.Read("seal-1.tsr", Bytes("with-certificate.tsr"), Data, "seal-1.json", []);
        Assert.True(stamp.Verified);
        Assert.Contains("which came within it", stamp.Says, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_certificate_it_is_shown_and_not_called_good()
    {
        var stamp = Timestamp.Read("seal-1.tsr", Bytes("without-certificate.tsr"), Data, "seal-1.json", []);
        Assert.False(stamp.Verified);
        Assert.Contains("could not be checked, because no certificate of its signer is at hand", stamp.Says, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("without-certificate.tsr")]
    [InlineData("with-certificate.tsr")]
    public void A_reply_for_other_bytes_proves_nothing(string reply)
    {
        var stamp = Timestamp.Read("seal-1.tsr", Bytes(reply), [.. Data, (byte)' '], "seal-1.json", [Authority()]);
        Assert.Equal((false, null), (stamp.Verified, stamp.At));
        Assert.Contains("belongs to another file than seal-1.json, so it proves nothing about it", stamp.Says, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_is_no_reply_is_said_to_be_none() =>
        Assert.Equal("seal-1.tsr is no time-stamp reply that can be read (RFC 3161).",
            Timestamp.Read("seal-1.tsr", Data, Data, "seal-1.json", []).Says);

    [Fact]
    public void A_reply_with_a_byte_changed_is_not_good()
    {
        var reply = Bytes("with-certificate.tsr");
        reply[^20] ^= 1;
        Assert.False(Timestamp.Read("seal-1.tsr", reply, Data, "seal-1.json", []).Verified);
    }

    private static byte[] Bytes(string file) => File.ReadAllBytes(Panel.Reference.PathOf(Path.Combine("..", "seal", file)));

    private static X509Certificate2 Authority() => X509CertificateLoader.LoadCertificate(Bytes("authority.pem"));
}
