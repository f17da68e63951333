namespace SplitBatch.Lab;

/// <summary>How the two halves compare on one line of the batch log.</summary>
public enum Parity
{
    /// <summary>The same value was logged for both.</summary>
    Same,

    /// <summary>The values differ by no more than the instrument can tell.</summary>
    WithinInstrument,

    /// <summary>The values differ by more than the instrument can tell, or by an amount nobody can judge: something besides the variable differs.</summary>
    Confound,

    /// <summary>One half or both have no value.</summary>
    NotMeasured,

    /// <summary>The values differ because this is what the trial changes.</summary>
    TheVariable,
}
