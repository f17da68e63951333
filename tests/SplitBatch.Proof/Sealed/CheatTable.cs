using System.Text;
using SplitBatch.Panel.Serving;
using SplitBatch.Proof.TruthTable;
using static System.FormattableString;

namespace SplitBatch.Proof.Sealed;

/// <summary>What became of many trials of one kind.</summary>
/// <param name="Cheat">What was done.</param>
/// <param name="Truth">What was true.</param>
/// <param name="Trials">Trials.</param>
/// <param name="Cheated">Trials in which there was an occasion.</param>
/// <param name="WantedAndFalse">Of those, the ones whose count, read to please, says what is false.</param>
/// <param name="FalseAndClean">Of those, the ones that reach a headline without saying what was done.</param>
/// <param name="HonestAndFalse">Trials without an occasion whose sealed verdict is false: the error that was declared.</param>
public sealed record CheatRow(Cheat Cheat, Truth Truth, int Trials, int Cheated, int WantedAndFalse, int FalseAndClean,
    int HonestAndFalse);

/// <summary>Every cheat by every truth that it could hide.</summary>
public static class CheatTable
{
    private const int Keys = 100;

    /// <summary>Plays every cell.</summary>
    /// <param name="trials">Trials in each.</param>
    /// <param name="seed">The seed.</param>
    public static IReadOnlyList<CheatRow> Run(int trials, int seed)
    {
        var cells =
            (from cheat in Enum.GetValues<Cheat>() from truth in new[] { Truth.All[0], Truth.All[2], Truth.All[3] } select (cheat, truth))
                .ToArray();
        var rows = new CheatRow[cells.Length];
        Parallel.For(0, cells.Length, new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount },
            i => rows[i] = Of(cells[i].cheat, cells[i].truth, trials, unchecked((seed * 1_000_003) + (i * 20_011))));
        return rows;
    }

    /// <summary>The table as Markdown.</summary>
    public static string Report(IReadOnlyList<CheatRow> rows, string command)
    {
        var text = new StringBuilder($"""
            # Sealed plans, and people who do something to them

            Made by `{command}`. In each row a plan of 24 triangles is sealed (of 60 where somebody stops as soon as the margin is ruled out, of 24 directional pairs where the question is turned round), with an alpha of 5 % and a margin of 30 %; simulated people taste, and somebody does what the first column says. The count goes through the same seal, history and verdict as that of a trial folder; a situation that came up before in its row, with the same counts, orders and plans, is not put through them again.

            *Said falsely*: what the count would claim by the reading that was made to please, and what is not true. *In a clean headline*: of those and of the false verdicts by the sealed plan, how many stand under a headline that does not open with what was done. It has to be none. *Without an occasion*: the other trials of the row kept to their plan; their errors are the declared ones.

            | what is done | who can tell | trials | done in | said falsely | in a clean headline | without an occasion, false |
            | --- | --- | ---: | ---: | ---: | ---: | ---: |

            """);
        foreach (var row in rows)
        {
            text.AppendLine(Invariant($"| {row.Cheat.InWords()} | {row.Truth.Discriminators:0 %} | {row.Trials:N0} | {row.Cheated:N0} | ")
                + Invariant($"{row.WantedAndFalse:N0} | {row.FalseAndClean} | {row.HonestAndFalse:N0} |"));
        }

        return text.ToString();
    }

    private static CheatRow Of(Cheat cheat, Truth truth, int trials, int first)
    {
        var game = new CheatTrial(cheat, truth);
        var keys = Enumerable.Range(0, Math.Min(Keys, trials)).Select(i => (game.Key(first + i), game.Key(first + i + 500_009, "second")))
            .ToArray<(ServingPlan Main, ServingPlan Second)>();
        int cheated = 0, wanted = 0, clean = 0, honest = 0;
        for (var trial = 0; trial < trials; trial++)
        {
            var (main, second) = keys[trial % keys.Length];
            var outcome = game.Run(main, second, first + trial);
            if (!outcome.Cheated)
            {
                if (outcome.FalseBySeal) honest++;
                continue;
            }

            cheated++;
            if (outcome.Wanted) wanted++;
            if ((outcome.Wanted || outcome.FalseBySeal)
                && (outcome.IsClean || !outcome.Headline.StartsWith("A lead to follow, not a test: ", StringComparison.Ordinal))) clean++;
        }

        return new(cheat, truth, trials, cheated, wanted, clean, honest);
    }
}
