using SplitBatch.Trials.Files;

namespace SplitBatch.Trials.Seals;

/// <summary>What a stranger can check about the seals in a folder of published files.</summary>
/// <param name="Lines">What was checked, line by line.</param>
/// <param name="Holds">Whether all of it fits together, and the fingerprint that was given is that of a seal.</param>
public sealed record SealVerification(IReadOnlyList<string> Lines, bool Holds)
{
    /// <summary>
    /// Checks every seal of a folder against its successor, against the panel log, and against a fingerprint from elsewhere.
    /// </summary>
    /// <param name="folder">The folder.</param>
    /// <param name="fingerprint">A fingerprint as it was published, whole or its first twenty digits; null where none is at hand.</param>
    /// <exception cref="ArgumentException">The fingerprint is none.</exception>
    public static SealVerification Of(string folder, string? fingerprint = null)
    {
        var place = new TrialFolder(folder);
        var faults = new FaultList();
        var chain = SealChain.Read(place, faults);
        var lines = new List<string>();
        lines.AddRange(faults.Select(fault => fault.ToString()));
        if (chain.Seals.Count == 0)
        {
            lines.Add($"{place.Name}: not sealed.");
            return new(lines, false);
        }

        foreach (var seal in chain.Seals)
        {
            lines.Add($"{seal}{(seal.Because is { } reason ? $"; an amendment, because: {reason}" : "")}");
            lines.Add($"  SHA-256 {seal.Fingerprint!.Digits}");
            if (Timestamp.Of(seal, place) is { } stamp) lines.Add($"  {stamp.Says}");
        }

        lines.AddRange(chain.Breaks);
        var holds = chain.Breaks.Count == 0 && !faults.HasErrors;
        foreach (var (text, good) in Keys(place, chain))
        {
            lines.Add(text);
            holds &= good;
        }

        if (fingerprint is null)
        {
            lines.Add("The dates are those of the author's machine. Only a fingerprint that was published before pouring proves one: give "
                + "it with --fingerprint.");
            return new(lines, holds);
        }

        var match = chain.Seals.FirstOrDefault(seal => seal.Fingerprint!.Matches(fingerprint));
        lines.Add(match is null ? "The fingerprint you gave is that of no seal in this folder."
            : $"The fingerprint you gave is that of {match.File}.");
        return new(lines, holds && match is not null);
    }

    /// <summary>Line by line.</summary>
    public override string ToString() => string.Join("\n", Lines);

    private static IEnumerable<(string Text, bool Good)> Keys(TrialFolder place, SealChain chain)
    {
        if (!place.Holds(PanelEvent.Log.FileName) || place.ReadText(PanelEvent.Log.FileName, []) is not { } text) yield break;
        foreach (var served in PanelEvent.Read(LogText.Table(PanelEvent.Log, text, [])).Where(one => one.Kind == PanelEventKind.Served))
        {
            var file = $"serving-{served.Panel}.csv";
            if (served.Seal is { } under && chain.Seals.All(seal => seal.Fingerprint != under))
                yield return ($"Panel {served.Panel} was served under a seal with the fingerprint {under}, and no seal "
                    + $"here has it.", false);
            if (!place.Holds(file)) yield return ($"{file} is not here; when it is, its fingerprint has to be {served.Key}.", true);
            else if (Fingerprint.Of(File.ReadAllBytes(place.PathOf(file))) == served.Key)
                yield return ($"{file} is the key that was drawn.", true);
            else yield return ($"{file} is not the key that was drawn: the panel log holds the fingerprint {served.Key}.", false);
        }
    }
}
