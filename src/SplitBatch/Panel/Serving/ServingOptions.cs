namespace SplitBatch.Panel.Serving;

/// <summary>How a panel is seated; change what differs with <c>with</c>.</summary>
public sealed record ServingOptions
{
    /// <summary>The panel's name in the trial folder.</summary>
    public string Panel { get; init; } = "main";

    /// <summary>How many sittings there are.</summary>
    public int Sessions { get; init; } = 1;

    /// <summary>How many servers carry trays in each sitting.</summary>
    public int Servers { get; init; } = 1;

    /// <summary>How many sets each taster gets in the whole panel.</summary>
    public int Replicates { get; init; } = 1;

    /// <summary>
    /// False: each taster comes to one sitting and gets all replicates there. True: every taster comes to every sitting and the
    /// replicates are shared out over the sittings.
    /// </summary>
    public bool EveryoneEachSession { get; init; }

    /// <summary>The tasters' names or numbers; null for T01, T02 and so on.</summary>
    public IReadOnlyList<string>? Tasters { get; init; }

    /// <summary>The servers' names; null for S1, S2 and so on.</summary>
    public IReadOnlyList<string>? ServerNames { get; init; }

    /// <summary>The beer that should show more of the named attribute, where the protocol fixes a direction.</summary>
    public Side Expected { get; init; } = Side.B;

    /// <summary>What "stronger" means in the taster's words, where the protocol names a property: the more "bitter" one.</summary>
    public string Attribute { get; init; } = "bitter";
}
