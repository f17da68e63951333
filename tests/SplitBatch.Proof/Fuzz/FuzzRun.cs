using System.Diagnostics;
using System.Runtime.CompilerServices;
using System.Text;
using static System.FormattableString;

namespace SplitBatch.Proof.Fuzz;

/// <summary>Runs the targets, and tells how many cases each had and what was found.</summary>
public static class FuzzRun
{
    /// <summary>The shares of the cases: a command and a spoilt folder cost more than a spoilt frame.</summary>
    private static readonly (string Name, int Percent)[] Shares = [("trial folder", 20), ("notebook runner", 35), ("command line", 5),
        ("Jupyter socket", 40)];

    internal static string Root => Path.GetFullPath(Path.Combine(Path.GetDirectoryName(Here())!, "..", "..", ".."));

    /// <summary>Runs so many cases in all.</summary>
    /// <param name="cases">How many.</param>
    /// <param name="seed">The first case's seed.</param>
    /// <param name="only">One target by name; all when null.</param>
    /// <param name="patience">How long a case may take.</param>
    public static async Task<(IReadOnlyList<Find> Finds, string Log)> AllAsync(int cases, int seed, string? only = null,
        TimeSpan? patience = null)
    {
        List<Find> finds = [];
        var log = new StringBuilder();
        foreach (var (name, percent) in Shares)
        {
            if (only is not null && only != name) continue;
            int count = only is null ? cases * percent / 100 : cases;
            var clock = Stopwatch.StartNew();
            var found = await OneAsync(name, Enumerable.Range(seed, count), patience ?? TimeSpan.FromSeconds(60));
            log.AppendLine(Invariant($"| {name} | {count:N0} | {clock.Elapsed.TotalSeconds:0} s | {found.Count} |"));
            finds.AddRange(found);
        }

        return (finds, log.ToString());
    }

    /// <summary>Runs one target on given seeds.</summary>
    public static async Task<IReadOnlyList<Find>> OneAsync(string name, IEnumerable<int> seeds, TimeSpan patience)
    {
        var scratch = Directory.CreateTempSubdirectory("splitbatch-fuzz-");
        try
        {
            string demo = Path.Combine(Root, "data-demo");
            if (name == "Jupyter socket")
            {
                await using var socket = new SocketTarget();
                return socket.Run(seeds, patience);
            }

            Target target = name switch
            {
                "trial folder" => new TrialTarget(demo, scratch.FullName),
                "notebook runner" => new NotebookTarget(Path.Combine(Root, "notebooks"), scratch.FullName),
                "command line" => new CommandTarget(demo, scratch.FullName),
                _ => throw new ArgumentException($"There is no target \"{name}\".", nameof(name)),
            };
            return target.Run(seeds, patience);
        }
        finally
        {
            scratch.Delete(recursive: true);
        }
    }

    private static string Here([CallerFilePath] string path = "") => path;
}
