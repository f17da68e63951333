namespace SplitBatch.Teaching;

/// <summary>An exercise whose answer is a number. The right one is computed when it is asked for, and is shown nowhere.</summary>
public sealed class NumberExercise
{
    private readonly Lazy<double> right;
    private readonly double tolerance;
    private readonly string task;
    private readonly List<(Slip Slip, Lazy<double> Value, string Hint)> slips = [];

    internal NumberExercise(string task, Func<double> right, double tolerance = 0)
    {
        this.task = Guard.NotBlank(task);
        this.right = new Lazy<double>(right);
        this.tolerance = Guard.NotNegative(tolerance);
    }

    /// <summary>What to say where nothing is answered yet: where to start.</summary>
    internal string Start { get; init; } = "";

    /// <summary>What a right answer means.</summary>
    internal string Because { get; init; } = "";

    /// <summary>What to say of a number that is too low or too high for no reason known here.</summary>
    internal (string Low, string High) Otherwise { get; init; }

    /// <summary>Whether the answer is a share between 0 and 1.</summary>
    internal bool IsShare { get; init; }

    /// <summary>Whether the answer counts people or answers.</summary>
    internal bool IsCount { get; init; }

    /// <summary>The right answer and the wrong ones that have a hint of their own, for tests.</summary>
    internal double Right => right.Value;

    internal IEnumerable<(Slip Slip, double Value)> KnownSlips => slips.Select(slip => (slip.Slip, slip.Value.Value));

    /// <summary>Compares an answer, and says what is the matter with it.</summary>
    /// <param name="answer">The learner's number; null while there is none.</param>
    public Feedback Check(double? answer)
    {
        if (answer is not { } given) return new Feedback(Slip.Unanswered, Start);
        if (!double.IsFinite(given)) return new Feedback(Slip.NotANumber, "That is no number. Was something divided by zero?");
        if (Near(given, Right)) return new Feedback(Slip.None, Because);
        foreach (var (slip, value, hint) in slips)
        {
            if (Near(given, value.Value)) return new Feedback(slip, hint);
        }

        if (IsShare && given > 1) return Percent(given / 100);
        if (IsCount && given != Math.Round(given)) return new Feedback(Slip.NotWhole, given is > 0 and < 1
            ? "That looks like a share. The answer should be a whole number of people or of answers."
            : "People and answers come whole. Think about whether to round up or down, and why.");
        return given < Right ? new Feedback(Slip.TooLow, Otherwise.Low) : new Feedback(Slip.TooHigh, Otherwise.High);
    }

    /// <summary>The task.</summary>
    public override string ToString() => task;

    /// <summary>A wrong answer that has a known reason; one that happens to be near the right answer is left out.</summary>
    internal NumberExercise When(Slip slip, Func<double> value, string hint)
    {
        slips.Add((slip, new Lazy<double>(value), hint));
        return this;
    }

    private Feedback Percent(double share) => Near(share, Right)
        ? new Feedback(Slip.PercentForShare, "The size is right, but that is a percentage. A share lies between 0 and 1: divide by 100.")
        : new Feedback(Slip.PercentForShare,
            "A share lies between 0 and 1, and yours is larger. Is it a percentage? Divide by 100, and look at the size again as well.");

    private bool Near(double given, double value) => Math.Abs(given - value) <= tolerance + 1e-9;
}
