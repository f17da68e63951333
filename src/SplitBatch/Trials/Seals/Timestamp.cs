using System.Formats.Asn1;
using System.Security.Cryptography;
using System.Security.Cryptography.Pkcs;
using System.Security.Cryptography.X509Certificates;
using SplitBatch.Trials.Files;

namespace SplitBatch.Trials.Seals;

/// <summary>
/// What a trusted clock says about a seal: an RFC 3161 reply that somebody got elsewhere and put beside it as <c>seal-1.tsr</c>.
/// </summary>
/// <param name="File">The reply's file.</param>
/// <param name="Says">What it says and what that is worth, as a sentence.</param>
/// <param name="At">When the clock saw the seal; null where the reply cannot be read, or is of another file.</param>
/// <param name="Verified">Whether its signature is good by a certificate that lies beside it or came within it.</param>
/// <seealso href="https://www.rfc-editor.org/rfc/rfc3161">RFC 3161, Time-Stamp Protocol</seealso>
public sealed record Timestamp(string File, string Says, DateTimeOffset? At, bool Verified)
{
    private static readonly string[] Certificates = ["*.pem", "*.crt", "*.cer"];

    /// <summary>The reply that lies beside a seal; null where there is none.</summary>
    internal static Timestamp? Of(Seal seal, TrialFolder folder)
    {
        var file = Path.ChangeExtension(seal.File, ".tsr");
        return folder.Holds(file)
            ? Read(file, System.IO.File.ReadAllBytes(folder.PathOf(file)), System.IO.File.ReadAllBytes(folder.PathOf(seal.File)),
                seal.File, AtHand(folder))
            : null;
    }

    /// <summary>Reads a reply and checks it against the bytes of the seal.</summary>
    /// <param name="file">The reply's name.</param>
    /// <param name="reply">Its bytes.</param>
    /// <param name="data">The seal's bytes.</param>
    /// <param name="sealFile">The seal's name.</param>
    /// <param name="atHand">Certificates that somebody put beside it.</param>
    internal static Timestamp Read(string file, byte[] reply, byte[] data, string sealFile, X509Certificate2Collection atHand)
    {
        if (Token(reply) is not { } token) return new(file, $"{file} is no time-stamp reply that can be read (RFC 3161).", null, false);
        var at = token.TokenInfo.Timestamp;
        if (!token.VerifySignatureForData(data, out var signer, atHand))
        {
            // The signature fails for want of a certificate, or because the reply is of other bytes; which of the two is told apart.
            return Covers(token, data)
                ? new(file, $"{file} says that {sealFile} was there at {SealText.Moment(at)}; its signature could not be checked, because "
                    + $"no certificate of its signer is at hand.", at, false)
                : new(file, $"{file} belongs to another file than {sealFile}, so it proves nothing about it.", null, false);
        }

        var beside = atHand.Any(certificate => certificate.RawData.AsSpan().SequenceEqual(signer.RawData));
        return new(file, $"{file} says that {sealFile} was there at {SealText.Moment(at)}, and its signature is good by the certificate "
            + $"of {signer.GetNameInfo(X509NameType.SimpleName, false)}, which {(beside ? "lies beside it" : "came within it")}. Whether "
            + $"that signer is to be trusted is for the reader to say.", at, true);
    }

    /// <summary>The sentence.</summary>
    public override string ToString() => Says;

    private static Rfc3161TimestampToken? Token(byte[] reply)
    {
        if (Rfc3161TimestampToken.TryDecode(reply, out var token, out _)) return token;
        try
        {
            // TimeStampResp ::= SEQUENCE { status PKIStatusInfo, timeStampToken TimeStampToken OPTIONAL }
            var response = new AsnReader(reply, AsnEncodingRules.BER).ReadSequence();
            response.ReadEncodedValue();
            return response.HasData && Rfc3161TimestampToken.TryDecode(response.ReadEncodedValue(), out token, out _) ? token : null;
        }
        catch (Exception error) when (error is AsnContentException or CryptographicException)
        {
            return null;
        }
    }

    private static bool Covers(Rfc3161TimestampToken token, byte[] data) =>
        token.TokenInfo.HashAlgorithmId.FriendlyName is { } name
        && CryptographicOperations.HashData(new HashAlgorithmName(name.ToUpperInvariant()), data).AsSpan()
            .SequenceEqual(token.TokenInfo.GetMessageHash().Span);

    private static X509Certificate2Collection AtHand(TrialFolder folder)
    {
        var found = new X509Certificate2Collection();
        foreach (var file in Certificates.SelectMany(pattern => folder.Names(pattern)))
        {
            try
            {
                found.Add(X509CertificateLoader.LoadCertificateFromFile(folder.PathOf(file)));
            }
            catch (CryptographicException)
            {
                // A file that is no certificate helps nobody, and harms nobody either.
            }
        }

        return found;
    }
}
