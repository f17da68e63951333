namespace SplitBatch.Trials.Checks;

/// <summary>Hop charges that are logged for one half only.</summary>
internal sealed class ChargesOfOneHalf : ITrialCheck
{
    /// <inheritdoc/>
    public IEnumerable<Fault> Find(TrialFacts facts)
    {
        foreach (var side in new[] { Side.A, Side.B })
        {
            var other = side == Side.A ? Side.B : Side.A;
            if (facts.Content.Charges[side].Count > 0 || facts.Content.Charges[other].Count == 0) continue;
            yield return new Fault(ChargeReader.FileName, $"Half {other} has hop charges and half {side} has none, so the doses cannot be compared.")
            {
                Column = "beer",
                Accepted = "a row for each addition of each half, with A or B",
                Suggestion = $"Add what went into half {side}. Where both halves got an addition, it takes two rows.",
                Severity = Severity.Warning,
            };
        }
    }
}
