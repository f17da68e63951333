using System.ComponentModel;
using Spectre.Console;
using Spectre.Console.Cli;
using SplitBatch.Trials.Seals;

namespace SplitBatch.Cli;

/// <summary>
/// <c>splitbatch verify-seal</c>: what anyone can check who has a trial's published files, and perhaps a fingerprint from elsewhere.
/// </summary>
public sealed class VerifySealCommand(IAnsiConsole console) : Command<VerifySealCommand.Settings>
{
    /// <inheritdoc/>
    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var verification = SealVerification.Of(settings.Folder, settings.Fingerprint);
        foreach (var line in verification.Lines) console.WriteLine(line);
        return verification.Holds ? 0 : 1;
    }

    /// <summary>The folder and the fingerprint.</summary>
    public sealed class Settings : CommandSettings
    {
        /// <summary>The trial folder.</summary>
        [CommandArgument(0, "<FOLDER>")]
        [Description("The folder with the published files: trial.json, the seals, panel-log.csv, the keys.")]
        public required string Folder { get; init; }

        /// <summary>The fingerprint.</summary>
        [CommandOption("--fingerprint <DIGITS>")]
        [Description("A fingerprint as it was published, whole or its first twenty digits.")]
        public string? Fingerprint { get; init; }

        /// <inheritdoc/>
        public override ValidationResult Validate() => Fingerprint is { } text && Trials.Seals.Fingerprint.Refusal(text) is { } refusal
            ? ValidationResult.Error(refusal)
            : SealReport.FolderIsThere(Folder);
    }
}
