using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Serving;

/// <summary>One set of cups as one taster gets it: the unit that a ballot answers.</summary>
/// <param name="Number">The set's number, from 1, unique in the panel and printed on tray and ballot.</param>
/// <param name="Session">The sitting it is served in, from 1.</param>
/// <param name="Server">Who carries it, and does not know the beers.</param>
/// <param name="Taster">Who tastes it.</param>
/// <param name="Replicate">Which of the taster's sets this is, from 1.</param>
/// <param name="Order">The beers in order.</param>
/// <param name="Cups">The cups in tasting order, a named reference first.</param>
public sealed record ServedSet(
    int Number, int Session, string Server, string Taster, int Replicate, ServingOrder Order, IReadOnlyList<Cup> Cups)
{
    /// <summary>The cups that carry a code and are judged.</summary>
    public IEnumerable<Cup> CodedCups => Cups.Where(cup => !cup.IsReference);

    /// <summary>The coded cup with this code, or null where the set has none.</summary>
    public Cup? Find(string code) => CodedCups.FirstOrDefault(cup => cup.Code == code);

    /// <summary>Set, taster and codes; the beers stay out, so that the line can be read aloud in the room.</summary>
    public override string ToString() => $"set {Number} for {Taster}: {string.Join(", ", Cups.Select(cup => cup.Code))}";
}

/// <summary>One cup of a set.</summary>
/// <param name="Position">The place in the tasting order, from 1; 0 is the named reference that opens a set.</param>
/// <param name="Code">The three digits on the cup; <see cref="ReferenceCode"/> on a named reference.</param>
/// <param name="Beer">What is in it.</param>
public sealed record Cup(int Position, string Code, Side Beer)
{
    /// <summary>What stands on a named reference in place of a code.</summary>
    public const string ReferenceCode = "REF";

    /// <summary>Whether this is the named reference, which is not judged.</summary>
    public bool IsReference => Position == 0;
}
