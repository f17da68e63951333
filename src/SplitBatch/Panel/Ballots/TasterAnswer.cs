using System.Text.RegularExpressions;
using SplitBatch.Panel.Protocols;
using SplitBatch.Panel.Serving;

namespace SplitBatch.Panel.Ballots;

/// <summary>An answer read from a ballot and judged by the key.</summary>
/// <param name="Cups">The cups named, in the order named; empty for a word.</param>
/// <param name="Word">The word in its plain form: <c>A</c>, <c>not A</c>, <c>same</c> or <c>different</c>; null for codes.</param>
/// <param name="IsCorrect">Whether the key says so.</param>
public sealed partial record TasterAnswer(IReadOnlyList<Cup> Cups, string? Word, bool IsCorrect)
{
    private static readonly Dictionary<string, string> OwnWords = new(StringComparer.OrdinalIgnoreCase)
    {
        ["a"] = "A", ["nota"] = "not A", ["na"] = "not A", ["no"] = "not A", ["yes"] = "A",
    };

    private static readonly Dictionary<string, string> SameWords = new(StringComparer.OrdinalIgnoreCase)
    {
        ["same"] = "same", ["s"] = "same", ["different"] = "different", ["d"] = "different", ["diff"] = "different",
    };

    /// <summary>
    /// Reads and judges an answer to a set; on failure <paramref name="problem"/> says what is wrong and what is accepted.
    /// </summary>
    internal static TasterAnswer? Read(string text, ServedSet set, SetDesign design, Side expected, out string problem)
    {
        problem = "";
        if (string.IsNullOrWhiteSpace(text))
        {
            problem = "no answer was written";
            return null;
        }
        return design.AnswersByCode ? ReadCodes(text, set, design, expected, out problem) : ReadWord(text, set, design, out problem);
    }

    private static TasterAnswer? ReadWord(string text, ServedSet set, SetDesign design, out string problem)
    {
        bool own = design.Answer == AnswerKind.OwnOrNot;
        problem = "";
        if (!(own ? OwnWords : SameWords).TryGetValue(NotLetters().Replace(text, ""), out string? word))
        {
            problem = $"\"{text}\" is not an answer to this task; write {(own ? "A or not A" : "same or different")}";
            return null;
        }
        return new TasterAnswer([], word, (word is "not A" or "different") == design.Differs(set.Order));
    }

    private static TasterAnswer? ReadCodes(string text, ServedSet set, SetDesign design, Side expected, out string problem)
    {
        problem = "";
        string[] codes = [.. Digits().Matches(text).Select(match => match.Value)];
        string wanted = design.CodesInAnswer == 1 ? "one code" : "two codes";
        string choice = string.Join(", ", set.CodedCups.Select(cup => cup.Code));
        if (codes.Length == 0)
        {
            problem = $"\"{text}\" holds no code; write {wanted} out of {choice}";
            return null;
        }
        List<Cup> cups = [];
        foreach (string code in codes)
        {
            if (set.Find(code) is not { } cup)
            {
                string? near = set.CodedCups.Select(other => other.Code).Where(other => IsSlip(code, other)).Take(2)
                    .ToArray() is [var only] ? only : null;
                problem = $"the code {code} is not in set {set.Number}, which holds "
                    + $"{choice}{(near is null ? "" : $"; perhaps {near} was meant")}";
                return null;
            }
            cups.Add(cup);
        }
        // All four cups of a tetrad are two pairs; all five of two-out-of-five do not say which two are meant.
        bool bothPairs = design.Answer == AnswerKind.Pair && set.Order.OddBeer is null && cups.Count == set.CodedCups.Count();
        if (cups.Distinct().Count() != cups.Count || (cups.Count != design.CodesInAnswer && !bothPairs))
        {
            problem =
                $"the answer names {(cups.Distinct().Count() != cups.Count
                    ? "a code twice"
                    : $"{cups.Count} code{(cups.Count == 1 ? "" : "s")}")}; write {wanted} out of {choice}";
            return null;
        }
        return new TasterAnswer(cups, null, Judge(cups, set, design, expected));
    }

    private static bool Judge(List<Cup> cups, ServedSet set, SetDesign design, Side expected) => design.Answer switch
    {
        AnswerKind.OddCup => cups[0].Beer == set.Order.OddBeer,
        AnswerKind.MatchingCup => cups[0].Beer == set.Order.Reference,
        AnswerKind.StrongerCup => cups[0].Beer == expected,
        _ => cups[0].Beer == cups[1].Beer && (set.Order.OddBeer is not { } odd || cups[0].Beer == odd),
    };

    /// <summary>One digit wrong, or two neighbours swapped.</summary>
    private static bool IsSlip(string written, string code) =>
        written.Length == code.Length
        && (written.Zip(code).Count(pair => pair.First != pair.Second) == 1 || written.Order().SequenceEqual(code.Order()));

    [GeneratedRegex("[0-9]+")]
    private static partial Regex Digits();

    [GeneratedRegex("[^A-Za-z]")]
    private static partial Regex NotLetters();
}
