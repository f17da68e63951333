namespace SplitBatch.Lab;

/// <summary>What one analyte says about whether the sample labels are right.</summary>
public enum SwapSign
{
    /// <summary>The measured difference fits the labels and would not fit them swapped.</summary>
    FitsLabels,

    /// <summary>The measured difference would fit the labels swapped and does not fit them as they are.</summary>
    FitsSwapped,

    /// <summary>It fits neither way: something else is wrong.</summary>
    FitsNeither,

    /// <summary>The halves are too alike, or too little is known, to tell.</summary>
    CannotTell,
}
