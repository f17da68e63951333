using SplitBatch.BrewDay;

namespace SplitBatch.Lab;

/// <summary>Everything the laboratory returned for one trial, corrections included.</summary>
public sealed class LabReturn
{
    private static readonly Side[] Sides = [Side.A, Side.B];
    private readonly Dictionary<string, Side> key;

    /// <summary>From results, the key of the samples, and what is known of each method's precision.</summary>
    /// <param name="results">Every row, in the order logged.</param>
    /// <param name="key">Which half each sample is; a row that names its beer needs no entry. Null while the samples are blind.</param>
    /// <param name="precision">What is known of the precision, by analyte.</param>
    /// <exception cref="ArgumentException">The key and a row name different beers for one sample.</exception>
    public LabReturn(
        IEnumerable<LabResult> results, IReadOnlyDictionary<string, Side>? key = null,
        IReadOnlyDictionary<Analyte, MethodPrecision>? precision = null)
    {
        History = new LogHistory<LabResult>(results);
        Precision = precision ?? new Dictionary<Analyte, MethodPrecision>();
        this.key = new Dictionary<string, Side>(key ?? new Dictionary<string, Side>(), StringComparer.OrdinalIgnoreCase);
        foreach (var result in History.InForce)
        {
            if (result.Beer is not { } beer) continue;
            if (!this.key.TryAdd(result.Sample, beer) && this.key[result.Sample] != beer)
            {
                throw new ArgumentException($"Sample {result.Sample} is said to be beer {beer} in row {result.Id} and beer "
                    + $"{this.key[result.Sample]} elsewhere.", nameof(results));
            }
        }
    }

    /// <summary>Every row, which are in force, and who superseded what.</summary>
    public LogHistory<LabResult> History { get; }

    /// <summary>The results in force.</summary>
    public IReadOnlyList<LabResult> Results => History.InForce;

    /// <summary>What is known of each method's precision.</summary>
    public IReadOnlyDictionary<Analyte, MethodPrecision> Precision { get; }

    /// <summary>The analytes that have results in force, in the order first met.</summary>
    public IReadOnlyList<Analyte> Analytes => [.. Results.Select(result => result.Analyte).Distinct()];

    /// <summary>The samples whose beer is not known.</summary>
    public IReadOnlyList<string> BlindSamples =>
        [.. Results.Select(result => result.Sample).Distinct(StringComparer.OrdinalIgnoreCase).Where(sample => !key.ContainsKey(sample))];

    /// <summary>Which half a sample is, or null while it is blind.</summary>
    public Side? BeerOf(string sample) => key.TryGetValue(sample, out var side) ? side : null;

    /// <summary>The same return with the samples' key laid beside it.</summary>
    /// <exception cref="ArgumentException">The key and a row name different beers for one sample.</exception>
    internal LabReturn Unblind(IReadOnlyDictionary<string, Side> samples) => new(History.Rows, samples, Precision);

    /// <summary>Who measured an analyte, in the order first met; one's own instrument counts as one.</summary>
    public IReadOnlyList<string> MeasuredBy(Analyte analyte) =>
        [.. Results.Where(result => result.Analyte.Equals(analyte)).Select(result => result.MeasuredBy).Where(name => name.Length > 0)
            .Distinct(StringComparer.OrdinalIgnoreCase)];

    /// <summary>
    /// Whose results the halves are compared by, where several measured an analyte: the first that measured both halves, so that no
    /// difference between laboratories looks like one between beers. Null where one alone measured, or none measured both.
    /// </summary>
    public string? ComparedBy(Analyte analyte) => MeasuredBy(analyte) is { Count: > 1 } several
        ? several.FirstOrDefault(
            name => Sides.All(
                side => Results.Any(result => result.Analyte.Equals(analyte) && BeerOf(result.Sample) == side && IsBy(result, name))))
        : null;

    /// <summary>
    /// The results of one half for one analyte, or null where there is none; of several laboratories only those of
    /// <see cref="ComparedBy"/>.
    /// </summary>
    public Replicates? Replicates(Side beer, Analyte analyte) =>
        Of(Compared(analyte).Where(result => BeerOf(result.Sample) == beer), beer.ToString());

    /// <summary>The results of one sample for one analyte, or null where there is none.</summary>
    public Replicates? Replicates(string sample, Analyte analyte) =>
        Of(Compared(analyte).Where(result => string.Equals(result.Sample, sample, StringComparison.OrdinalIgnoreCase)), sample);

    /// <summary>
    /// The two halves by one analyte, against what is known of the method's precision; null where a half has no result.
    /// </summary>
    public LabComparison? Compare(Analyte analyte)
    {
        ArgumentNullException.ThrowIfNull(analyte);
        if (Replicates(Side.A, analyte) is not { } a || Replicates(Side.B, analyte) is not { } b) return null;
        return (Precision.TryGetValue(analyte, out var known) ? known : MethodPrecision.Unknown).Compare(a, b);
    }

