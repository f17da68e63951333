namespace SplitBatch.Panel.Protocols;

/// <summary>The serving orders of each protocol, every one to be used equally often.</summary>
/// <remarks>
/// Triangle: ABB BAB BBA AAB ABA BAA (ISO 4120). Duo-trio: the reference, then AB or BA (ISO 10399). Paired: AB, BA (ISO 5495).
/// The others are all arrangements of their cups.
/// </remarks>
public static class ServingOrders
{
    /// <summary>The orders of a protocol.</summary>
    /// <param name="protocol">The protocol.</param>
    /// <param name="expected">The beer that should show more of the named attribute; only a three-alternative forced choice depends on
    /// it.</param>
    public static IReadOnlyList<ServingOrder> For(Protocol protocol, Side expected = Side.B) => SetDesign.For(protocol, expected).Orders;

    /// <summary>A single cup of either beer.</summary>
    internal static IReadOnlyList<ServingOrder> Single { get; } = [new("A"), new("B")];

    /// <summary>Two cups, the same or different.</summary>
    internal static IReadOnlyList<ServingOrder> Pairs { get; } = [new("AA"), new("BB"), new("AB"), new("BA")];

    /// <summary>Both orders of two coded cups after each of the references.</summary>
    internal static IReadOnlyList<ServingOrder> WithReference(params ReadOnlySpan<Side> references)
    {
        List<ServingOrder> orders = [];
        foreach (var side in references) orders.AddRange([new($"{side}:AB"), new($"{side}:BA")]);
        return orders;
    }

    /// <summary>Every arrangement of so many cups of A and of B, for each make-up given as a pair of counts.</summary>
    internal static IReadOnlyList<ServingOrder> Arrangements(params int[] counts) =>
        [.. counts.Chunk(2).SelectMany(pair => Arrange(pair[0], pair[1])).Select(text => new ServingOrder(text))];

    private static IEnumerable<string> Arrange(int a, int b)
    {
        if (a == 0 && b == 0) yield return "";
        if (a > 0)
        {
            foreach (string rest in Arrange(a - 1, b)) yield return "A" + rest;
        }
        if (b > 0)
        {
            foreach (string rest in Arrange(a, b - 1)) yield return "B" + rest;
        }
    }
}
