namespace SplitBatch.Proof.TruthTable;

/// <summary>How a panel is run and read.</summary>
public enum Practice
{
    /// <summary>Balanced orders, one set for each taster, one look at the end.</summary>
    Honest,

    /// <summary>Four sets for each taster, read as repeats.</summary>
    RepeatsAsRepeats,

    /// <summary>A declared sequential plan, ending at the planned size in any case.</summary>
    Sequential,

    /// <summary>Four sets for each taster, read as if each set were a new taster.</summary>
    RepeatsAsTasters,

    /// <summary>Every taster gets the cups in the same order, and people without an answer favour a cup.</summary>
    OneOrder,

    /// <summary>The count is looked at after every fourth taster, and the panel stopped at the first difference.</summary>
    Peeking,
}

/// <summary>What each practice is called in a table.</summary>
public static class PracticeNames
{
    public static string InWords(this Practice practice) => practice switch
    {
        Practice.Honest => "honest",
        Practice.RepeatsAsRepeats => "repeats, read as repeats",
        Practice.Sequential => "sequential, as declared",
        Practice.RepeatsAsTasters => "repeats, counted as tasters",
        Practice.OneOrder => "one serving order",
        Practice.Peeking => "peeking",
        _ => throw new ArgumentOutOfRangeException(nameof(practice)),
    };

    /// <summary>Whether the error rates that were declared must hold.</summary>
    public static bool IsHonest(this Practice practice) => practice is Practice.Honest or Practice.RepeatsAsRepeats or Practice.Sequential;
}
