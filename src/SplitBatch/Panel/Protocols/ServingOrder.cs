namespace SplitBatch.Panel.Protocols;

/// <summary>
/// The beers of one set in the order in which they are tasted, for example <c>ABB</c>; a named reference stands before a colon,
/// <c>A:BA</c>.
/// </summary>
public sealed class ServingOrder : IEquatable<ServingOrder>
{
    /// <summary>Reads an order.</summary>
    /// <param name="text">Letters A and B, with one letter and a colon in front where the set opens with a named reference.</param>
    /// <exception cref="ArgumentException">The text holds anything else.</exception>
    public ServingOrder(string text)
    {
        Text = Guard.NotBlank(text);
        int colon = text.IndexOf(':', StringComparison.Ordinal);
        if (colon is not (-1 or 1) || text.Length == colon + 1 || text.Where((_, i) => i != colon).Any(c => c is not ('A' or 'B')))
            throw new ArgumentException($"\"{text}\" is not a serving order; write the beers in order as in ABB, or A:BA where the first "
                + $"is the named reference.", nameof(text));
        Reference = colon == 1 ? ToSide(text[0]) : null;
        Sides = [.. text[(colon + 1)..].Select(ToSide)];
        int a = Beers.Count(beer => beer == Side.A), b = Beers.Count - a;
        IsMixed = a > 0 && b > 0;
        OddBeer = a == b ? null : a < b ? Side.A : Side.B;
        OddPosition = Math.Min(a, b) == 1 && Beers.Count > 2 ? Beers.ToList().FindIndex(beer => beer == OddBeer) + 1 : null;
    }

    /// <summary>The order as text.</summary>
    public string Text { get; }

    /// <summary>The beer of the named reference that opens the set, or null where the protocol has none.</summary>
    public Side? Reference { get; }

    /// <summary>The coded cups in order; position 1 is the first.</summary>
    public IReadOnlyList<Side> Beers => Sides;

    internal Side[] Sides { get; }

    /// <summary>The beer of which there are fewer coded cups; null where there are as many of each.</summary>
    public Side? OddBeer { get; }

    /// <summary>Where the single cup of the odd beer stands, from 1; null where no beer stands alone among three or more.</summary>
    public int? OddPosition { get; }

    /// <summary>Whether both beers are among the coded cups.</summary>
    public bool IsMixed { get; }

    /// <inheritdoc/>
    public bool Equals(ServingOrder? other) => other is not null && other.Text == Text;

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as ServingOrder);

    /// <inheritdoc/>
    public override int GetHashCode() => Text.GetHashCode(StringComparison.Ordinal);

    /// <summary>The order as text.</summary>
    public override string ToString() => Text;

    private static Side ToSide(char letter) => letter == 'A' ? Side.A : Side.B;
}
