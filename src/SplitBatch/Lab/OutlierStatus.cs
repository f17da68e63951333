namespace SplitBatch.Lab;

/// <summary>How suspicious a value or a spread is, in the words of ISO 5725-2.</summary>
public enum OutlierStatus
{
    /// <summary>At or inside the 5 % critical value.</summary>
    Correct,

    /// <summary>Beyond the 5 % and not beyond the 1 % critical value.</summary>
    Straggler,

    /// <summary>Beyond the 1 % critical value.</summary>
    Outlier,
}
