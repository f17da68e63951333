using SplitBatch.Evidence.Findings;
using SplitBatch.Panel;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;
using SplitBatch.Panel.Liking;

namespace SplitBatch.Evidence.Phrases;

/// <summary>Questions asked beside the difference, and biases looked for.</summary>
internal static class BesidePhrases
{
    public static Sentence Of(RatingCompared finding)
    {
        var rating = finding.Comparison;
        var difference = Printed.Rating(rating.Difference).WithSign;
        var interval = rating.DifferenceInterval is { } range
            ? Sentence.Of($" (between {Printed.Rating(range.Low).WithSign} and {Printed.Rating(range.High).WithSign} with "
                + $"{Printed.ChosenPercent(range.Level)} confidence)")
            : Sentence.Empty;
        return Sentence.Of($"Rated for {new Name(rating.Attribute)} by {Who(rating.Tasters, rating.Group, ",")} half B stands "
            + $"{difference} from half A{interval}; {P(rating.Ranks.PValue, rating.AdjustedPValue, rating.Questions)}: "
            + $"{(finding.IsShown ? "a difference is shown" : "no difference is shown, which does not mean that there is none")}.");
    }

    public static Sentence Of(PreferenceCounted finding)
    {
        var (preference, test) = (finding.Preference, finding.Preference.Test);
        var outcome = preference.PreferenceShown
            ? "a preference is shown"
            : "no preference is shown. Tasters who cannot tell, and two camps who can, both give such a count";
        if (test.IsUneven)
        {
            var liking = preference.PreferenceShown
                ? "that the beer matters to the choice is shown"
                : "that the beer matters to the choice is not shown, which does not mean that both are liked alike";
            return Sentence.Of($"Asked which cup of their set they like best, tasters chose a cup of half B in {Printed.Count(test.ForB)} "
                + $"of {Printed.Count(test.ForA + test.ForB, "set")}, and {Printed.Count(test.None)} chose none; choosing blindly among "
                + $"those cups gives {Printed.Expected(test.BlindlyForB)}; "
                + $"{P(test.PValue, preference.AdjustedPValue, finding.Questions)}: {liking}.");
        }

        return Sentence.Of($"Asked which they prefer, {Who(test.ForA, preference.Group, "")} chose half A, {Printed.Count(test.ForB)} "
            + $"half B and {Printed.Count(test.None)} neither; {P(test.PValue, preference.AdjustedPValue, finding.Questions)}: "
            + $"{outcome}.");
    }

    public static Sentence Of(WordsTallied finding)
    {
        var comments = Printed.Count(finding.Tally.Comments, "comment");
        if (finding.Apart is { } word)
        {
            return Sentence.Of($"In {comments} \"{new Name(word.Descriptor.Name)}\" sets the halves apart: "
                + $"{Printed.Count(word.A, "taster")} used it of half A and {Printed.Count(word.B)} of half B "
                + $"({Printed.PValue(word.AdjustedPValue)} after correction for all descriptors).");
        }

        var most = finding.Tally.Counts[0];
        var used = finding.IsTied ? "no descriptor is used more than" : "the most used descriptor is";
        return Sentence.Of($"In {comments} {used} \"{new Name(most.Descriptor.Name)}\", by {Printed.Count(most.A, "taster")} of half A "
            + $"and {Printed.Count(most.B)} of half B; after correction for all descriptors none sets the halves apart.");
    }

    public static Sentence Of(BiasesChecked finding) => finding.IsShown
        ? Sentence.Of($"The answers of panel {new Name(finding.Plan.Panel)} depended on something besides the beers; what limits the "
            + $"trial names it.")
        : Sentence.Of($"The checks of panel {new Name(finding.Plan.Panel)} whether order, position, code or the odd beer drove the "
            + $"answers show no bias, which does not rule one out in a panel of this size.");

    public static Sentence Of(BiasShown finding)
    {
        var check = finding.Check;
        var what = check.Kind == BiasKind.RightAnswers ? "right answers" : "wrong picks";
        var groups = Sentence.Join(", ",
            check.Groups
                .Select(group => Sentence.Of($"{new Name(group.Label)} {Printed.Count(group.Count)} of {Printed.Count(group.Sets)}")));
        return Sentence.Of($"Panel {new Name(finding.Plan.Panel)} has a bias: {what} depend on the {new Name(check.Name)} ({groups}; "
            + $"{Printed.PValue(check.PValue)}, after correction for all checks {Printed.PValue(check.AdjustedPValue)}).");
    }

    private static Sentence Who(int tasters, RatingGroup group, string after) => group == RatingGroup.All
        ? Sentence.Of($"{Printed.Count(tasters, "taster")}{after}")
        : Sentence.Of($"{Printed.Count(tasters, "taster")} who answered right, perhaps by guessing,");

    private static Sentence P(double p, double adjusted, int questions) => Sentence.Of(
        $"{Printed.PValue(p)}, after correction for {Printed.Count(questions, "question")} "
            + $"{Printed.PValue(adjusted, against: RatingCompared.Level)}");
}
