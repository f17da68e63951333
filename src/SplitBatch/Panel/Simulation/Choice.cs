using SplitBatch.Panel.Ballots;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Simulation;

/// <summary>What a simulated taster decided: one cup, two cups, or the first of two words (A, same).</summary>
/// <param name="One">The cup named, from 0; -1 for a word.</param>
/// <param name="Other">The second cup named, or -1.</param>
/// <param name="FirstWord">Whether the word is A or same rather than not A or different.</param>
internal readonly record struct Choice(int One, int Other, bool FirstWord)
{
    internal static Choice Cup(int cup) => new(cup, -1, false);

    internal static Choice Word(bool first) => new(-1, -1, first);

    /// <summary>The answer as it would be written.</summary>
    internal string Write(IReadOnlyList<string> codes, SetDesign design) =>
        Other >= 0 ? $"{codes[One]} {codes[Other]}"
        : One >= 0 ? codes[One]
        : design.Answer == AnswerKind.OwnOrNot ? FirstWord ? "A" : "not A"
        : FirstWord ? "same" : "different";

    /// <summary>Whether it is right; the same judgement as <see cref="TasterAnswer"/> passes on what is written.</summary>
    internal bool IsRight(ServingOrder order, SetDesign design, Side expected) => design.Answer switch
    {
        AnswerKind.OddCup => order.Sides[One] == order.OddBeer,
        AnswerKind.MatchingCup => order.Sides[One] == order.Reference,
        AnswerKind.StrongerCup => order.Sides[One] == expected,
        AnswerKind.Pair => order.Sides[One] == order.Sides[Other] && (order.OddBeer is not { } odd || order.Sides[One] == odd),
        _ => FirstWord != design.Differs(order),
    };
}
