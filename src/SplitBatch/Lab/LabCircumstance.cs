namespace SplitBatch.Lab;

/// <summary>Where, when and by which method two means were measured: what their difference has to be judged by.</summary>
public enum LabCircumstance
{
    /// <summary>By one laboratory; nobody said whether in one run. Judged as one run, and said so.</summary>
    RunNotTold,

    /// <summary>In one run of one laboratory.</summary>
    OneRun,

    /// <summary>In several runs, each of which holds both: what runs do to both drops out of the difference.</summary>
    EachRunHoldsBoth,

    /// <summary>In separate runs, or returned on separate days: the spread from run to run counts.</summary>
    SeparateRuns,

    /// <summary>By two laboratories: the spread between laboratories counts.</summary>
    TwoLaboratories,

    /// <summary>By different methods: the values cannot be compared.</summary>
    OtherMethods,
}

/// <summary>How circumstances follow from what the results say.</summary>
internal static class LabCircumstances
{
    public static LabCircumstance Of(Replicates a, Replicates b)
    {
        if (a.Methods.Union(b.Methods, StringComparer.OrdinalIgnoreCase).Skip(1).Any()) return LabCircumstance.OtherMethods;
        if (a.Lab.Length > 0 && b.Lab.Length > 0 && !string.Equals(a.Lab, b.Lab, StringComparison.OrdinalIgnoreCase))
            return LabCircumstance.TwoLaboratories;
        if (a.Runs.Count > 0 && b.Runs.Count > 0)
        {
            var shared = a.Runs.Keys.Count(b.Runs.ContainsKey);
            return (shared == a.Runs.Count && shared == b.Runs.Count, shared) switch
            {
                (true, 1) => LabCircumstance.OneRun,
                (true, _) => LabCircumstance.EachRunHoldsBoth,
                _ => LabCircumstance.SeparateRuns,
            };
        }

        // Readings of one half from several runs cannot all be of the run of the other.
        if (a.Runs.Count > 1 || b.Runs.Count > 1) return LabCircumstance.SeparateRuns;
        return a.Received.Count > 0 && b.Received.Count > 0 && !a.Received.SequenceEqual(b.Received)
            ? LabCircumstance.SeparateRuns
            : LabCircumstance.RunNotTold;
    }
}
