using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Planning;

/// <summary>How many tasters a panel needs, told in two ways, because power saws as the panel grows.</summary>
/// <param name="Protocol">The protocol.</param>
/// <param name="Aim">What the panel is to show.</param>
/// <param name="Error">Largest chance of wrongly showing it: alpha for a difference, beta for similarity.</param>
/// <param name="Power">The chance of showing it that is wanted.</param>
/// <param name="Discriminators">The share of discriminators: the true one for a difference, the margin to be ruled out for
/// similarity.</param>
/// <param name="First">The first size that reaches the power. A slightly larger panel may miss it again.</param>
/// <param name="Always">The size from which every larger panel reaches it.</param>
public sealed record TastersNeeded(
    Protocol Protocol, Aim Aim, double Error, double Power, double Discriminators, int First, int Always)
{
    /// <summary>
    /// For example <c>triangle: 40 tasters to show a difference when 30 % are discriminators (error 5 %, power 80 %); from 42 on
    /// always.</c>
    /// </summary>
    public override string ToString()
    {
        if (Aim == Aim.Either)
        {
            return $"{Protocol.Name}: {Always} tasters or more settle it, whatever they answer: every count then either shows a "
                + $"difference (error {Printed.ChosenPercent(Error)}) or rules out {Printed.ChosenPercent(Discriminators)} discriminators "
                + $"(error {Printed.ChosenPercent(1 - Power)})."
                + $"{(First == Always ? "" : $" {First} can do it too, but not every number in between.")}";
        }

        var aim = Aim == Aim.Difference
            ? $"to show a difference when {Printed.ChosenPercent(Discriminators)} are discriminators"
            : $"to rule out {Printed.ChosenPercent(Discriminators)} or more discriminators when there are none";
        return $"{Protocol.Name}: {First} tasters {aim} (error {Printed.ChosenPercent(Error)}, power {Printed.ChosenPercent(Power)}); "
            + (First == Always ? "every larger panel does too."
                : $"power rises in a saw-tooth, and from {Always} on it is always reached.");
    }
}

/// <summary>What a panel is to show.</summary>
public enum Aim
{
    /// <summary>That there is a difference.</summary>
    Difference,

    /// <summary>That any difference is smaller than the margin.</summary>
    Similarity,

    /// <summary>The one or the other, whatever the count.</summary>
    Either,
}
