using SplitBatch.Numbers;
using SplitBatch.Panel.Counting;

namespace SplitBatch.Panel.Liking;

/// <summary>Whom tasters preferred, among all or among those who answered right.</summary>
/// <param name="Group">Whose preferences.</param>
/// <param name="Test">The counts and their test.</param>
/// <param name="AdjustedPValue">The p-value after Holm's correction over all questions asked of the panel.</param>
public sealed record PreferenceAmong(RatingGroup Group, PreferenceTest Test, double AdjustedPValue)
{
    /// <summary>Whether a preference is shown after the correction.</summary>
    public bool PreferenceShown => ExactBinomial.Reaches(AdjustedPValue, Test.Alpha);

    /// <summary>
    /// For example <c>preference, all tasters: 11 for B, 6 for A, 1 without one: no preference shown (p = 0.33, corrected 1.00), which
    /// does not mean that both are liked alike</c>.
    /// </summary>
    public override string ToString()
    {
        var outcome = PreferenceShown ? $"a preference for {(Test.ForB > Test.ForA ? "B" : "A")} is shown" : "no preference shown";
        return $"preference, {(Group == RatingGroup.All ? "all tasters" : "tasters who were right (some by guessing)")}: {Test.ForB} for "
            + $"B, {Test.ForA} for A{(Test.None == 0 ? "" : $", {Test.None} without one")}: "
            + $"{outcome} ({Printed.PValue(Test.PValue)}, corrected for all questions "
            + $"{Printed.PValue(AdjustedPValue)}){(PreferenceShown ? "" : ", which does not mean that both are liked alike")}.";
    }
}

/// <summary>One taster's preference.</summary>
/// <param name="Beer">The beer of the cup that was liked best; null for none.</param>
/// <param name="WasCorrect">Whether the taster's answer to the difference question was right.</param>
/// <param name="CupsB">The share of cups B among the cups to choose from: one half in a pair, one third in a set AAB.</param>
public sealed record Preference(Side? Beer, bool WasCorrect, double CupsB = 0.5)
{
    /// <summary>Whether more of the cups were one beer than the other.</summary>
    public bool IsUneven => Math.Abs(CupsB - 0.5) > 1e-9;
}

/// <summary>
/// Everything that a panel was asked beside the difference: intensities, liking, preference; corrected together for the number of
/// questions.
/// </summary>
/// <param name="Ratings">Each attribute among all tasters and among those who answered right.</param>
/// <param name="Preferences">The preference among the same two groups; empty where none was asked.</param>
/// <param name="Questions">How many questions were asked together.</param>
public sealed record RatingReport(IReadOnlyList<RatingComparison> Ratings, IReadOnlyList<PreferenceAmong> Preferences, int Questions)
{
    /// <summary>Compares both beers on every question, with Holm's correction over all of them.</summary>
    /// <param name="ratings">Ratings of any number of attributes.</param>
    /// <param name="preferences">Each taster's preferred beer (null: none) and whether the taster answered right; empty where it was not
    /// asked.</param>
    /// <param name="level">Level of the intervals, above 0 and below 1.</param>
    /// <exception cref="ArgumentException">A taster rated an attribute twice, or a rating is not a finite number.</exception>
    public static RatingReport Of(IEnumerable<Rating> ratings, IEnumerable<(Side? Beer, bool WasCorrect)> preferences,
        double level = 0.95) =>
            Of(ratings, preferences?.Select(one => new Preference(one.Beer, one.WasCorrect))
                ?? throw new ArgumentNullException(nameof(preferences)), level);

    /// <summary>
    /// Compares both beers on every question, with Holm's correction over all of them. A preference among uneven cups is not read of
    /// those who were right: lucky guessers are among them.
    /// </summary>
    /// <param name="ratings">Ratings of any number of attributes.</param>
    /// <param name="preferences">Each taster's preference; empty where it was not asked.</param>
    /// <param name="level">Level of the intervals, above 0 and below 1.</param>
    /// <exception cref="ArgumentException">A taster rated an attribute twice, or a rating is not a finite number.</exception>
    public static RatingReport Of(IEnumerable<Rating> ratings, IEnumerable<Preference> preferences, double level = 0.95)
    {
        ArgumentNullException.ThrowIfNull(ratings);
        ArgumentNullException.ThrowIfNull(preferences);
        var rated = RatingComparison.OfAll(ratings, level);
        Preference[] asked = [.. preferences];
        var uneven = asked.Any(one => one.IsUneven);
        var preferred = (uneven ? new[] { RatingGroup.All } : [RatingGroup.All, RatingGroup.Correct])
            .Select(group => (group, rows: asked.Where(p => group == RatingGroup.All || p.WasCorrect).ToArray()))
            .Where(pair => pair.rows.Length > 0)
            .Select(pair =>
                (pair.group,
                    Test: PreferenceTest.Of(pair.rows.Count(p => p.Beer == Side.A), pair.rows.Count(p => p.Beer == Side.B),
                        pair.rows.Count(p => p.Beer is null)) with
                    {
                        AmongUneven = uneven,
                        CupsB = uneven ? [.. pair.rows.Where(p => p.Beer is not null).Select(p => p.CupsB)] : [],
                    }))
            .ToArray();
        var adjusted = Holm.Adjust([.. rated.Select(r => r.Ranks.PValue), .. preferred.Select(p => p.Test.PValue)]);
        return new(
            [.. rated.Select((r, i) => r with { AdjustedPValue = adjusted[i], Questions = adjusted.Count })],
            [.. preferred.Select((p, i) => new PreferenceAmong(p.group, p.Test, adjusted[rated.Count + i]))],
            adjusted.Count);
    }

    /// <summary>The questions in which a difference is shown after the correction, or that there are none.</summary>
    public override string ToString()
    {
        string[] shown = [.. Ratings.Where(r => r.AdjustedPValue <= 0.05).Select(r => r.ToString()),
            .. Preferences.Where(p => p.PreferenceShown).Select(p => p.ToString())];
        return shown.Length > 0
            ? string.Join(Environment.NewLine, shown)
            : $"{Questions} questions beside the difference: nothing is shown after correction for asking so many, which does not mean "
                + $"that there is nothing.";
    }
}
