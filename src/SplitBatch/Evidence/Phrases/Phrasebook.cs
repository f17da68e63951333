using SplitBatch.Evidence.Findings;

namespace SplitBatch.Evidence.Phrases;

/// <summary>The one place where findings become sentences: each kind of finding has its phrases in one file of this folder.</summary>
/// <remarks>
/// A phrase is a condition and a sentence. It decides nothing: whether a difference is shown stands in the finding. A sentence is a
/// proposition; whoever has its words and the raw files can decide whether it is true.
/// </remarks>
public static class Phrasebook
{
    /// <summary>What may be said of a finding.</summary>
    /// <param name="finding">The finding.</param>
    public static Sentence Say(Finding finding) => finding switch
    {
        TrialHeadline headline => HeadlinePhrases.Of(headline),
        PanelFinding or PanelLimit => OfPanel(finding),
        DosesFound doses => DosePhrases.Of(doses),
        LabMeans means => LabPhrases.Of(means),
        LabDifference difference => LabPhrases.Of(difference),
        LabAgainstEstimate against => LabPhrases.Of(against),
        ReplicateFlagged flagged => LabPhrases.Of(flagged),
        ReplicatesTooWide wide => LabPhrases.Of(wide),
        AnalyteApart apart => LabPhrases.Of(apart),
        SeveralMeasured several => LabPhrases.Of(several),
        SamplesSuspicious samples => LabPhrases.Of(samples),
        ReadingDoubtful doubtful => LabPhrases.Of(doubtful),
        HopLotsDiffer lots => BatchPhrases.Of(lots),
        HalvesDiffer halves => BatchPhrases.Of(halves),
        MeantEqual meant => BatchPhrases.Of(meant),
        NotMeasured gaps => BatchPhrases.Of(gaps),
        PanelsCombined combined => PanelsPhrases.Of(combined),
        PeopleCombined people => PanelsPhrases.Of(people),
        RestsOnOnePanel rests => PanelsPhrases.Of(rests),
        StandingLimit limit => LimitPhrases.Of(limit),
        OverReading over => ConclusionPhrases.Of(over),
        NextStep step => ConclusionPhrases.Of(step),
        _ => throw new ArgumentException($"The phrasebook has no phrase for {finding?.GetType().Name ?? "nothing"}.", nameof(finding)),
    };

    /// <summary>What the batch log says of an intention to hold something equal, in the few words of a table.</summary>
    /// <param name="finding">The intention beside the log.</param>
    public static string ByTheLog(MeantEqual finding) =>
        BatchPhrases.ByTheLog(finding ?? throw new ArgumentNullException(nameof(finding)));

    private static Sentence OfPanel(Finding finding) => finding switch
    {
        SetsCounted count => CountPhrases.Of(count),
        KindsCounted kinds => CountPhrases.Of(kinds),
        CountBelowChance alarm => CountPhrases.Of(alarm),
        DifferenceTested difference => DifferencePhrases.Of(difference),
        MarginTested margin => MarginPhrases.Of(margin),
        SequentialDecided sequential => SequentialPhrases.Of(sequential),
        RepeatsWeighed repeats => WeighedPhrases.Of(repeats),
        LikelihoodWeighed likelihood => WeighedPhrases.Of(likelihood),
        PriorWeighed prior => WeighedPhrases.Of(prior),
        SizeToSettle size => WeighedPhrases.Of(size),
        ControlTasted control => RefereePhrases.Of(control),
        BallotsWeighed ballots => RefereePhrases.Of(ballots),
        QuestionsWeighed questions => RefereePhrases.Of(questions),
        NotRecorded unknown => RefereePhrases.Of(unknown),
        RatingCompared rating => BesidePhrases.Of(rating),
        PreferenceCounted preference => BesidePhrases.Of(preference),
        WordsTallied words => BesidePhrases.Of(words),
        BiasesChecked biases => BesidePhrases.Of(biases),
        BiasShown bias => BesidePhrases.Of(bias),
        DepartedFromPlan departed => PlanPhrases.Of(departed),
        PlanUnsealed plan => PlanPhrases.Of(plan),
        CountRemarked remark => PlanPhrases.Of(remark),
        _ => throw new ArgumentException($"The phrasebook has no phrase for {finding.GetType().Name}.", nameof(finding)),
    };
}
