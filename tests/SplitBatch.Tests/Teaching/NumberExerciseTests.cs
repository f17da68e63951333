using System.Globalization;
using System.Reflection;
using System.Text.RegularExpressions;

namespace SplitBatch.Teaching;

public partial class NumberExerciseTests
{
    private static readonly Type[] Sets = [typeof(GuessOrTaste), typeof(HowManyTasters), typeof(ThreeNeighbours), typeof(EqualBitterness),
        typeof(ReadThisReturn)];

    public static TheoryData<string> Names => [.. All().Select(pair => pair.Name)];

    /// <summary>Answers from outside the project, each with its source.</summary>
    [Theory]
    // R 4.2.2: 18/3; pbinom(8, 18, 1/3, lower.tail = FALSE); ISO 4120 (2021), table A.1, n = 18, 5 %: 10.
    [InlineData("GuessOrTaste.Average", 6)]
    [InlineData("GuessOrTaste.NineOrMore", 0.1076024)]
    [InlineData("GuessOrTaste.CriticalCount", 10)]
    // R 4.2.2: 0.3 + 0.7/3; pbinom(9, 18, 0.3 + 0.7/3, lower.tail = FALSE); sizes from tests/reference/panel/tasters-needed.csv (first:
    // 40).
    [InlineData("HowManyTasters.RightAnswers", 0.5333333)]
    [InlineData("HowManyTasters.PowerOfThePanel", 0.5208845)]
    [InlineData("HowManyTasters.TastersForEighty", 40)]
    [InlineData("ThreeNeighbours.AverageOfEighteen", 12)]
    [InlineData("ThreeNeighbours.NoneCanTell", 0.125)]
    [InlineData("ThreeNeighbours.People", 3)]
    // ISO 5725-6, 4.2: 1.7 x sqrt(1/4 + 1/4).
    [InlineData("ReadThisReturn.Difference", 1.4)]
    [InlineData("ReadThisReturn.CriticalDifference", 1.2020815)]
    public void The_right_answer_is_the_one_found_outside(string name, double answer) =>
        Assert.Equal(Slip.None, Find(name).Check(answer).Slip);

    [Fact]
    public void The_masses_are_those_of_Tinseths_formula_by_hand()
    {
        // Mean gravity over the boil: 23 L of 1 + 0.050 x 20/23 becomes 20 L of 1.050. Form factor of pellets: 1.07.
        double gravity = 1 + (0.5 * (0.050 + (0.050 * 20 / 23)));
        double Grams(double minutes) =>
            30 * 20 / (1000 * 0.074 * 1.07 * 1.65 * Math.Pow(0.000125, gravity - 1) * (1 - Math.Exp(-0.04 * minutes)) / 4.15);
        Assert.Equal(Grams(60), EqualBitterness.GramsEarly.Right, 0.05);
        Assert.Equal(Grams(20), EqualBitterness.GramsLate.Right, 0.05);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Nothing_answered_gives_a_place_to_start(string name)
    {
        var reply = Find(name).Check(null);
        Assert.Equal(Slip.Unanswered, reply.Slip);
        Assert.StartsWith("Not answered yet. ", reply.ToString(), StringComparison.Ordinal);
        Assert.True(reply.Words.Length > 15, reply.Words);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void A_wrong_answer_of_a_known_kind_gets_the_hint_of_its_kind(string name)
    {
        var exercise = Find(name);
        foreach (var (slip, value) in exercise.KnownSlips) Assert.Equal(slip, exercise.Check(value).Slip);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void No_reply_to_a_wrong_answer_gives_the_right_one_away(string name)
    {
        var exercise = Find(name);
        double right = exercise.Right;
        string[] forms = [.. new[] { "0", "0.0", "0.00", "0.000" }.Select(form => right.ToString(form, CultureInfo.InvariantCulture))
            .Where(form => Math.Abs(double.Parse(form, CultureInfo.InvariantCulture) - right) < 0.02 * right)];
        double?[] wrong = [null, double.NaN, -1e6, 1e6, right * 100, right * 0.7, right * 1.5,
            .. exercise.KnownSlips.Select(slip => (double?)slip.Value)];
        foreach (var words in wrong.Select(answer => exercise.Check(answer)).Where(reply => !reply.IsRight).Select(reply => reply.Words))
        {
            Assert.DoesNotContain(Numbers().Matches(words).Select(match => match.Value), forms.Contains);
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void A_percentage_for_a_share_is_called_one(string name)
    {
        var exercise = Find(name);
        if (!exercise.IsShare) return;
        var reply = exercise.Check(exercise.Right * 100);
        Assert.Equal(Slip.PercentForShare, reply.Slip);
        Assert.Contains("size is right", reply.Words, StringComparison.Ordinal);
        Assert.DoesNotContain("size is right", exercise.Check(99).Words, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(9, Slip.OneTooFew, "further right")]
    [InlineData(11, Slip.TwoSided, "one side")]
    [InlineData(7, Slip.TooLow, "More than 5 %")]
    [InlineData(15, Slip.TooHigh, "smallest")]
    [InlineData(9.5, Slip.NotWhole, "whole")]
    [InlineData(0.05, Slip.ShareForCount, "count")]
    [InlineData(double.NaN, Slip.NotANumber, "zero")]
    public void The_critical_count_tells_slips_apart(double answer, Slip slip, string word)
    {
        var reply = GuessOrTaste.CriticalCount.Check(answer);
        Assert.Equal(slip, reply.Slip);
        Assert.Contains(word, reply.Words, StringComparison.Ordinal);
        Assert.StartsWith("Not quite. ", reply.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(18)]
    [InlineData(11)]
    [InlineData(6)]
    public void Repeats_are_not_people(double rounds) => Assert.Equal(Slip.PooledRepeats, ThreeNeighbours.People.Check(rounds).Slip);

    [Theory]
    [InlineData(41)]
    [InlineData(42)]
    public void The_teeth_of_the_saw_have_their_hint(double tasters) =>
        Assert.Equal(Slip.ToothOfTheSaw, HowManyTasters.TastersForEighty.Check(tasters).Slip);

    [Fact]
    public void An_exercise_shows_its_task_and_hides_its_answer()
    {
        Assert.Equal("What is the smallest count that guessers reach or pass in at most 5 % of panels of eighteen?",
            GuessOrTaste.CriticalCount.ToString());
        Assert.DoesNotContain(typeof(NumberExercise).GetMembers(BindingFlags.Public | BindingFlags.Instance),
            member => member is PropertyInfo);
    }

    private static NumberExercise Find(string name) => All().Single(pair => pair.Name == name).Exercise;

    private static IEnumerable<(string Name, NumberExercise Exercise)> All() =>
        from set in Sets
        from property in set.GetProperties()
        where property.PropertyType == typeof(NumberExercise)
        select ($"{set.Name}.{property.Name}", (NumberExercise)property.GetValue(null)!);

    [GeneratedRegex(@"\d+(?:\.\d+)?")]
    private static partial Regex Numbers();
}
