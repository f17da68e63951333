using System.Globalization;
using SplitBatch.Numbers;

namespace SplitBatch.Panel.Protocols;

/// <summary>
/// A way of putting one question to a taster about two beers: what is poured, what is asked, and how often a guess is right.
/// </summary>
/// <remarks>
/// Choose one of the named protocols (<see cref="Triangle"/>, <see cref="Tetrad"/> ...) or read its name with <see cref="Parse"/>.
/// The psychometric function ties three measures of the same difference: the share of correct answers, the share of discriminators
/// (those who truly tell the beers apart; the rest guess, ISO 4120 and 10399), and d-prime (the distance between the two beers' mean
/// intensities in units of the noise of one tasting, Thurstone). Only d-prime can be compared between protocols.
/// </remarks>
public abstract class Protocol
{
    private protected Protocol(string name, params string[] otherNames)
    {
        Name = name;
        OtherNames = otherNames;
    }

    /// <summary>Three cups, two alike: which is the odd one?</summary>
    public static Protocol Triangle { get; } = new TriangleProtocol();

    /// <summary>A reference and two cups: which matches? Each beer is the reference for half of the tasters.</summary>
    public static Protocol DuoTrio { get; } = new DuoTrioProtocol(constant: false);

    /// <summary>A reference and two cups: which matches? The same beer, one the tasters know, is always the reference.</summary>
    public static Protocol DuoTrioConstantReference { get; } = new DuoTrioProtocol(constant: true);

    /// <summary>Four cups, two of each: sort them into two pairs.</summary>
    public static Protocol Tetrad { get; } = new TetradProtocol();

    /// <summary>
    /// Two cups: which has more of a named property? The expected answer was fixed beforehand, so the test is one-sided.
    /// </summary>
    public static Protocol PairedDirectional { get; } = new PairedProtocol(sides: 1);

    /// <summary>
    /// Two cups: which has more of a named property (or which is preferred)? Either answer would count, so the test is two-sided.
    /// </summary>
    public static Protocol PairedTwoSided { get; } = new PairedProtocol(sides: 2);

    /// <summary>Three cups, two alike: which has most of a named property?</summary>
    public static Protocol ThreeAfc { get; } = new ThreeAfcProtocol();

    /// <summary>Five cups, two of one beer and three of the other: which two belong together?</summary>
    public static Protocol TwoOutOfFive { get; } = new TwoOutOfFiveProtocol();

    /// <summary>One cup at a time after learning A: is this A or not?</summary>
    public static Protocol ANotA { get; } = new ANotAProtocol();

    /// <summary>Two cups, alike for half of the sets: same or different?</summary>
    public static Protocol SameDifferent { get; } = new SameDifferentProtocol();

    /// <summary>Every protocol, in the order of the choosing table.</summary>
    public static IReadOnlyList<Protocol> All { get; } =
    [
        Triangle, DuoTrio, DuoTrioConstantReference, Tetrad, PairedDirectional, PairedTwoSided, ThreeAfc, TwoOutOfFive, ANotA,
        SameDifferent,
    ];

    /// <summary>The name used in plans, tables and files, for example <c>triangle</c>.</summary>
    public string Name { get; }

    /// <summary>Other spellings that <see cref="Parse"/> accepts.</summary>
    public IReadOnlyList<string> OtherNames { get; }

    /// <summary>The question the protocol answers about the two beers.</summary>
    public abstract string Question { get; }

    /// <summary>What the taster is asked to do with one set.</summary>
    public abstract string Task { get; }

    /// <summary>When to choose it, and what it costs.</summary>
    public abstract string Advice { get; }

    /// <summary>Cups poured for one set, the reference included.</summary>
    public abstract int Pours { get; }

    /// <summary>1 when only one direction counts as a difference, 2 when either does.</summary>
    public virtual int Sides => 1;

    /// <summary>Whether the property that differs has to be named on the ballot.</summary>
    public virtual bool NamesTheProperty => false;

    /// <summary>
    /// Whether the expected answer was fixed beforehand, so that a count far below chance means the opposite difference and not only bad
    /// luck.
    /// </summary>
    public bool IsDirected => NamesTheProperty && Sides == 1;

    /// <summary>
    /// Whether a guess is right with a known chance. False for A/not-A and same/different, where it depends on each taster's own line
    /// between yes and no.
    /// </summary>
    public virtual bool HasKnownChance => true;

    /// <summary>The chance that a pure guess is right, as a share.</summary>
    /// <exception cref="NotApplicableException">The protocol has no known chance; see <see cref="HasKnownChance"/>.</exception>
    public virtual double Chance => throw new NotApplicableException(
        $"The {Name} protocol has no known guessing chance; use YesNoTest, which compares the answers to the two kinds of cup.");

