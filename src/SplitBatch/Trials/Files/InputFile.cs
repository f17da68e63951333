using System.Security.Cryptography;

namespace SplitBatch.Trials.Files;

/// <summary>A file of the trial folder as it was read, so that a reader can check that nothing has changed since.</summary>
/// <param name="Name">Its name within the folder.</param>
/// <param name="Sha256">The SHA-256 of its bytes, in lower-case hexadecimal digits.</param>
public sealed record InputFile(string Name, string Sha256)
{
    /// <summary>Name and hash.</summary>
    public override string ToString() => $"{Name}: {Sha256}";

    internal static InputFile Of(TrialFolder folder, string name) =>
        new(name, Convert.ToHexStringLower(SHA256.HashData(Turn.ReadBytes(folder.PathOf(name)))));
}
