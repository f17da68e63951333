namespace SplitBatch.Panel.Planning;

/// <summary>How many people it takes before any number of sets can rule a margin out.</summary>
/// <remarks>
/// If a share m of all people can tell, a panel of n holds none of them with the chance (1 - m)^n, and then answers as guessers do. So
/// whatever rule is used, guessers who are to be believed in a share P of panels mislead in at least P (1 - m)^n of those where the
/// margin is true. Derived in the project; no source is needed.
/// </remarks>
public static class FewPeople
{
    /// <summary>
    /// The fewest people of whom at least one can tell, but for a chance of <paramref name="beta"/>, if the margin is true: below it no
    /// valid rule reaches full power.
    /// </summary>
    /// <param name="margin">The share of tasters who would matter, above 0 and below 1.</param>
    /// <param name="beta">The chance of ruling it out although it is true, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static int Needed(double margin, double beta = 0.05)
    {
        Guard.OpenShare(margin);
        Guard.OpenShare(beta);
        var people = Math.Log(beta) / Math.Log(1 - margin);
        return Math.Max(1, (int)Math.Ceiling(people - 1e-9));
    }

    /// <summary>
    /// The largest chance that any valid rule can have to rule the margin out when everybody guesses: beta / (1 - m)^n, at most 1.
    /// </summary>
    /// <param name="people">At least 1.</param>
    /// <param name="margin">The share of tasters who would matter, above 0 and below 1.</param>
    /// <param name="beta">The chance of ruling it out although it is true, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static double PowerCap(int people, double margin, double beta = 0.05) => Math.Min(
        1, Guard.OpenShare(beta) / ChanceOfNobody(people, margin));

    /// <summary>The chance that a panel holds nobody who can tell, if the margin is true.</summary>
    /// <param name="people">At least 1.</param>
    /// <param name="margin">The share of tasters who would matter, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static double ChanceOfNobody(int people, double margin) => Math.Pow(1 - Guard.OpenShare(margin), Guard.Positive(people));
}
