using System.Globalization;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Planning;

/// <summary>
/// The smallest difference that would matter, declared before pouring: as a share of tasters in the declared task, or as d-prime.
/// </summary>
/// <remarks>
/// A share of tasters who can tell belongs to the task: the same d-prime of 1 is a share of 13 % in a triangle, 24 % in a tetrad and 52 %
/// in a directional pair. So the margin says how it was declared, and every protocol gives the other figure. From one to the other it is
/// assumed that perception scatters normally and equally for both beers, that tasters are alike, and that they use the protocol's usual
/// rule of decision.
/// <para>Ref. D. M. Ennis (1993), The power of sensory discrimination methods, J. Sensory Studies 8, 353 (from memory); that the share
/// belongs to the method: Rousseau, Ennis and Ennis (2013), abstract read.</para>
/// </remarks>
public sealed record DeclaredMargin
{
    private readonly double value;

    private DeclaredMargin(double value, bool isDPrime) => (this.value, IsDPrime) = (value, isDPrime);

    /// <summary>Whether it was declared as d-prime; otherwise as a share in the task.</summary>
    public bool IsDPrime { get; }

    /// <summary>A share of tasters who can tell, in the task that is served.</summary>
    /// <param name="discriminators">Above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside.</exception>
    public static DeclaredMargin OfShare(double discriminators) => new(Guard.OpenShare(discriminators), isDPrime: false);

    /// <summary>A distance between the beers in units of the noise of one tasting, the same for every protocol.</summary>
    /// <param name="dPrime">In [0.05, 6]: below, no panel could rule it out; above, nobody would need a panel.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside.</exception>
    public static DeclaredMargin OfDPrime(double dPrime) => new(Guard.InRange(dPrime, 0.05, 6), isDPrime: true);

    /// <summary>The share of tasters who can tell that the margin is in a protocol.</summary>
    /// <param name="protocol">A protocol with a known guessing chance.</param>
    /// <exception cref="NotApplicableException">The protocol has no known guessing chance.</exception>
    public double ShareIn(Protocol protocol) => IsDPrime ? Checked(protocol).Discriminators(protocol.CorrectShare(value)) : value;

    /// <summary>The d-prime that the margin is in a protocol, if tasters are alike.</summary>
    /// <inheritdoc cref="ShareIn"/>
    public double DPrimeIn(Protocol protocol) => IsDPrime ? value : Checked(protocol).DPrime(protocol.CorrectFromDiscriminators(value));

    /// <summary>The share of right answers at the margin.</summary>
    /// <inheritdoc cref="ShareIn"/>
    public double CorrectIn(Protocol protocol) =>
        IsDPrime ? Checked(protocol).CorrectShare(value) : Checked(protocol).CorrectFromDiscriminators(value);

    /// <summary>The share of answers for the expected beer at a margin the other way round: below chance.</summary>
    /// <param name="protocol">A protocol that fixes a direction.</param>
    /// <exception cref="NotApplicableException">The protocol fixes no direction.</exception>
    public double CorrectReversedIn(Protocol protocol)
    {
        var reversed = Checked(protocol).CorrectShareReversed(IsDPrime ? value : 0);
        return IsDPrime ? reversed : reversed * (1 - value);
    }

    /// <summary>The share of tasters who can tell and find the beers the other way round that a margin the other way round is.</summary>
    /// <inheritdoc cref="CorrectReversedIn"/>
    public double ShareReversedIn(Protocol protocol) => 1 - (CorrectReversedIn(protocol) / protocol.Chance);

    /// <summary>For example <c>30 % of tasters in the task</c> or <c>d-prime 1</c>.</summary>
    public override string ToString() =>
        IsDPrime ? $"d-prime {Printed.Chosen(value)}" : $"{Printed.ChosenPercent(value)} of tasters in the task";

    private static Protocol Checked(Protocol protocol)
    {
        ArgumentNullException.ThrowIfNull(protocol);
        _ = protocol.Chance; // Refuses a protocol without one.
        return protocol;
    }
}
