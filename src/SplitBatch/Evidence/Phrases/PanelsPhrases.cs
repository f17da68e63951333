using SplitBatch.Evidence.Findings;
using SplitBatch.Panel.Counting;

namespace SplitBatch.Evidence.Phrases;

/// <summary>Several panels of one trial.</summary>
internal static class PanelsPhrases
{
    public static Sentence Of(PanelsCombined finding)
    {
        var together = finding.Combination;
        var sets = together.Panels.Sum(panel => panel.Tasters);
        var distance = double.IsFinite(together.Interval.High)
            ? Sentence.Of($"a d-prime of {Printed.DPrime(together.DPrime)} (between {Printed.DPrime(together.Interval.Low)} and "
                + $"{Printed.DPrime(together.Interval.High)} with {Printed.ChosenPercent(together.Interval.Level)} confidence)")
            : Sentence.Of($"a d-prime of {Printed.DPrime(together.Interval.Low)} or more (with "
                + $"{Printed.ChosenPercent(together.Interval.Level)} confidence)");
        var agree = together.HeterogeneityPValue < 0.05
            ? "the panels disagree, so that one number hides something"
            : "there is no sign that the panels disagree";
        return Sentence.Of($"The {Printed.Count(together.Panels.Count, "panel")} together, each by its own guessing chance: "
            + $"{Printed.Count(together.Panels.Sum(panel => panel.Correct))} right of {Printed.Count(sets)}, and guessing alone gives so "
            + $"many or more in {Printed.Percent(together.PValue)} of cases; the distance between the beers is put at {distance}, and "
            + $"{agree}. This holds if no taster sat at two of the panels.");
    }

    /// <summary>Panels that share people: people are counted and not sets, and whether panels agree is not asked.</summary>
    public static Sentence Of(PeopleCombined finding)
    {
        var people = finding.People;
        return Sentence.Of($"The {Printed.Count(finding.Panels, "panel")} together, counting people, because some names stand in more "
            + $"than one key: {Printed.Count(people.People, "person", "people")}, equal names taken for one, "
            + $"{Wording.Were(people.People)} right in {Printed.Count(people.Right)} of {Printed.Count(people.Sets, "set")}, and guessing "
            + $"alone gives so many or more in {Printed.Percent(people.PValue)} of cases{Size(finding)}.");
    }

    /// <summary>
    /// How far apart the beers are: as a share of one task, or as d-prime where tasks differ; nothing for too few people.
    /// </summary>
    private static Sentence Size(PeopleCombined finding)
    {
        if (finding.IsOneTask)
        {
            if (finding.People.People < PeopleMargin.FewestForLimit) return Sentence.Empty;
            var ability = finding.People.Ability();
            return Sentence.Of($"; their mean ability in this task lies between {Printed.Percent(ability.Interval.Low)} and "
                + $"{Printed.Percent(ability.Interval.High)} ({Printed.ChosenPercent(ability.Interval.Level)} confidence)");
        }

        if (finding.People.People < 2) return Sentence.Empty;
        var distance = finding.People.DPrime();
        return distance.HasEnoughPeople && double.IsFinite(distance.Interval.High)
            ? Sentence.Of($"; the distance between the beers is put at a d-prime between {Printed.DPrime(distance.Interval.Low)} and "
                + $"{Printed.DPrime(distance.Interval.High)} ({Printed.ChosenPercent(distance.Interval.Level)} confidence)")
            : Sentence.Empty;
    }

    public static Sentence Of(RestsOnOnePanel finding)
    {
        var rests = finding.PassedOver.Count == 0 && finding.BySeal
            ? Sentence.Of($"The verdict rests on panel {new Name(finding.Panel)}, which was sealed to decide.")
            : finding.PassedOver.Count == 0
            ? Sentence.Of($"The verdict rests on panel {new Name(finding.Panel)}, the first that trial.json names.")
            : Sentence.Of($"The verdict rests on panel {new Name(finding.Panel)}, because what trial.json names before it is not counted: "
                + $"{new Name(Wording.Listed(finding.PassedOver))}.");
        if (finding.Counted < 2) return rests;
        var combined = Sentence.Of($"{finding.Together switch
        {
            ReadTogether.All =>
                "The others are read beside it and together with it.",
            ReadTogether.SomeWithMain =>
                "Some of the others are read together with it; the rest stand beside it, because they cannot be combined.",
            ReadTogether.SomeWithoutMain =>
                "Some of the others are read together, but not with this one, which cannot be combined with them.",
            _ =>
                "The others stand beside it and are not combined with it: the trial names no method for that, or they do not allow one.",
        }}");
        return rests + combined
            + Sentence.Of($"Of {Printed.Count(finding.Counted, "panel")}, each with its own chance of a false difference, one at least "
                + $"shows a false one in up to {Printed.Percent(finding.OneFalseAtLeast)} of such trials.");
    }
}
