using SplitBatch.Panel.Serving;

namespace SplitBatch.Panel.Ballots;

/// <summary>Which cup a taster means by a code, for what is said about cups beside the answer: ratings, comments, a preference.</summary>
internal static class CupFinder
{
    /// <summary>The set and the cup; on failure <paramref name="problem"/> says what is wrong and what is accepted.</summary>
    /// <param name="plan">The serving plan, which is the key.</param>
    /// <param name="taster">The taster as written.</param>
    /// <param name="code">The code as written.</param>
    /// <param name="number">The set's number where it is told.</param>
    /// <param name="problem">What is wrong, as a sentence; empty where a cup is found.</param>
    public static (ServedSet Set, Cup Cup)? Find(ServingPlan plan, string taster, string code, int? number, out string problem)
    {
        problem = "";
        var name = Plain(taster);
        var own = plan.Sets.Where(set => Plain(set.Taster) == name).ToArray();
        if (own.Length == 0)
        {
            problem = $"The key has no taster \"{taster}\".";
            return null;
        }

        var holding = own.Where(set => (number is null || set.Number == number) && set.Find(code.Trim()) is not null).ToArray();
        if (holding.Length == 1) return (holding[0], holding[0].Find(code.Trim())!);
        problem = holding.Length == 0
            ? $"The code {code} is not on a cup of {taster}, who had "
                + $"{string.Join(", ", own.SelectMany(set => set.CodedCups).Select(cup => cup.Code))}."
            : $"{taster} had the code {code} in sets {string.Join(" and ", holding.Select(set => set.Number))}, and no set is named.";
        return null;
    }

    private static string Plain(string name) => string.Concat(name.Where(c => !char.IsWhiteSpace(c))).ToUpperInvariant();
}
