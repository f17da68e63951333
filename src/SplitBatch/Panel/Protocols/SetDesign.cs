namespace SplitBatch.Panel.Protocols;

/// <summary>How one set of a protocol is poured and answered: the cups, the orders, and what the taster writes.</summary>
/// <param name="Orders">Every serving order, each to be used equally often.</param>
/// <param name="Answer">What the taster writes.</param>
/// <param name="Task">The task as the taster reads it.</param>
public sealed record SetDesign(IReadOnlyList<ServingOrder> Orders, AnswerKind Answer, string Task)
{
    /// <summary>The coded cups in one set.</summary>
    public int CodedCups => Orders[0].Beers.Count;

    /// <summary>All the cups in one set, a named reference included.</summary>
    public int Cups => CodedCups + (Orders[0].Reference is null ? 0 : 1);

    /// <summary>Whether an answer names cups by their codes; otherwise it is a word.</summary>
    public bool AnswersByCode => Answer is not (AnswerKind.OwnOrNot or AnswerKind.SameOrDifferent);

    /// <summary>How many codes an answer names; zero where it is a word.</summary>
    public int CodesInAnswer => Answer == AnswerKind.Pair ? 2 : AnswersByCode ? 1 : 0;

    /// <summary>
    /// For A/not-A and same/different: whether a set holds the difference that is asked for, a beer other than the known one or two
    /// different beers.
    /// </summary>
    /// <param name="order">The set's serving order.</param>
    public bool Differs(ServingOrder order)
    {
        ArgumentNullException.ThrowIfNull(order);
        return Answer == AnswerKind.OwnOrNot ? order.Beers[0] == Side.B : order.IsMixed;
    }

    /// <summary>The set of a protocol.</summary>
    /// <param name="protocol">The protocol.</param>
    /// <param name="expected">The beer that should show more of the named attribute, where the protocol fixes a direction.</param>
    /// <param name="attribute">What "stronger" means, in the taster's words.</param>
    public static SetDesign For(Protocol protocol, Side expected = Side.B, string attribute = "bitter")
    {
        ArgumentNullException.ThrowIfNull(protocol);
        Guard.NotBlank(attribute);
        return protocol.Name switch
        {
            "triangle" => new(ServingOrders.Arrangements(1, 2, 2, 1), AnswerKind.OddCup,
                "Two of these three cups hold the same beer. Taste from left to right and pick the odd one. Guess if you must."),
            "duo-trio" => new(ServingOrders.WithReference(Side.A, Side.B), AnswerKind.MatchingCup,
                "Taste the reference first, then the two coded cups. Pick the cup that holds the same beer as the reference. Guess if "
                    + "you must."),
            "duo-trio constant reference" => new(ServingOrders.WithReference(Side.A), AnswerKind.MatchingCup,
                "Taste the reference first, then the two coded cups. Pick the cup that holds the same beer as the reference. Guess if "
                    + "you must."),
            "tetrad" => new(ServingOrders.Arrangements(2, 2), AnswerKind.Pair,
                "These four cups are two pairs of the same beer. Taste from left to right and pick the two cups of one pair. Guess if "
                    + "you must."),
            "paired directional" or "paired two-sided" => new(ServingOrders.Arrangements(1, 1), AnswerKind.StrongerCup,
                $"Taste both cups from left to right and pick the more {attribute} one. Guess if you must."),
            "3-AFC" =>
                new(expected == Side.B ? ServingOrders.Arrangements(2, 1) : ServingOrders.Arrangements(1, 2), AnswerKind.StrongerCup,
                    $"Taste the three cups from left to right and pick the most {attribute} one. Guess if you must."),
            "two-out-of-five" => new(ServingOrders.Arrangements(2, 3, 3, 2), AnswerKind.Pair,
                "Two of these five cups hold one beer, three the other. Taste from left to right and pick the two. Guess if you must."),
            "A-not-A" => new(ServingOrders.Single, AnswerKind.OwnOrNot,
                "You have tasted beer A before. Taste this cup and say A if it is that beer, or not A if it is not. Guess if you must."),
            "same-different" => new(ServingOrders.Pairs, AnswerKind.SameOrDifferent,
                "Taste both cups from left to right and say same if they hold the same beer, or different if they do not. Guess if "
                    + "you must."),
            _ => throw new ArgumentException($"No serving orders are known for {protocol.Name}.", nameof(protocol)),
        };
    }
}

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
