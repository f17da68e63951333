namespace SplitBatch.Proof.Sealed;

/// <summary>What somebody does to a sealed plan once the ballots come in, so that the panel says what pleases.</summary>
public enum Cheat
{
    /// <summary>Counts by hand after each ballot, and closes the panel at the first difference.</summary>
    StopsAtADifference,

    /// <summary>Counts by hand after each ballot, and closes the panel as soon as the margin is ruled out.</summary>
    StopsWhenRuledOut,

    /// <summary>Looks after each ballot, says so as the tool asks, and closes the panel at the first difference.</summary>
    LooksAndStops,

    /// <summary>Waits for the last ballot, and puts into trial.json the smallest margin that the count rules out.</summary>
    MovesTheMargin,

    /// <summary>The same, and puts the change on record.</summary>
    MovesTheMarginOnRecord,

    /// <summary>Waits for the last ballot, and puts into trial.json an alpha at which the count shows a difference.</summary>
    MovesAlpha,

    /// <summary>Has a key for twice as many, and goes on after the last sealed ballot until a difference shows.</summary>
    GoesOn,

    /// <summary>Serves two panels, and lets the one decide that shows a difference.</summary>
    SwapsPanels,

    /// <summary>Asks for the more bitter beer, and expects afterwards the one that most tasters named.</summary>
    TurnsTheQuestion,
}

/// <summary>What each is called in a table.</summary>
public static class CheatNames
{
    public static string InWords(this Cheat cheat) => cheat switch
    {
        Cheat.StopsAtADifference => "stops at the first difference",
        Cheat.StopsWhenRuledOut => "stops as soon as the margin is ruled out",
        Cheat.LooksAndStops => "looks, says so, and stops at the first difference",
        Cheat.MovesTheMargin => "moves the margin afterwards",
        Cheat.MovesTheMarginOnRecord => "moves the margin afterwards, on record",
        Cheat.MovesAlpha => "raises alpha afterwards",
        Cheat.GoesOn => "goes on until a difference shows",
        Cheat.SwapsPanels => "lets the panel decide that shows a difference",
        Cheat.TurnsTheQuestion => "turns the question round afterwards",
        _ => throw new ArgumentOutOfRangeException(nameof(cheat)),
    };
}
