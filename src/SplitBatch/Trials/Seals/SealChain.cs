using SplitBatch.Trials.Files;

namespace SplitBatch.Trials.Seals;

/// <summary>The seals of a trial in their order, each bound to the one before by its fingerprint.</summary>
/// <param name="Seals">The seals; none where the trial is not sealed.</param>
/// <param name="Breaks">What does not fit together, as sentences: a seal that is missing, or that was changed after the next one was
/// made.</param>
public sealed record SealChain(IReadOnlyList<Seal> Seals, IReadOnlyList<string> Breaks)
{
    /// <summary>No seal.</summary>
    public static SealChain None { get; } = new([], []);

    /// <summary>The newest seal; null where the trial is not sealed.</summary>
    public Seal? Latest => Seals.Count > 0 ? Seals[^1] : null;

    /// <summary>Reads every seal of a folder; one that cannot be read is a fault.</summary>
    internal static SealChain Read(TrialFolder folder, FaultList faults)
    {
        var seals = new List<Seal>();
        foreach (var number in folder.Names("seal-*.json").Select(SealText.NumberOf).OfType<int>().Distinct().Order())
        {
            var file = SealText.NameOf(number);
            if (folder.ReadText(file, faults) is not null
                && SealText.Read(file, File.ReadAllBytes(folder.PathOf(file)), faults) is { } seal) seals.Add(seal);
        }

        return new SealChain(seals, [.. BreaksIn(seals)]);
    }

    /// <summary>The seal that decides about ballots: the last that was made before the first of them; null where none was.</summary>
    /// <param name="isBefore">Whether a seal was made before the first ballot.</param>
    public Seal? InForce(Func<Seal, bool> isBefore) => Seals.TakeWhile(isBefore).LastOrDefault();

    /// <summary>The pairs of neighbours: a seal and the one that amends it.</summary>
    internal IEnumerable<(Seal Old, Seal New)> Steps => Seals.Zip(Seals.Skip(1));

    private static IEnumerable<string> BreaksIn(List<Seal> seals)
    {
        foreach (var (seal, i) in seals.Select((seal, i) => (seal, i)))
        {
            if (seal.Number != i + 1)
            {
                yield return $"{SealText.NameOf(i + 1)} is missing: seals are numbered without a gap.";
                yield break;
            }

            if (i == 0)
            {
                if (seal.Before is not null) yield return $"{seal.File} says that a seal came before it, and there is none.";
                continue;
            }

            var before = seals[i - 1];
            if (seal.Before != before.Fingerprint)
                yield return $"{before.File} was changed after {seal.File} was made: its fingerprint is {before.Fingerprint}, and "
                    + $"{seal.File} holds {seal.Before?.Spoken ?? "none"}.";
            if (seal.At.UtcDateTime < before.At.UtcDateTime) yield return $"{seal.File} says that it was made before {before.File}.";
        }
    }
}
