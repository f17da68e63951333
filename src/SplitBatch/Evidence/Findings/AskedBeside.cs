using SplitBatch.Panel;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;
using SplitBatch.Panel.Liking;

namespace SplitBatch.Evidence.Findings;

/// <summary>How tasters rated one attribute of both beers.</summary>
public sealed record RatingCompared : PanelFinding
{
    internal RatingCompared(CountedPlan plan, RatingComparison comparison)
        : base(plan, ["rating", comparison.Attribute, .. comparison.Group == RatingGroup.All ? Array.Empty<string>() : ["right"]]) =>
            Comparison = comparison;

    /// <summary>The comparison with its test and interval.</summary>
    public RatingComparison Comparison { get; }

    /// <summary>The level that the corrected p-value is held against.</summary>
    public const double Level = 0.05;

    /// <summary>Whether a difference is shown after the correction for the number of questions.</summary>
    public bool IsShown => Comparison.AdjustedPValue <= Level;
}

/// <summary>The half that tasters like best: another question than whether they can tell.</summary>
public sealed record PreferenceCounted : PanelFinding
{
    internal PreferenceCounted(CountedPlan plan, PreferenceAmong preference, int questions)
        : base(plan, ["preference", .. preference.Group == RatingGroup.All ? Array.Empty<string>() : ["right"]]) =>
            (Preference, Questions) = (preference, questions);

    /// <summary>The counts and their test.</summary>
    public PreferenceAmong Preference { get; }

    /// <summary>How many questions were asked of the panel together.</summary>
    public int Questions { get; }
}

/// <summary>The words that tasters used of either half.</summary>
public sealed record WordsTallied : PanelFinding
{
    internal WordsTallied(CountedPlan plan, CommentTally tally)
        : base(plan, "words") => Tally = tally;

    /// <summary>The tally.</summary>
    public CommentTally Tally { get; }

    /// <summary>The level that the corrected p-values are held against.</summary>
    public const double Level = 0.05;

    /// <summary>Whether another word is used as often as the most used one.</summary>
    public bool IsTied => Tally.Counts is [var most, var next, ..] && most.A + most.B == next.A + next.B;

    /// <summary>The most used word that sets the halves apart after the correction; null where none does.</summary>
    public DescriptorCount? Apart => Tally.Counts.FirstOrDefault(count => count.AdjustedPValue <= Level);
}

/// <summary>Whether order, position, code or the odd beer drove the answers.</summary>
public sealed record BiasesChecked : PanelFinding
{
    internal BiasesChecked(CountedPlan plan, BiasReport report)
        : base(plan, "bias") => Report = report;

    /// <summary>The checks.</summary>
    public BiasReport Report { get; }

    /// <summary>Whether one of them shows a bias.</summary>
    public bool IsShown => Report.Checks.Any(check => check.BiasShown);
}
