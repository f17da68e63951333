using SplitBatch.BrewDay;
using SplitBatch.Brewing;
using SplitBatch.Evidence.Findings;
using SplitBatch.Lab;

namespace SplitBatch.Evidence.Phrases;

/// <summary>The halves as brewed: what the log and the hop lots show to differ, and what nobody measured.</summary>
internal static class BatchPhrases
{
    public static Sentence Of(HopLotsDiffer finding)
    {
        var confound = finding.Confound;
        var unknown = confound.IsUnknown ? "may differ" : "differ";
        return Sentence.Of($"The hop lots {unknown} in more than the variable. {PlanPhrases.Capital(confound.Difference.InWords())}: A "
            + $"{new Quote(confound.A)}, B {new Quote(confound.B)}. {confound.Why}");
    }

    public static Sentence Of(HalvesDiffer finding)
    {
        var line = finding.Line;
        var values = Sentence.Of($"The {new Name(line.Quantity)} was {new Quote(line.A!)} in half A and {new Quote(line.B!)} in half B");
        return line switch
        {
            { Difference: { } apart, Tolerance: { } most } =>
                Sentence.Of($"{values}, {Apart(line, apart, most)} apart, more than the {Apart(line, most, apart)} that the instruments' "
                    + $"uncertainty explains: a confound."),
            { Difference: { } apart } =>
                Sentence.Of($"{values}, {Apart(line, apart)} apart, and the uncertainty of the instrument is not logged: a confound "
                    + $"unless it is shown to be none."),
            _ => Sentence.Of($"{values}: a confound."),
        };
    }

    public static Sentence Of(MeantEqual finding)
    {
        string[] unequal = [.. finding.Lines!.Where(line => line.Verdict == Parity.Confound).Select(line => line.Quantity)];
        return Sentence.Of(
            $"Meant to be held equal were: {new Quote(finding.Statement)}. The batch log shows otherwise: not equal was the "
                + $"{new Name(Wording.Listed(unequal))}.");
    }

    /// <summary>What the log says of an intention, for a table.</summary>
    public static string ByTheLog(MeantEqual finding) => finding.Lines switch
    {
        null => "no batch log is kept",
        { Count: 0 } => "the log has no line for it",
        var lines => string.Join("; ", lines.Select(line => $"{line.Quantity}: {Short(line.Verdict)}")),
    };

    private static string Short(Parity verdict) => verdict switch
    {
        Parity.Same => "the same",
        Parity.WithinInstrument => "alike within what the instruments can tell",
        Parity.Confound => "not equal",
        Parity.TheVariable => "differs with the variable",
        _ => "not measured on both halves",
    };

    public static Sentence Of(NotMeasured finding) => Sentence.Of(
        $"Not measured on both halves: {new Name(string.Join(", ", finding.Quantities))}. Nobody can say whether "
            + $"{(finding.Quantities.Count == 1 ? "this was" : "these were")} equal.");

    /// <summary>A difference on one line of the log, in the unit of the line.</summary>
    public static Printed Apart(ParityLine line, double amount, double? against = null) =>
        Printed.Fixed(Math.Abs(amount), Decimals(line, amount), line.Unit is "" or "pH" ? "" : line.Unit,
            against is { } other ? Math.Abs(other) : null);

    /// <summary>As many decimals as the log's instruments have, and enough for one digit.</summary>
    private static int Decimals(ParityLine line, double amount) => line.Unit switch
    {
        "SG" => 4,
        _ when Math.Abs(amount) is > 0 and < 0.1 => 3,
        _ => 2,
    };
}
