using UnitsNet;
using static System.FormattableString;

namespace SplitBatch.Panel;

/// <summary>How much of one beer a panel takes.</summary>
/// <param name="Beer">Which beer.</param>
/// <param name="Cups">Cups poured of it, those to learn the beer included.</param>
/// <param name="InCups">What the cups hold.</param>
/// <param name="WithSpare">What to have at hand.</param>
/// <param name="Containers">Whole containers to open; null where no container was named.</param>
public sealed record BeerNeeded(Side Beer, int Cups, Volume InCups, Volume WithSpare, int? Containers)
{
    /// <summary>What to have at hand, in the units of the pour: <c>2.07 L</c>, or <c>70 fl oz</c>.</summary>
    public string AtHand => Spoken.Cups(WithSpare);

    /// <summary>For example <c>beer A: 36 cups, 1.80 L in the cups, 2.07 L with spare (5 containers)</c>.</summary>
    public override string ToString() => Invariant(
        $"beer {Beer}: {Cups} cups, {Spoken.Cups(InCups)} in the cups, {AtHand} with spare{(Containers is { } n ? Invariant($" ({n} container{(n == 1 ? "" : "s")})") : "")}");
}
