using System.Text;
using SplitBatch.Proof.TruthTable;
using static System.FormattableString;

namespace SplitBatch.Proof.ErrorRates;

/// <summary>The tables of error rates as a page of Markdown.</summary>
public static class RateReport
{
    /// <summary>Runs every table and writes the page.</summary>
    public static string Of(int runs, int seed, string command)
    {
        var tables = RateTable.All.AsParallel().AsOrdered().Select(table => (table, rates: table.Run(runs, seed).ToArray())).ToArray();
        var all = tables.SelectMany(table => table.rates).ToArray();
        var promised = all.Where(rate => rate.Promised is not null).ToArray();
        var text = new StringBuilder();
        text.AppendLine(Invariant($"""
            # Error rates

            How often something false is said, where the truth is known: the rules for a single panel, for people who come back, for looks, controls, brews and lab values, each simulated {runs:N0} times a row from seed {seed}. Made by

            ```bash
            {command}
            ```

            {promised.Length:N0} rows carry a promise; {promised.Count(rate => rate.IsKept):N0} keep it. A promise is called broken when the rate is further above it than chance gives in one row of a hundred thousand ({100.0 * Promise.Largest(0.05, runs) / runs:0.0} % for a promise of 5 %). Rows without a promise show what a habit costs, or how often a rule finds what it is for.
            """));
        foreach (var (table, rates) in tables)
        {
            text.AppendLine().AppendLine($"## {table.Title}").AppendLine().AppendLine(table.Opening).AppendLine()
                .AppendLine("| setting | said | promised | rate | |").AppendLine("| --- | --- | ---: | ---: | --- |");
            foreach (var rate in rates)
            {
                var promise = rate.Promised is { } most ? Invariant($"{100 * most:0.#} %") : "";
                text.AppendLine(Invariant($"| {rate.Setting} | {rate.Claim} | {promise} | {100 * rate.Rate:0.0} % | ")
                    + Invariant($"{(rate.Promised is null ? "" : rate.IsKept ? "kept" : "broken")} |"));
            }
        }

        return text.ToString().ReplaceLineEndings("\n");
    }
}
