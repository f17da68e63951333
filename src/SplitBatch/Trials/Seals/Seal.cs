namespace SplitBatch.Trials.Seals;

/// <summary>A plan as it was fixed at one moment: the first seal of a trial, or an amendment of the one before.</summary>
/// <remarks>A file <c>seal-1.json</c>, <c>seal-2.json</c> ... in the trial folder, written once and never again.</remarks>
public sealed record Seal
{
    /// <summary>Its number: 1 is the first, later ones amend.</summary>
    public required int Number { get; init; }

    /// <summary>The trial's title, for whoever holds the file alone.</summary>
    public required string Title { get; init; }

    /// <summary>When it was sealed by the machine's clock, with the offset of the place from UTC.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>The program that made it, with its version.</summary>
    public required string MadeBy { get; init; }

    /// <summary>The fingerprint of the seal before; null for the first.</summary>
    public Fingerprint? Before { get; init; }

    /// <summary>Why the plan was amended; null for the first seal.</summary>
    public string? Because { get; init; }

    /// <summary>How many ballots of each panel were in when it was sealed; a panel that is not named had none.</summary>
    public IReadOnlyDictionary<string, int> BallotsThen { get; init; } = new Dictionary<string, int>();

    /// <summary>Random digits, so that nobody who holds only the fingerprint can guess the plan, or a seed within it.</summary>
    public required string Salt { get; init; }

    /// <summary>What was fixed.</summary>
    public required TrialPlan Plan { get; init; }

    /// <summary>The SHA-256 of the file's bytes; null while it is not written.</summary>
    public Fingerprint? Fingerprint { get; init; }

    /// <summary>The file's name.</summary>
    public string File => SealText.NameOf(Number);

    /// <summary>For example <c>seal-1.json, sealed 2026-04-20 16:05 UTC: 3f9a 0c2b 77d1 e4a0 9b3c</c>.</summary>
    public override string ToString() => $"{File}, sealed {SealText.Moment(At)}: {Fingerprint}";

    /// <summary>How many ballots of a panel were in then.</summary>
    public int BallotsOf(string panel) =>
        BallotsThen.FirstOrDefault(pair => string.Equals(pair.Key, panel, StringComparison.OrdinalIgnoreCase)).Value;

    /// <summary>
    /// Whether a ballot was handed in before this seal for certain. Ballots seldom name their time zone, so a time without one has to lie
    /// before the seal by the clock of the place where it was sealed as well as by UTC.
    /// </summary>
    internal bool IsCertainlyLaterThan(DateTimeOffset ballot) =>
        ballot.UtcDateTime < At.UtcDateTime && (ballot.Offset != TimeSpan.Zero || ballot.DateTime < At.DateTime);
}
