namespace SplitBatch.Proof.TruthTable;

/// <summary>The panel's half of the truth table.</summary>
public static class PanelTable
{
    /// <summary>
    /// How many serving plans a cell draws; its trials take them in turn, since drawing one costs more than all that follows.
    /// </summary>
    public const int Plans = 100;

    /// <summary>Runs every cell.</summary>
    /// <param name="trials">Trials for each cell.</param>
    /// <param name="seed">The seed; cells and trials each have their own from it.</param>
    /// <param name="cells">Which cells; all unless given.</param>
    public static IReadOnlyList<PanelTally> Run(int trials, int seed, IEnumerable<PanelCell>? cells = null)
    {
        PanelCell[] all = [.. cells ?? PanelCell.All];
        var tallies = all.Select(cell => new PanelTally(cell)).ToArray();
        Parallel.For(0, all.Length, new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount }, i =>
        {
            int first = unchecked((seed * 1_000_003) + (i * 20_011));
            var plans = Enumerable.Range(0, Math.Min(Plans, trials)).Select(plan => PanelTrial.Serving(all[i], first + plan)).ToArray();
            for (int trial = 0; trial < trials; trial++)
                tallies[i].Add(PanelTrial.Run(all[i], plans[trial % plans.Length], first + trial));
        });
        return tallies;
    }
}
