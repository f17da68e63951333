namespace SplitBatch.Lab;

/// <summary>What a measured difference says against the precision of the method.</summary>
public enum Judgement
{
    /// <summary>Larger than the critical difference: the beers differ, as this method measures them.</summary>
    Exceeds,

    /// <summary>No larger than the critical difference: the method cannot tell the beers apart; that is not proof that they are the same.</summary>
    Within,

    /// <summary>The answer hangs on what the laboratory's figure means.</summary>
    DependsOnReading,

    /// <summary>The precision that is known does not settle it.</summary>
    NotJudged,
}
