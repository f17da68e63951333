namespace SplitBatch.Panel;

/// <summary>What a taster writes down for one set.</summary>
public enum AnswerKind
{
    /// <summary>The code of the one cup that differs from the others.</summary>
    OddCup,

    /// <summary>The code of the cup that matches the named reference.</summary>
    MatchingCup,

    /// <summary>The code of the cup with more of the named attribute.</summary>
    StrongerCup,

    /// <summary>The codes of two cups that belong together.</summary>
    Pair,

    /// <summary>"A" or "not A".</summary>
    OwnOrNot,

    /// <summary>"Same" or "different".</summary>
    SameOrDifferent,
}
