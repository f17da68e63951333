using System.Diagnostics;
using static System.FormattableString;

namespace SplitBatch.Benchmarks.Races;

/// <summary>One piece of work, done here and by peers in turn, so that a busy machine is busy for all.</summary>
/// <param name="Name">The work.</param>
/// <param name="Own">The work, done once.</param>
/// <param name="Peers">Who else does it.</param>
/// <param name="Target">How many times faster than the best peer this should be.</param>
internal sealed record Race(string Name, Action Own, IReadOnlyList<Peer> Peers, double Target)
{
    private const int Turns = 3, Rounds = 5;

    /// <summary>Every race.</summary>
    public static IReadOnlyList<Race> All { get; } =
    [
        new("tasters needed: 5 alphas, 4 powers, 5 shares, every n to 2,000", () => Work.TastersTable(),
            [Peer.R("tasters_table.R"), Peer.Python("tasters_table.py")], 10),
        new("10 million simulated triangles, three normal draws each, one thread", () => Work.Triangles(),
            [Peer.Python("triangles.py")], 2),
        new("a million draws of two doses with their errors, one thread", () => Work.Doubt(), [Peer.Python("doubt.py")], 2),
        new("beta-binomial fits to 20 panels of 30 people", () => Work.Fits(), [Peer.R("fits.R") with { Name = "R, VGAM" }], 20),
    ];

    /// <summary>Runs the race and says who was how fast, and the ratio, as a row of Markdown.</summary>
    public string Run()
    {
        Own(); // Compiles it.
        double own = double.MaxValue;
        var best = Peers.ToDictionary(peer => peer, _ => double.MaxValue);
        for (int turn = 0; turn < Turns; turn++)
        {
            for (int round = 0; round < Rounds; round++)
            {
                var clock = Stopwatch.StartNew();
                Own();
                own = Math.Min(own, clock.Elapsed.TotalMilliseconds);
            }

            foreach (var peer in Peers) best[peer] = Math.Min(best[peer], peer.Best() ?? double.MaxValue);
        }

        var there = best.Where(peer => peer.Value < double.MaxValue).ToList();
        string peers = string.Join("; ", there.Select(peer => Invariant($"{peer.Key.Name} {peer.Value:0.0} ms")));
        return there.Count == 0
            ? Invariant($"| {Name} | {own:0.00} ms | no peer is installed | | {Target:0} |")
            : Invariant($"| {Name} | {own:0.00} ms | {peers} | {there.Min(peer => peer.Value) / own:0.0} | {Target:0} |");
    }

    /// <summary>How much faster two threads are than one.</summary>
    public static string Scaling(string name, Action one, Action two)
    {
        double first = double.MaxValue, second = double.MaxValue;
        one();
        two();
        for (int round = 0; round < Turns * Rounds; round++)
        {
            var clock = Stopwatch.StartNew();
            one();
            first = Math.Min(first, clock.Elapsed.TotalMilliseconds);
            clock.Restart();
            two();
            second = Math.Min(second, clock.Elapsed.TotalMilliseconds);
        }

        return Invariant($"| {name} | {first:0.0} ms | {second:0.0} ms | {first / second:0.00} |");
    }
}
