namespace SplitBatch.Lab;

/// <summary>One way to read the laboratory's figure, and what follows for the measured difference.</summary>
/// <param name="Precision">The precision taken.</param>
/// <param name="CriticalDifference">The critical difference that follows, or null where this precision cannot give one.</param>
/// <param name="IsUpperBound">Whether the true critical difference may be smaller than this one.</param>
/// <param name="Judgement">Exceeds, within, or not judged.</param>
/// <param name="Remark">Why it is a bound, or why it cannot be judged; blank otherwise.</param>
public sealed record PrecisionReading(LabPrecision Precision, double? CriticalDifference, bool IsUpperBound, Judgement Judgement,
    string Remark)
{
    internal static PrecisionReading Of(LabPrecision precision, Replicates a, Replicates b, LabCircumstance circumstance)
    {
        if (circumstance == LabCircumstance.OtherMethods)
            return new(precision, null, false, Judgement.NotJudged,
                "The two halves were measured by different methods, whose values cannot be compared.");
        var twoLabs = circumstance == LabCircumstance.TwoLaboratories;
        var level = (a.Mean + b.Mean) / 2;
        var small = precision.Repeatability?.LimitAt(level);
        var large = precision.Reproducibility?.LimitAt(level);
        var difference = Math.Abs(a.Mean - b.Mean);
        if (circumstance == LabCircumstance.SeparateRuns) return OfSeparateRuns();
        return (twoLabs, small, large) switch
        {
            (_, null, null) => Unjudged("No precision is stated."),
            (true, { }, null) =>
                Unjudged("The results come from two laboratories; repeatability alone says nothing about how laboratories differ. Ask for "
                    + "the reproducibility."),
            (_, { } r, { } big) when r > big =>
                throw new ArgumentException("The repeatability limit is larger than the reproducibility limit at this level; the two "
                    + "figures may be swapped.", nameof(precision)),
            (false, { } r, _) => Judged(Lab.CriticalDifference.OneLaboratory(r, a.Count, b.Count)),
            (false, null, { } big) => Bound(
                Lab.CriticalDifference.OneLaboratory(big, a.Count, b.Count),
                "The figure is a reproducibility; both beers were measured by one laboratory, whose repeatability is no larger."),
            (true, { } r, { } big) => Judged(Lab.CriticalDifference.TwoLaboratories(r, big, a.Count, b.Count)),
            (true, null, { } big) => Bound(
                Lab.CriticalDifference.TwoLaboratories(0, big, a.Count, b.Count),
                "The repeatability is not known, so no credit is taken for replicates."),
        };

        PrecisionReading OfSeparateRuns()
        {
            var within = precision.Repeatability?.StandardDeviationAt(level);
            return (precision.Intermediate?.StandardDeviationAt(level), within, large) switch
            {
                ({ } runs, { } r, _) when r > runs =>
                    throw new ArgumentException("The repeatability is larger than the intermediate precision at this level; the two "
                        + "figures may be swapped.", nameof(precision)),
                ({ } runs, { } r, _) => Judged(RunDifference.SeparateRuns(r, Math.Sqrt((runs * runs) - (r * r)), a.Count, b.Count)),
                ({ } runs, null, _) => Bound(RunDifference.OneRun(runs, 1, 1),
                    "Only the intermediate precision is known, so no credit is taken for replicates."),
                (null, _, { } big) =>
                    Bound(Lab.CriticalDifference.TwoLaboratories(small ?? 0, big, a.Count, b.Count),
                        "The laboratory's spread from run to run is not stated; that between laboratories, which is no smaller, stands in "
                            + "for it."),
                _ => Unjudged("The two halves were measured in separate runs, and the laboratory's spread from run to run is not stated."),
            };
        }

        PrecisionReading Unjudged(string why) => new(precision, null, false, Judgement.NotJudged, why);
        // A difference that equals the critical one but for the last bit of a computed number does not exceed it.
        bool Exceeds(double critical) => difference > critical * (1 + 1e-9);
        PrecisionReading Judged(double critical) =>
            new(precision, critical, false, Exceeds(critical) ? Judgement.Exceeds : Judgement.Within, "");
        PrecisionReading Bound(double critical, string why) =>
            new(precision, critical, true, Exceeds(critical) ? Judgement.Exceeds : Judgement.NotJudged, why);
    }
}

/// <summary>What a measured difference says against the precision of the method.</summary>
public enum Judgement
{
    /// <summary>Larger than the critical difference: the beers differ, as this method measures them.</summary>
    Exceeds,

    /// <summary>
    /// No larger than the critical difference: the method cannot tell the beers apart; that is not proof that they are the same.
    /// </summary>
    Within,

    /// <summary>The answer hangs on what the laboratory's figure means.</summary>
    DependsOnReading,

    /// <summary>The precision that is known does not settle it.</summary>
    NotJudged,
}
