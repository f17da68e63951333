using SplitBatch.Numbers;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;
using SplitBatch.Panel.Liking;
using SplitBatch.Panel.Planning;

namespace SplitBatch.Methods;

/// <summary>What the library answers to a check value: each quantity by one public member, in the shape that the file expects.</summary>
internal static partial class Answers
{
    private static readonly Dictionary<string, Func<CheckValue, object?>> Questions = new()
    {
        ["low_tail"] = v => LowCountAlarm.Of(v.Protocol, v.Whole("n"), v.Whole("right")).PValue,
        ["alarm_count"] = v => LowCountAlarm.Of(v.Protocol, v.Whole("n"), 0, v.Number("level")).LargestCount,
        ["directed_range"] = v => Range(MarginCounts.RuledOut(v.Directed, v.Whole("n"), v.Margin, v.Number("beta"))),
        ["directed_tails"] = v => DirectedTails(v),
        ["limit_constrained"] = v => CountLimit.Discriminators(v.Protocol, v.Whole("n"), v.Whole("right"), v.Number("beta")),
        ["verdict"] =
            v => Word(
                PanelDecision.Of(Rules(v) with { AlarmLevel = v.Number("alarm") }, PanelResult.Of(v.Whole("n"), v.Whole("right"))).Answer),
        ["preference_range"] = v => Range(PreferenceParity.RangeOf(v.Whole("n"), v.Number("m"), v.Number("beta"))),
        ["same_twice"] = v => PreferenceConsistency.Of(v.Whole("n"), v.Whole("same")).PValue,
        ["set_choice"] = v => Choice(SetChoice.Of(v.Whole("aab"), v.Whole("abb"), v.Whole("for_b"))),
        ["missing"] = v => Missing(v),
        ["best_of_doubles"] = v => BestOfDoubles.TrueAlpha(v.Protocol, v.Whole("n_single"), v.Whole("doubles"), v.Number("alpha")),
        ["likelihood_ratio"] = v => CountLikelihood.AtMargin(v.Protocol, v.Whole("n"), v.Whole("right"), v.Margin),
        ["bayes_factor"] = v => CountLikelihood.BayesFactor(v.Protocol, v.Whole("n"), v.Whole("right"), Prior(v)),
        ["true_alpha"] = v => EarlyLooks.At(v.Protocol, v.Number("alpha"), v.Wholes("looks")).TrueAlpha,
        ["looks_level"] = v => Level(LooksLevel.Of(v.Protocol, v.Number("alpha"), v.Wholes("looks"))),
        ["any_time_count"] = v => AnyTime.DifferenceCount(v.Protocol, v.Whole("n"), v.Number("alpha")),
        ["any_time_alpha"] = v => AnyTime.TrueAlpha(v.Protocol, v.Whole("n"), v.Number("alpha")),
        ["true_beta"] = v => LooksMargin.TrueBetaOf(v.Protocol, v.Margin, v.Number("beta"), v.Wholes("looks")),
        ["any_time_similar_count"] = v => AnyTime.RuledOut(v.Protocol, v.Whole("n"), v.Margin, v.Number("beta"))?.Highest,
        ["any_time_beta"] = v => AnyTime.TrueBeta(v.Protocol, v.Whole("n"), v.Margin, v.Number("beta")),
        ["control_power"] = v => Power(ControlPower.Of(v.Protocol, v.Whole("n"), v.Number("d"), v.Number("alpha"))),
        ["control_tasters"] =
            v => Needed(Panel.Planning.Power.TastersNeededForDPrime(v.Protocol, v.Number("alpha"), v.Number("power"), v.Number("d"))),
        ["against_control"] = v => KnownControl.AgainstTest(v.Whole("only_control"), v.Whole("only_test")),
        ["people_needed"] = v => FewPeople.Needed(v.Number("m"), v.Number("beta")),
        ["power_cap"] = v => FewPeople.PowerCap(v.Whole("n"), v.Number("m"), v.Number("beta")),
        ["all_or_nothing_tail"] = v => AbilitySpread.AllOrNothing(v.People).AtMost(v.Whole("right"), v.Number("share")),
        ["few_people_largest"] = v => PeopleMargin.LargestCount(v.People, v.Number("margin"), v.Number("beta")),
        ["few_people_limit"] = v => PeopleMargin.Limit(v.People, v.Whole("right"), v.Number("beta")),
        ["discriminators_at"] = v => DeclaredMargin.OfDPrime(v.Number("d")).ShareIn(v.Protocol),
        ["dprime_at"] = v => DeclaredMargin.OfShare(v.Number("share")).DPrimeIn(v.Protocol),
        ["largest_at_dprime"] = v => Panel.Planning.Power
            .SimilarityCount(v.Protocol, v.Whole("n"), DeclaredMargin.OfDPrime(v.Number("d")).ShareIn(v.Protocol), v.Number("beta")),
        ["dprime_limit"] = v => CountLimit.DPrime(v.Protocol, v.Whole("n"), v.Whole("right"), v.Number("beta")),
        ["people_interval"] = v => Ability(MeanAbility.Of(v.People, v.Whole("right"), v.Number("level"))),
        ["person_t"] = v => PersonT(ReturningPeople.Of(v.TasksOfPeople), v.Number("level")),
    };

