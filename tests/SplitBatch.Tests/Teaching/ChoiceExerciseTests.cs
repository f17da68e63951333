namespace SplitBatch.Teaching;

public class ChoiceExerciseTests
{
    private static readonly Dictionary<string, ChoiceExercise> All = new()
    {
        ["eight"] = GuessOrTaste.EightOfEighteen,
        ["eleven"] = ThreeNeighbours.ElevenOfEighteen,
        ["surer"] = EqualBitterness.WhySurer,
        ["match"] = EqualBitterness.WhatAMatchSays,
        ["says"] = ReadThisReturn.WhatItSays,
        ["bare"] = ReadThisReturn.BareFigure,
    };

    public static TheoryData<string> Names => [.. All.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void Exactly_one_choice_is_right_and_each_has_its_own_reply(string name)
    {
        var exercise = All[name];
        var replies = exercise.Letters.Select(choice => exercise.Check(choice.Letter)).ToList();
        Assert.Single(replies, reply => reply.IsRight);
        Assert.All(replies.Where(reply => !reply.IsRight), reply => Assert.Equal(Slip.OtherChoice, reply.Slip));
        Assert.Equal(replies.Count, replies.Select(reply => reply.Words).Distinct().Count());
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void The_task_shows_every_choice_by_its_letter(string name)
    {
        var lines = All[name].ToString().Split('\n');
        Assert.Equal(All[name].Letters.Select(choice => choice.Letter + ") "), lines.Skip(1).Select(line => line[..3]));
    }

    [Theory]
    [InlineData("c", Slip.None)]
    [InlineData(" C) ", Slip.None)]
    [InlineData("a", Slip.OtherChoice)]
    [InlineData("x", Slip.NoSuchChoice)]
    [InlineData("the third", Slip.NoSuchChoice)]
    [InlineData("", Slip.Unanswered)]
    [InlineData(null, Slip.Unanswered)]
    public void A_letter_is_read_kindly(string? letter, Slip slip) => Assert.Equal(slip, GuessOrTaste.EightOfEighteen.Check(letter).Slip);
}
