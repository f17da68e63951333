using SplitBatch.Lab;
using SplitBatch.Panel.Counting;

namespace SplitBatch.Evidence;

/// <summary>What each outcome suggests doing next.</summary>
internal static class NextSteps
{
    public static IEnumerable<Claim> After(Verdict verdict)
    {
        var evidence = verdict.Evidence;
        switch (verdict.Answer)
        {
            case null:
                yield return Claim.InWords("next.serve", "Serve the declared panel, and type its ballots into the trial folder.");
                break;
            case PanelAnswer.Inconclusive when verdict.Main!.IsUnderWay:
                yield return Claim.InWords("next.panel", "Serve the next taster of the sequential panel, as its plan says, until a line is reached or the last taster is served.");
                break;
            case PanelAnswer.Inconclusive when verdict.Main!.Reading is null:
                yield return Claim.InWords("next.panel", "Serve a new panel, declared beforehand, by a protocol with a known guessing chance, such as the triangle: it can also rule a difference out.");
                break;
            case PanelAnswer.Inconclusive:
                yield return new Claim("next.panel", $"Serve a new panel of {verdict.Main!.Reading!.ToSettle.Always} tasters or more, declared beforehand; adding tasters to this one after seeing the count would raise the error.", "exact binomial: from this size on no count leaves both questions open", "trial.json");
                break;
            case PanelAnswer.DifferenceShown or PanelAnswer.DifferenceWithinMargin:
                yield return Claim.InWords("next.repeat", "Brew the pair again and serve a new panel, to see whether the difference belongs to the variable and not to these two batches.");
                yield return Claim.InWords("next.ask", "Ask those who answered right which beer is the more bitter and which they prefer, in a panel planned for that question.");
                break;
            case PanelAnswer.MarginRuledOut:
                yield return Claim.InWords("next.larger", "Brew the pair again before relying on it, and try a larger change of the variable to learn where a difference begins.");
                break;
        }

        if (evidence.Bitterness is null) yield return Claim.InWords("next.lab", "Send both halves to a lab, blind and in one run, with two readings of each.");
        else if (evidence.Bitterness.Judgement is Judgement.DependsOnReading or Judgement.NotJudged)
        {
            yield return Claim.InWords("next.precision", "Ask the lab whether its precision figure is a coefficient of variation, a standard deviation or a 95 % limit, and of repeatability or reproducibility.");
        }
        else if (evidence.Bitterness.Judgement == Judgement.Exceeds)
        {
            yield return Claim.InWords("next.doses", "Correct the doses by what the lab measured before brewing the pair again.");
        }
    }
}
