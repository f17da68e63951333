using SplitBatch.Proof.TruthTable;

namespace SplitBatch.Proof.ErrorRates;

/// <summary>How often something false was said in one setting.</summary>
/// <param name="Setting">What is true, and how it is asked.</param>
/// <param name="Claim">What would be false to say there.</param>
/// <param name="Promised">The largest rate that is promised; null for a habit that promises nothing and is shown for comparison.</param>
/// <param name="Bad">How often it was said.</param>
/// <param name="Runs">Of how many.</param>
public sealed record ErrorRate(string Setting, string Claim, double? Promised, int Bad, int Runs)
{
    public double Rate => (double)Bad / Runs;

    /// <summary>Whether the rate agrees with its promise, but for one chance in a hundred thousand.</summary>
    public bool IsKept => Promised is not { } rate || Promise.Kept(Bad, rate, Runs);
}

/// <summary>One table of the report.</summary>
/// <param name="Title">Its heading.</param>
/// <param name="Opening">What is simulated, and what is promised.</param>
/// <param name="Run">Runs every row: so many runs each, from a seed.</param>
public sealed record RateTable(string Title, string Opening, Func<int, int, IEnumerable<ErrorRate>> Run)
{
    public static IReadOnlyList<RateTable> All { get; } =
    [
        FewPeopleRates.Table, SharedPeopleRates.Table, SwappedRates.Table, PreferenceRates.Table, LookRates.Table,
        BrewRates.Table, ControlRates.Table, RunRates.Table, EquivalenceRates.Table,
    ];
}
