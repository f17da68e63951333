using System.Globalization;

namespace SplitBatch.Panel.Planning;

/// <summary>How a panel's plan was kept: sealed or not, amended in time, changed too late, looked at early, closed.</summary>
public sealed record PlanCustody
{
    /// <summary>A plan that nobody sealed, as every trial of version 0.1.</summary>
    public static PlanCustody NotSealed { get; } = new();

    /// <summary>The seal that decides, by its file name; null where the plan was not sealed before the first ballot.</summary>
    public string? Seal { get; init; }

    /// <summary>The seal's fingerprint in its short form.</summary>
    public string? Fingerprint { get; init; }

    /// <summary>All digits of the seal's fingerprint.</summary>
    public string? Digits { get; init; }

    /// <summary>When it was sealed, by the clock of the machine that did it.</summary>
    public DateTimeOffset? SealedAt { get; init; }

    /// <summary>Where the author says that the fingerprint was published, in the author's words; null where nothing is said.</summary>
    public string? Published { get; init; }

    /// <summary>What a trusted clock says about the seal, as a sentence; null where there is no such file.</summary>
    public string? Timestamp { get; init; }

    /// <summary>What was changed on record before the first ballot: allowed, and visible.</summary>
    public IReadOnlyList<PlanChange> Amendments { get; init; } = [];

    /// <summary>What was changed after the first ballot: each makes a lead of the test.</summary>
    public IReadOnlyList<PlanChange> Changes { get; init; } = [];

    /// <summary>The panel's plan as it reads after those changes; null where none of them is of this panel.</summary>
    public PanelPlan? ChangedPlan { get; init; }

    /// <summary>What does not fit together about seal and key, as sentences.</summary>
    public IReadOnlyList<string> Breaks { get; init; } = [];

    /// <summary>Who looked at the count before the close, as sentences.</summary>
    public IReadOnlyList<string> Looks { get; init; } = [];

    /// <summary>The day the panel was closed, as somebody said it; null where nobody closed it by hand.</summary>
    public DateOnly? Closed { get; init; }

    /// <summary>How many ballots were in at the close; null where nobody closed the panel by hand.</summary>
    public int? BallotsAtClose { get; init; }

    /// <summary>Whether the plan was sealed before the first ballot.</summary>
    public bool IsSealed => Seal is not null;

    /// <summary>The day on which the plan was sealed, at the place where it was.</summary>
    public DateOnly? Day => SealedAt is { } at ? DateOnly.FromDateTime(at.DateTime) : null;

    /// <summary>For example <c>Sealed 2026-04-20 16:05 UTC; fingerprint 3f9a 0c2b 77d1 e4a0 9b3c.</c></summary>
    public override string ToString() => !IsSealed ? "Not sealed."
        : $"Sealed {SealedAt!.Value.UtcDateTime.ToString("yyyy-MM-dd HH:mm 'UTC'", CultureInfo.InvariantCulture)}; fingerprint "
            + $"{Fingerprint}."
            + (Amendments.Count > 0 ? $" Amended before the first ballot: {string.Join("; ", Amendments)}." : "")
            + (Changes.Count > 0 ? $" Changed after the first ballot: {string.Join("; ", Changes)}." : "");

    /// <summary>What of this departs from the plan, for the list of departures.</summary>
    internal IEnumerable<Departure> Departures()
    {
        foreach (var change in Changes)
        {
            yield return new(change.What, change.From, change.To,
                $"It was changed after the first ballot, {change.WhenAndWhy}, so the result is a lead to follow and not a test; the "
                    + $"sealed plan computes the verdict.", Severity.Error)
                    {
                        Kind = DepartureKind.ChangedTooLate,
                        WhenAndWhy = change.WhenAndWhy,
                    };
        }

        foreach (var problem in Breaks)
        {
            yield return new("seal", "as it was sealed", "changed",
                $"{problem} Nobody can say any more what was fixed beforehand, so the result is a lead to follow and not a test.",
                Severity.Error) { Kind = DepartureKind.Broken };
        }

        foreach (var look in Looks)
        {
            yield return new("looks", "none before the close", look,
                "Looking early with the choice to stop raises the chance of a false difference above alpha, so the result is a lead to "
                    + "follow and not a test.", Severity.Error) { Kind = DepartureKind.LookedAt };
        }
    }
}