    /// <summary>The psychometric function: the share of correct answers at a given d-prime.</summary>
    /// <param name="dPrime">Zero or more, no unit. For A/not-A and same/different the taster is taken to draw the line where most answers
    /// are right.</param>
    /// <returns>A share from <see cref="Chance"/> up to 1.</returns>
    /// <exception cref="ArgumentOutOfRangeException">d-prime is negative or not a finite number.</exception>
    public double CorrectShare(double dPrime) => Correct(Guard.NotNegative(dPrime));

    /// <summary>The share of answers for the expected beer if the beers stand the other way round: at most <see cref="Chance"/>.</summary>
    /// <param name="dPrime">The size of the difference, zero or more, no unit.</param>
    /// <exception cref="ArgumentOutOfRangeException">d-prime is negative or not a finite number.</exception>
    /// <exception cref="NotApplicableException">The protocol fixes no direction; see <see cref="IsDirected"/>.</exception>
    public double CorrectShareReversed(double dPrime) => IsDirected
        ? Correct(-Guard.NotNegative(dPrime))
        : throw new NotApplicableException($"The {Name} protocol has no direction, so its beers cannot stand the other way round.");

    /// <summary>How fast the share of correct answers rises with d-prime.</summary>
    /// <param name="dPrime">Zero or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">d-prime is negative or not a finite number.</exception>
    public double Slope(double dPrime) => Rise(Guard.NotNegative(dPrime));

    /// <summary>The d-prime at which the given share of answers is correct: 0 at or below chance, infinite at 1.</summary>
    /// <param name="correctShare">A share in [0, 1].</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is not a share.</exception>
    public double DPrime(double correctShare)
    {
        Guard.Share(correctShare);
        if (correctShare <= Correct(0)) return 0;
        if (correctShare >= 1) return double.PositiveInfinity;
        const double largest = 40;
        return correctShare >= Correct(largest) ? largest : Root.Of(d => Correct(d) - correctShare, 0, largest);
    }

    /// <summary>
    /// The share of correct answers when a share of the tasters truly tell the beers apart and the rest guess: pd + chance (1 - pd).
    /// </summary>
    /// <param name="discriminators">A share in [0, 1].</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is not a share.</exception>
    /// <exception cref="InvalidOperationException">The protocol has no known chance.</exception>
    public double CorrectFromDiscriminators(double discriminators) =>
        Guard.Share(discriminators) + (Chance * (1 - discriminators));

    /// <summary>The share of discriminators behind a share of correct answers, 0 at or below chance.</summary>
    /// <param name="correctShare">A share in [0, 1].</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is not a share.</exception>
    /// <exception cref="InvalidOperationException">The protocol has no known chance.</exception>
    public double Discriminators(double correctShare) =>
        Math.Max(0, (Guard.Share(correctShare) - Chance) / (1 - Chance));

    /// <summary>Reads a protocol's name, ignoring case, spaces and dashes.</summary>
    /// <param name="name">For example <c>triangle</c>, <c>Duo-Trio</c>, <c>3-AFC</c>.</param>
    /// <exception cref="ArgumentException">The name is not known; the message gives the nearest names.</exception>
    public static Protocol Parse(string name) => TryParse(name, out var protocol, out var problem)
        ? protocol
        : throw new ArgumentException(problem, nameof(name));

    /// <summary>Reads a protocol's name without throwing.</summary>
    /// <param name="name">As for <see cref="Parse"/>.</param>
    /// <param name="protocol">The protocol, where the name is known.</param>
    /// <param name="problem">What is wrong and which names are near, where it is not.</param>
    public static bool TryParse(
        string? name,
        [System.Diagnostics.CodeAnalysis.NotNullWhen(true)] out Protocol? protocol,
        [System.Diagnostics.CodeAnalysis.NotNullWhen(false)] out string? problem)
    {
        var plain = ProtocolNames.Plain(name);
        protocol = All.FirstOrDefault(p => p.OtherNames.Prepend(p.Name).Any(n => ProtocolNames.Plain(n) == plain));
        problem = protocol is null ? ProtocolNames.Help(name) : null;
        return protocol is not null;
    }

    /// <summary>For example <c>triangle (3 cups, 33.3 % by guessing)</c>.</summary>
    public override string ToString() => HasKnownChance
        ? string.Create(CultureInfo.InvariantCulture, $"{Name} ({Cups}, {Printed.Percent(Chance)} by guessing)")
        : $"{Name} ({Cups}, no known guessing chance)";

    private string Cups => Pours == 1 ? "1 cup" : $"{Pours} cups";

    private protected abstract double Correct(double d);

    private protected abstract double Rise(double d);
}