    public static object? Of(CheckValue value) => (Questions.GetValueOrDefault(value.Quantity) ?? LabQuestions[value.Quantity])(value);

    private static PanelRules Rules(CheckValue v) => new(v.Protocol, v.Margin) { Alpha = v.Number("alpha"), Beta = v.Number("beta") };

    private static int[]? Range(CountRange? range) => range is { } found ? [found.Lowest, found.Highest] : null;

    private static object DirectedTails(CheckValue v)
    {
        int n = v.Whole("n"), right = v.Whole("right");
        return new
        {
            p_upper = MarginCounts.PValue(v.Directed, n, right, v.Margin),
            p_lower = MarginCounts.PValueReversed(v.Directed, n, right, v.Margin),
            ruled_out = MarginCounts.RuledOut(v.Directed, n, v.Margin, v.Number("beta"))?.Contains(right) == true,
        };
    }

    private static object Choice(SetChoice choice) => new { upper = choice.Upper, lower = choice.Lower, two_sided = choice.PValue };

    private static object Missing(CheckValue v)
    {
        var ballots = PanelDecision.Of(Rules(v), PanelResult.Of(v.Whole("n"), v.Whole("right"), v.Whole("missing"))).Ballots!;
        return new
        {
            counted = Word(ballots.Counted),
            all_wrong = Word(ballots.IfRight[0]),
            all_right = Word(ballots.IfRight[^1]),
            turned_by = ballots.TurnedBy,
            robust = ballots.IsRobust,
        };
    }

    private static object Ability(MeanAbility ability) => new
    {
        low = ability.Interval.Low,
        high = ability.Interval.High,
        low_alike = ability.Alike.Low,
        high_alike = ability.Alike.High,
    };

    private static object PersonT(ReturningPeople people, double level)
    {
        var d = people.DPrime(level);
        return new
        {
            estimate = d.Estimate,
            t_low = d.OverPeople.Low,
            t_high = d.OverPeople.High,
            exact_low = d.Independent.Low,
            exact_high = d.Independent.High,
            low = d.Interval.Low,
            high = d.Interval.High,
            p_guessing = people.PValue,
        };
    }

    private static UniformPrior Prior(CheckValue v) => (v.Number("low"), v.Number("high")) switch
    {
        (0, 1) => UniformPrior.All,
        (0, var high) => UniformPrior.Below(high),
        (var low, 1) => UniformPrior.Above(low),
        _ => throw new FormatException("No prior of that range is named."),
    };

    private static object Level(LooksLevel looks) =>
        new { level = looks.Level, criticals = looks.CriticalCounts, true_alpha = looks.TrueAlpha };

    private static object Power(ControlPower power) => new { critical = power.CriticalCount, power = power.Chance };

    private static object Needed(TastersNeeded needed) => new { first = needed.First, always = needed.Always };

    private static string Word(PanelAnswer answer) => answer switch
    {
        PanelAnswer.Alarm => "alarm",
        PanelAnswer.DifferenceShown => "shown",
        PanelAnswer.DifferenceWithinMargin => "shown, within margin",
        PanelAnswer.MarginRuledOut => "ruled out",
        _ => "inconclusive",
    };
}
