using SplitBatch.Lab;
using SplitBatch.Panel.Counting;

namespace SplitBatch.Evidence;

/// <summary>The over-readings that each outcome invites.</summary>
internal static class NotShown
{
    public static IEnumerable<Claim> By(Verdict verdict)
    {
        switch (verdict.Answer)
        {
            case PanelAnswer.DifferenceShown or PanelAnswer.DifferenceWithinMargin:
                yield return Claim.InWords("not.everybody", "It does not show that everybody notices: some of those who answered right only guessed.");
                yield return Claim.InWords("not.liking", "It does not show which beer is better liked, or why the beers differ.");
                break;
            case PanelAnswer.MarginRuledOut:
                yield return Claim.InWords("not.same", "It does not show that the beers are the same: a few tasters may still tell them apart.");
                break;
            case PanelAnswer.Inconclusive:
                yield return Claim.InWords("not.same", "It does not show that the beers taste the same.");
                yield return Claim.InWords("not.belief", "It does not show that the belief behind the question is wrong, or right.");
                break;
            default:
                yield return Claim.InWords("not.taste", "It shows nothing about taste yet.");
                break;
        }

        switch (verdict.Evidence.Bitterness?.Judgement)
        {
            case Judgement.Exceeds:
                yield return Claim.InWords("not.tasted", "A difference that the lab measures is not by itself a difference that people taste.");
                break;
            case Judgement.Within:
                yield return Claim.InWords("not.equal", "A lab difference within the method's scatter does not show that the halves are equally bitter.");
                break;
        }

        yield return Claim.InWords("not.elsewhere", "It does not carry over to other recipes, lots, doses or breweries.");
    }
}
