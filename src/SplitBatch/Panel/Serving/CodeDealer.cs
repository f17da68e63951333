using System.Globalization;
using SplitBatch.Numbers;

namespace SplitBatch.Panel.Serving;

/// <summary>
/// Deals codes to cups so that no code helps: within a set no two share a first or a last digit or all their digits; a taster never
/// sees a code twice; a session does not use one twice while fresh ones remain; and each beer gets each first digit about equally often.
/// </summary>
internal sealed class CodeDealer
{
    private static readonly Code[] Pool = [.. CodePool.All.Select(text => new Code(text))];

    private readonly Dictionary<int, int[]> sessionUse = [];
    private readonly Dictionary<string, bool[]> seen = [];
    private readonly int[] use = new int[Pool.Length];
    private readonly int[,] firstDigit = new int[2, 10];

    /// <summary>The codes for the coded cups of one set, in order.</summary>
    internal string[] Deal(int session, string taster, IReadOnlyList<Side> beers, ref SeededRandom random)
    {
        if (!sessionUse.TryGetValue(session, out int[]? inSession)) sessionUse[session] = inSession = new int[Pool.Length];
        if (!seen.TryGetValue(taster, out bool[]? known)) seen[taster] = known = new bool[Pool.Length];
        var codes = new string[beers.Count];
        int[] sequence = [.. Enumerable.Range(0, beers.Count)];
        random.Shuffle(sequence.AsSpan());
        List<Code> chosen = [];
        List<int> best = [];
        foreach (int cup in sequence)
        {
            // Weightiest first: fresh in this session, then an even share of first digits, then fresh in the panel.
            best.Clear();
            long bestCost = long.MaxValue;
            for (int k = 0; k < Pool.Length; k++)
            {
                if (known[k] || IsLikeOneOf(chosen, Pool[k])) continue;
                long cost = ((long)inSession[k] << 40) + ((long)firstDigit[(int)beers[cup], Pool[k].First] << 20) + use[k];
                if (cost > bestCost) continue;
                if (cost < bestCost) best.Clear();
                bestCost = cost;
                best.Add(k);
            }
            if (best.Count == 0)
                throw new ArgumentException($"{taster} would need more codes than there are ({Pool.Length}); serve fewer sets to "
                    + $"each taster.");
            int pick = best[random.NextBelow(best.Count)];
            codes[cup] = Pool[pick].Text;
            chosen.Add(Pool[pick]);
            known[pick] = true;
            inSession[pick]++;
            use[pick]++;
            firstDigit[(int)beers[cup], Pool[pick].First]++;
        }
        return codes;
    }

    /// <summary>
    /// Whether a code could be mixed up with another on the tray: the same first or last digit, or the same three digits in another order.
    /// </summary>
    private static bool IsLikeOneOf(List<Code> chosen, Code code)
    {
        foreach (var other in chosen)
        {
            if (other.First == code.First || other.Last == code.Last || other.Digits == code.Digits) return true;
        }
        return false;
    }

    /// <summary>A code with its first and last digit, and the set of its digits as bits.</summary>
    private sealed record Code(string Text)
    {
        internal int First { get; } = Text[0] - '0';

        internal int Last { get; } = Text[^1] - '0';

        internal int Digits { get; } = Text.Sum(digit => 1 << int.Parse([digit], CultureInfo.InvariantCulture));
    }
}
