namespace SplitBatch.Panel.Planning;

/// <summary>What a sequential panel says after an answer.</summary>
public enum SequentialDecision
{
    /// <summary>Between the lines: serve the next taster.</summary>
    PourOn,

    /// <summary>The upper line is reached: a difference is shown.</summary>
    Different,

    /// <summary>The lower line is reached: the margin is ruled out.</summary>
    Similar,

    /// <summary>The last taster was served between the lines.</summary>
    Undecided,
}

/// <summary>One step of a sequential panel.</summary>
/// <param name="Tasters">Answers so far.</param>
/// <param name="Correct">Right answers so far.</param>
/// <param name="SimilarAt">The largest count that stops for similarity here; -1 where none does.</param>
/// <param name="DifferentAt">The smallest count that stops for a difference here.</param>
public sealed record WaldStep(int Tasters, int Correct, int SimilarAt, int DifferentAt);

/// <summary>The course of a sequential panel up to its decision.</summary>
/// <param name="Plan">The plan that was followed.</param>
/// <param name="Decision">What it says.</param>
/// <param name="Tasters">Answers used.</param>
/// <param name="Correct">Right answers among them.</param>
/// <param name="Steps">Count and lines after each answer.</param>
/// <param name="Unused">Answers given after the decision; they are kept, and do not count.</param>
public sealed record WaldPath(
    WaldPlan Plan, SequentialDecision Decision, int Tasters, int Correct, IReadOnlyList<WaldStep> Steps, int Unused)
{
    /// <summary>For example <c>10 right of 12: a difference is shown, and the panel stops.</c></summary>
    public override string ToString()
    {
        var unused = Unused == 0 ? "" : $" {Unused} later answers are not counted.";
        return $"{Correct} right of {Tasters}: " + Decision switch
        {
            SequentialDecision.Different => "a difference is shown, and the panel stops.",
            SequentialDecision.Similar =>
                $"{Printed.ChosenPercent(Plan.Margin)} or more discriminators are ruled out, and the panel stops.",
            SequentialDecision.Undecided => "undecided, and the last taster has been served. That does not mean the same.",
            _ => "between the lines; serve the next taster.",
        } + unused;
    }
}

/// <summary>What a sequential plan truly does at one share of discriminators.</summary>
/// <param name="Discriminators">The true share.</param>
/// <param name="Different">The chance that it ends with a difference shown.</param>
/// <param name="Similar">The chance that it ends with the margin ruled out.</param>
/// <param name="Undecided">The chance that it is still between the lines after the last taster.</param>
/// <param name="Tasters">The expected panel size.</param>
public sealed record WaldCharacteristic(double Discriminators, double Different, double Similar, double Undecided, double Tasters);
