using System.Globalization;

namespace SplitBatch.Lab;

/// <summary>The results of one sample for one analyte from one laboratory, all kept.</summary>
public sealed record Replicates
{
    /// <summary>From values in the analyte's own unit.</summary>
    /// <param name="label">What the sample is called: a beer's name or a sample id.</param>
    /// <param name="values">At least one value, each finite.</param>
    /// <param name="analyte">What was measured; bitterness if not given.</param>
    /// <param name="lab">The laboratory; blank where it is not told.</param>
    /// <exception cref="ArgumentException">There is no value, or a text is blank.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value lies where no beer does.</exception>
    public Replicates(string label, IReadOnlyList<double> values, Analyte? analyte = null, string lab = "")
    {
        ArgumentNullException.ThrowIfNull(values);
        ArgumentNullException.ThrowIfNull(lab);
        if (values.Count == 0) throw new ArgumentException($"{label} has no result.", nameof(values));
        Label = Guard.NotBlank(label);
        Analyte = analyte ?? Analyte.Bitterness;
        Lab = lab.Trim();
        foreach (var value in values) Guard.InRange(value, Analyte.Low, Analyte.High, Analyte.Name);
        Values = [.. values];
        Mean = Values.Average();
    }

    /// <summary>What the sample is called.</summary>
    public string Label { get; }

    /// <summary>What was measured.</summary>
    public Analyte Analyte { get; }

    /// <summary>The laboratory; blank where it is not told.</summary>
    public string Lab { get; }

    /// <summary>The methods that the results name; empty where none does.</summary>
    public IReadOnlyList<string> Methods { get; init; } = [];

    /// <summary>The runs of the results, each with the mean of its results; empty where a result names none.</summary>
    public IReadOnlyDictionary<string, double> Runs { get; init; } = new Dictionary<string, double>();

    /// <summary>The days on which the results came in; empty where one has none.</summary>
    public IReadOnlyList<DateOnly> Received { get; init; } = [];

    /// <summary>The results, in the order given.</summary>
    public IReadOnlyList<double> Values { get; }

    /// <summary>How many there are.</summary>
    public int Count => Values.Count;

    /// <summary>Their mean.</summary>
    public double Mean { get; }

    /// <summary>Their standard deviation (divisor n - 1), or null for a single result.</summary>
    public double? StandardDeviation => Count < 2 ? null : Math.Sqrt(Values.Sum(value => (value - Mean) * (value - Mean)) / (Count - 1));

    /// <summary>Largest less smallest.</summary>
    public double Range => Values.Max() - Values.Min();

    /// <summary>For example <c>A 25.0 BU (mean of 2)</c>.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture, $"{Label} {Analyte.Format(Mean)} ({(Count == 1 ? "one result" : $"mean of {Count}")})");
}
