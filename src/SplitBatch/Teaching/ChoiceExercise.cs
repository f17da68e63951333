using System.Globalization;

namespace SplitBatch.Teaching;

/// <summary>An exercise whose answer is one of several sentences; each wrong one has a hint of its own.</summary>
public sealed class ChoiceExercise
{
    private readonly string task;
    private readonly List<Choice> choices = [];

    internal ChoiceExercise(string task) => this.task = Guard.NotBlank(task);

    /// <summary>What to say where nothing is chosen yet: where to start.</summary>
    internal string Start { get; init; } = "";

    /// <summary>The letters of the choices and whether each is right, for tests.</summary>
    internal IEnumerable<(string Letter, bool IsRight)> Letters => choices.Select((choice, i) => (Letter(i), choice.IsRight()));

    /// <summary>Compares a choice, and says what is the matter with it.</summary>
    /// <param name="letter">The letter of the choice, such as <c>b</c>; null while there is none.</param>
    public Feedback Check(string? letter)
    {
        if (string.IsNullOrWhiteSpace(letter)) return new Feedback(Slip.Unanswered, Start);
        var typed = letter.Trim().Trim('(', ')', '.').ToLower(CultureInfo.InvariantCulture);
        for (var i = 0; i < choices.Count; i++)
        {
            if (Letter(i) == typed) return new Feedback(choices[i].IsRight() ? Slip.None : Slip.OtherChoice, choices[i].Reply);
        }

        return new Feedback(Slip.NoSuchChoice,
            $"There is no choice \"{letter.Trim()}\"; write one letter from {Letter(0)} to {Letter(choices.Count - 1)} in "
                + $"quotation marks.");
    }

    /// <summary>The task and its choices, one on each line.</summary>
    public override string ToString() => string.Join('\n', choices.Select((choice, i) => $"{Letter(i)}) {choice.Text}").Prepend(task));

    /// <summary>A choice that is right or wrong whatever the numbers are.</summary>
    internal ChoiceExercise Option(string text, bool right, string reply) => Option(text, () => right, reply);

    /// <summary>A choice of which a calculation says whether it is right.</summary>
    internal ChoiceExercise Option(string text, Func<bool> isRight, string reply)
    {
        choices.Add(new Choice(text, isRight, reply));
        return this;
    }

    private static string Letter(int i) => ((char)('a' + i)).ToString();

    private sealed record Choice(string Text, Func<bool> IsRight, string Reply);
}
