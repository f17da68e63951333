using SplitBatch.Panel.Counting;

namespace SplitBatch.Evidence;

/// <summary>
/// What a trial allows one to say in public: a headline no stronger and no weaker than the evidence, the claims behind it,
/// what limits it, what it does not show, and what to do next.
/// </summary>
public sealed record Verdict
{
    private readonly Lazy<IReadOnlyList<Claim>> claims;

    private Verdict(TrialEvidence evidence)
    {
        Evidence = evidence;
        claims = new(() =>
        [
            .. evidence.Doses is { } doses ? DoseClaims.Of(doses, evidence) : [],
            .. evidence.Bitterness is { } lab ? LabClaims.Of(lab, evidence.Doses) : [],
            .. evidence.Lab is { } all ? LabClaims.OfReplicates(all) : [],
            .. evidence.Panels.SelectMany(PanelClaims.Of),
            .. evidence.Together is { } together ? [TogetherClaim.Of(together)] : Array.Empty<Claim>(),
        ]);
    }

    /// <summary>What the verdict rests on.</summary>
    public TrialEvidence Evidence { get; }

    /// <summary>The main panel, or null while none is counted.</summary>
    public PanelFinding? Main => Evidence.Panels.Count > 0 ? Evidence.Panels[0] : null;

    /// <summary>Which of the four answers the main panel gave; null while none is counted.</summary>
    public PanelAnswer? Answer => Main?.Answer;

    /// <summary>Whether the main panel kept to a plan declared before serving; without one a result is a lead and not a test.</summary>
    public bool KeptToPlan => Main is { } main && main.Departures.All(departure => departure.Severity != Severity.Error);

    /// <summary>The verdict in a sentence or two.</summary>
    public string Headline => Headlines.Of(this);

    /// <summary>Every quantitative sentence with its numbers, sources and methods, in the order of the job: dose, lab, panel.</summary>
    public IReadOnlyList<Claim> Claims => claims.Value;

    /// <summary>What limits the verdict, as sentences.</summary>
    public IReadOnlyList<Claim> Limitations => [.. LimitationsOf.Trial(this)];

    /// <summary>What a reader might take from the result and must not.</summary>
    public IReadOnlyList<Claim> DoesNotShow => [.. NotShown.By(this)];

    /// <summary>What would settle what is open, or what to test next.</summary>
    public IReadOnlyList<Claim> Next => [.. NextSteps.After(this)];

    /// <summary>The verdict that evidence allows.</summary>
    public static Verdict Of(TrialEvidence evidence)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        return new Verdict(evidence);
    }

    /// <summary>The headline.</summary>
    public override string ToString() => Headline;
}
