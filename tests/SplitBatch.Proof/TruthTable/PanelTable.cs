namespace SplitBatch.Proof.TruthTable;

/// <summary>The panel's half of the truth table.</summary>
public static class PanelTable
{
    /// <summary>Runs every cell.</summary>
    /// <param name="trials">Trials for each cell.</param>
    /// <param name="seed">The seed; cells and trials each have their own from it.</param>
    /// <param name="cells">Which cells; all unless given.</param>
    public static IReadOnlyList<PanelTally> Run(int trials, int seed, IEnumerable<PanelCell>? cells = null)
    {
        PanelCell[] all = [.. cells ?? PanelCell.All];
        var tallies = all.Select(cell => new PanelTally(cell)).ToArray();
        Parallel.For(0, all.Length, i =>
        {
            for (int trial = 0; trial < trials; trial++) tallies[i].Add(PanelTrial.Run(all[i], unchecked((seed * 1_000_003) + (i * 20_011) + trial)));
        });
        return tallies;
    }
}
