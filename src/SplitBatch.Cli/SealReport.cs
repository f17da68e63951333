using Spectre.Console;
using SplitBatch.Trials.Seals;

namespace SplitBatch.Cli;

/// <summary>What a person is told about a seal.</summary>
internal static class SealReport
{
    /// <summary>The advice that goes with every fingerprint.</summary>
    public const string Publish = "Publish it before you pour (a club's chat, a commit, a post): only that proves to a stranger when the plan was fixed.";

    public static void Tell(this IAnsiConsole console, Seal seal)
    {
        console.WriteLine($"Sealed: {seal.File}, {seal.At.UtcDateTime:yyyy-MM-dd HH:mm} UTC by this machine's clock.");
        console.WriteLine($"Fingerprint, to read aloud: {seal.Fingerprint!.Spoken}");
        console.WriteLine($"Fingerprint, to publish:    {seal.Fingerprint.Digits}");
        console.WriteLine(Publish);
    }

    public static ValidationResult FolderIsThere(string folder) =>
        Directory.Exists(folder) ? ValidationResult.Success() : ValidationResult.Error($"There is no folder {folder}.");
}