    /// <summary>Every analyte that both halves have, compared.</summary>
    public IReadOnlyList<LabComparison> CompareAll() => [.. Analytes.Select(Compare).OfType<LabComparison>()];

    /// <summary>
    /// Outlier tests on one analyte: Grubbs on each sample's replicates, Cochran on their spreads. Flagged values stay in every mean.
    /// </summary>
    public IReadOnlyList<OutlierFinding> Outliers(Analyte analyte)
    {
        var samples = Samples(analyte);
        return [.. samples.Select(Grubbs.Test).Append(Cochran.Test(samples)).OfType<OutlierFinding>()];
    }

    /// <summary>
    /// Whether each sample's replicates lie as close together as the stated repeatability says; empty where it is not stated. Results of
    /// several runs or days are no replicates of one run, and are not checked.
    /// </summary>
    public IReadOnlyList<RangeCheck> RangeChecks(Analyte analyte) =>
        Precision.TryGetValue(analyte, out var method) && method.Known?.Repeatability is { } repeatability
            ? [.. Samples(analyte).Where(sample => AreOfOneRun(analyte, sample.Label))
                .Select(sample => RangeCheck.Of(sample, repeatability)).OfType<RangeCheck>()]
            : [];

    /// <summary>
    /// The replicates of every sample for one analyte, by sample id; a sample that only others measured than those compared has none.
    /// </summary>
    public IReadOnlyList<Replicates> Samples(Analyte analyte) =>
        [.. Compared(analyte).Select(result => result.Sample).Distinct(StringComparer.OrdinalIgnoreCase)
            .Select(sample => Replicates(sample, analyte)!)];

    /// <summary>How much there is, in a line.</summary>
    public override string ToString() => Results.Count == 0
        ? "No lab result is logged yet."
        : $"{Results.Count} results of {Results.Select(result => result.Sample).Distinct().Count()} samples: "
            + $"{string.Join(", ", Analytes.Select(analyte => analyte.Name))}"
        + (History.Corrections.Count is > 0 and var corrections ? $"; {corrections} corrected" : "");

    private IEnumerable<LabResult> Compared(Analyte analyte)
    {
        var by = ComparedBy(analyte);
        List<LabResult> results = [.. Results.Where(result => result.Analyte.Equals(analyte) && (by is null || IsBy(result, by)))];
        var methods = results.Select(result => result.Method.Trim()).Where(name => name.Length > 0)
            .Distinct(StringComparer.OrdinalIgnoreCase).ToList();
        var method = methods.Count > 1
            ? methods.FirstOrDefault(name => Sides.All(side => results.Any(result => BeerOf(result.Sample) == side && IsOf(result, name))))
            : null;
        return method is null ? results : results.Where(result => IsOf(result, method));
    }

    private bool AreOfOneRun(Analyte analyte, string sample) =>
        Compared(analyte).Where(result => string.Equals(result.Sample, sample, StringComparison.OrdinalIgnoreCase))
            .Select(result => (result.Run.Trim().ToUpperInvariant(), result.Received, result.MeasuredBy.ToUpperInvariant(),
                result.Method.Trim().ToUpperInvariant())).Distinct().Count() == 1;

    private static bool IsOf(LabResult result, string method) =>
        string.Equals(result.Method.Trim(), method, StringComparison.OrdinalIgnoreCase);

    private static bool IsBy(LabResult result, string name) => string.Equals(result.MeasuredBy, name, StringComparison.OrdinalIgnoreCase);

    private static Replicates? Of(IEnumerable<LabResult> results, string label)
    {
        var list = results.OrderBy(result => result.Sample, StringComparer.OrdinalIgnoreCase).ThenBy(result => result.Replicate).ToList();
        if (list.Count == 0) return null;
        var labs = list.Select(result => result.MeasuredBy).Distinct(StringComparer.OrdinalIgnoreCase).ToList();
        return new Replicates(label, [.. list.Select(result => result.Value)], list[0].Analyte, labs is [var one] ? one : "")
        {
            Methods = [.. list.Select(result => result.Method.Trim()).Where(method => method.Length > 0)
                .Distinct(StringComparer.OrdinalIgnoreCase)],
            Runs = list.Any(result => result.Run.Length == 0) ? new Dictionary<string, double>()
                : list.GroupBy(result => result.Run.Trim(), StringComparer.OrdinalIgnoreCase)
                    .ToDictionary(run => run.Key, run => run.Average(result => result.Value), StringComparer.OrdinalIgnoreCase),
            Received = list.Any(result => result.Received is null)
                ? []
                : [.. list.Select(result => result.Received!.Value).Distinct().Order()],
        };
    }
}
