using Spectre.Console;
using SplitBatch.Trials.Seals;

namespace SplitBatch.Cli;

/// <summary>What a person is told about a seal.</summary>
internal static class SealReport
{
    /// <summary>The advice that goes with every fingerprint.</summary>
    public const string Publish = "Publish the whole of it before you pour (a club's chat, a commit, a post): only that proves to a "
        + "stranger when the plan was fixed.";

    /// <summary>What was sealed, and what to do with its fingerprint while that can still prove something.</summary>
    public static void Tell(this IAnsiConsole console, Seal seal)
    {
        var digits = seal.Fingerprint!.Spoken.Count(char.IsAsciiHexDigit);
        console.WriteLine($"Sealed: {seal.File}, {seal.At.UtcDateTime:yyyy-MM-dd HH:mm} UTC by this machine's clock.");
        console.WriteLine($"Its fingerprint: {seal.Fingerprint.Spoken}");
        if (seal.BallotsThen.Values.Any(ballots => ballots > 0))
        {
            console.WriteLine($"These are its first {digits} digits; sha256sum {seal.File} prints all of them.");
            return;
        }

        console.WriteLine(
            $"These are its first {digits} digits. All of them stand on the briefing, in the last line of serve, and in what sha256sum "
                + $"{seal.File} prints.");
        console.WriteLine(Publish);
    }

    public static ValidationResult FolderIsThere(string folder) =>
        Directory.Exists(folder) ? ValidationResult.Success() : ValidationResult.Error($"There is no folder {folder}.");
}
