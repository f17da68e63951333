namespace SplitBatch.BrewDay;

/// <summary>One line of the parity check.</summary>
/// <param name="Quantity">What is compared.</param>
/// <param name="A">The value of half A as text; null where it was not measured.</param>
/// <param name="B">The value of half B as text; null where it was not measured.</param>
/// <param name="Difference">A less B in <paramref name="Unit"/>; null for words and where one is missing.</param>
/// <param name="Tolerance">The largest difference the instruments would show on equal halves (95 %), in <paramref name="Unit"/>; null
/// where it is not known.</param>
/// <param name="Unit">The unit of difference and tolerance; blank for words.</param>
/// <param name="Verdict">How the halves compare.</param>
/// <param name="Remark">One sentence that a write-up can use.</param>
public sealed record ParityLine(string Quantity, string? A, string? B, double? Difference, double? Tolerance, string Unit, Parity Verdict,
    string Remark)
{
    /// <summary>Whether it is worked out from other lines, and so adds no new confound.</summary>
    public bool IsDerived { get; init; }

    /// <summary>The ids of the log rows behind it.</summary>
    public IReadOnlyList<string> Rows { get; init; } = [];

    /// <summary>The remark.</summary>
    public override string ToString() => Remark;
}

/// <summary>How the two halves compare on one line of the batch log.</summary>
public enum Parity
{
    /// <summary>The same value was logged for both.</summary>
    Same,

    /// <summary>The values differ by no more than the instrument can tell.</summary>
    WithinInstrument,

    /// <summary>
    /// The values differ by more than the instrument can tell, or by an amount nobody can judge: something besides the variable differs.
    /// </summary>
    Confound,

    /// <summary>One half or both have no value.</summary>
    NotMeasured,

    /// <summary>The values differ because this is what the trial changes.</summary>
    TheVariable,
}
