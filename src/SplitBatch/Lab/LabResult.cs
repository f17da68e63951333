using System.Globalization;
using SplitBatch.BrewDay;

namespace SplitBatch.Lab;

/// <summary>One number a laboratory returned: one replicate of one analyte of one sample.</summary>
public sealed record LabResult : ILogged
{
    /// <summary>From what the return says.</summary>
    /// <param name="id">The result's own name, unlike any other in the log.</param>
    /// <param name="sample">The sample id as sent to the laboratory; it need not reveal the beer.</param>
    /// <param name="analyte">What was measured.</param>
    /// <param name="value">The number returned, in <paramref name="unit"/>.</param>
    /// <param name="unit">One of the analyte's units; its own if null.</param>
    /// <param name="replicate">Which replicate, from 1.</param>
    /// <exception cref="ArgumentException">A text is blank, or the unit is not one of the analyte's.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The value lies where no beer does, or the replicate is below 1.</exception>
    public LabResult(string id, string sample, Analyte analyte, double value, string? unit = null, int replicate = 1)
    {
        ArgumentNullException.ThrowIfNull(analyte);
        Id = Guard.NotBlank(id).Trim();
        Sample = Guard.NotBlank(sample).Trim();
        Analyte = analyte;
        GivenUnit = unit ?? analyte.Unit;
        GivenValue = value;
        Value = analyte.InOwnUnit(value, GivenUnit);
        Replicate = Guard.InRange(replicate, 1, 1000);
    }

    /// <inheritdoc/>
    public string Id { get; }

    /// <summary>The sample id as sent to the laboratory.</summary>
    public string Sample { get; }

    /// <summary>Which half the sample is, where the row says so; null while the key is kept apart.</summary>
    public Side? Beer { get; init; }

    /// <summary>What was measured.</summary>
    public Analyte Analyte { get; }

    /// <summary>Which replicate, from 1.</summary>
    public int Replicate { get; }

    /// <summary>The value in the analyte's own unit.</summary>
    public double Value { get; }

    /// <summary>The number as returned.</summary>
    public double GivenValue { get; }

    /// <summary>The unit as returned.</summary>
    public string GivenUnit { get; }

    /// <summary>The day the return arrived.</summary>
    public DateOnly? Received { get; init; }

    /// <summary>The method's reference, for instance "EBC 9.8".</summary>
    public string Method { get; init; } = "";

    /// <summary>The run in which it was measured, by whatever name the laboratory gives it; blank where it is not told.</summary>
    public string Run { get; init; } = "";

    /// <summary>The laboratory.</summary>
    public string Laboratory { get; init; } = "";

    /// <summary>The instrument's reading that the value follows from; null where a laboratory returned the value.</summary>
    public AbsorbanceReading? Reading { get; init; }

    /// <summary>The laboratory, or one's own instrument; blank where it is not told.</summary>
    public string MeasuredBy => Laboratory.Length > 0 ? Laboratory : Reading is null ? "" : "own instrument";

    /// <summary>Who logged it, as the user likes to say.</summary>
    public string Who { get; init; } = "";

    /// <inheritdoc/>
    public string? Supersedes { get; init; }

    /// <inheritdoc/>
    public string? Reason { get; init; }

    /// <summary>The row that corrects this one: the same result under another value or another sample.</summary>
    /// <param name="id">The new row's own name.</param>
    /// <param name="reason">Why, not blank.</param>
    /// <param name="value">The corrected value in <see cref="GivenUnit"/>; the old one if null. A value typed anew rests on no
    /// reading.</param>
    /// <param name="sample">The sample that the result belongs to; the old one if null.</param>
    /// <exception cref="ArgumentException">The reason is blank.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The value lies where no beer does.</exception>
    public LabResult CorrectedBy(string id, string reason, double? value = null, string? sample = null) =>
        new(id, sample ?? Sample, Analyte, value ?? GivenValue, GivenUnit, Replicate)
        {
            Beer = sample is null ? Beer : null,
            Received = Received,
            Method = Method,
            Laboratory = Laboratory,
            Run = Run,
            Reading = value is null ? Reading : null,
            Supersedes = Id,
            Reason = Guard.NotBlank(reason).Trim(),
        };

    /// <summary>For example <c>sample K7, bitterness, replicate 1: 25.0 BU</c>.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture, $"sample {Sample}, {Analyte.Name}, replicate {Replicate}: {Analyte.Format(Value)}");
}
