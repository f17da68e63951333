using SplitBatch.Evidence.Findings;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;

namespace SplitBatch.Evidence;

/// <summary>
/// What a trial allows one to say in public: a headline no stronger and no weaker than the evidence, the claims behind it,
/// what limits it, what it does not show, and what to do next.
/// </summary>
public sealed record Verdict
{
    private readonly Lazy<TrialFindings> findings;
    private readonly Lazy<TrialHeadline> headline;

    private Verdict(TrialEvidence evidence)
    {
        Evidence = evidence;
        findings = new(() => new(All()));
        headline = new(() => HeadlineFinding.Of(Evidence, Main, Findings));
    }

    /// <summary>What the verdict rests on.</summary>
    public TrialEvidence Evidence { get; }

    /// <summary>The panel that the verdict rests on: the first of trial.json that is counted; null while none is.</summary>
    public CountedPanel? Main => Evidence.Panels.Count > 0 ? Evidence.Panels[0] : null;

    /// <summary>Which answer the main panel gave; null while none is counted.</summary>
    public PanelAnswer? Answer => Main?.Answer;

    /// <summary>Whether the main panel kept to a plan declared before serving; without one a result is a lead and not a test.</summary>
    public bool KeptToPlan => Main is { KeptToPlan: true };

    /// <summary>Everything that was found, as one list in the order of the job: results, limits, over-readings, next steps.</summary>
    public TrialFindings Findings => findings.Value;

    /// <summary>The trial in a few sentences, as a finding of its own.</summary>
    public TrialHeadline HeadlineFound => headline.Value;

    /// <summary>The trial in a few sentences, at most 60 words.</summary>
    public Claim HeadlineClaim => Claim.Of(HeadlineFound);

    /// <summary>The trial in a few sentences, at most 60 words.</summary>
    public string Headline => HeadlineClaim.Sentence;

    /// <summary>Every result as a sentence with its numbers, sources and methods, in the order of the job: dose, lab, panel.</summary>
    public IReadOnlyList<Claim> Claims => As(FindingRole.Result);

    /// <summary>What limits the verdict, as sentences.</summary>
    public IReadOnlyList<Claim> Limitations => As(FindingRole.Limit);

    /// <summary>What a reader might take from the result and must not.</summary>
    public IReadOnlyList<Claim> DoesNotShow => As(FindingRole.NotShown);

    /// <summary>What would settle what is open, or what to test next.</summary>
    public IReadOnlyList<Claim> Next => As(FindingRole.Next);

    /// <summary>The verdict that evidence allows.</summary>
    public static Verdict Of(TrialEvidence evidence)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        return new Verdict(evidence);
    }

    /// <summary>The results about one subject, as sentences.</summary>
    /// <param name="subject">For example <c>Subject.Panel("main")</c>.</param>
    public IReadOnlyList<Claim> About(Subject subject) => [.. Findings.ResultsAbout(subject).Select(Claim.Of)];

    /// <summary>The headline.</summary>
    public override string ToString() => Headline;

    private Claim[] As(FindingRole role) => [.. Findings.As(role).Select(Claim.Of)];

    private IEnumerable<Finding> All() =>
    [
        .. BatchFindings.Doses(Evidence),
        .. LabFindings.Results(Evidence),
        .. Evidence.Panels.SelectMany(PanelFindings.Results),
        .. TrialLimits.Together(Evidence),
        .. TrialLimits.Opening(Evidence),
        .. BatchFindings.Limits(Evidence),
        .. LabFindings.Limits(Evidence),
        .. Evidence.Panels.SelectMany(PanelFindings.Limits),
        .. TrialLimits.Closing(Evidence),
        .. ConclusionFindings.NotShown(Evidence, Main),
        .. ConclusionFindings.Next(Evidence, Main),
    ];
}
