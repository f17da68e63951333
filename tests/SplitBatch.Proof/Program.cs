using System.Globalization;
using System.Runtime.CompilerServices;
using SplitBatch.Proof.ErrorRates;
using SplitBatch.Proof.Fuzz;
using SplitBatch.Proof.Mutants;
using SplitBatch.Proof.Sealed;
using SplitBatch.Proof.Sentences;
using SplitBatch.Proof.TruthTable;
using SplitBatch.Trials.Files;

namespace SplitBatch.Proof;

/// <summary>
/// The long runs: <c>truth-table</c>, <c>error-rates</c>, <c>sealed</c>, <c>sentences</c>, <c>mutate</c>, <c>fuzz</c> and <c>kills</c>.
/// </summary>
internal static class Program
{
    public static async Task<int> Main(string[] args)
    {
        CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
        switch (args)
        {
            case ["truth-table", .. var options]:
                int trials = options is [var count, ..] ? int.Parse(count, CultureInfo.InvariantCulture) : 10_000;
                var (panels, brews, whole) = (Task.Run(() => PanelTable.Run(trials, 2026)), Task.Run(() => BrewTally.Run(trials, 2026)),
                    Task.Run(() => WholeTrial.Run(trials, 2026)));
                Console.Write(Report.Of(await panels, await brews, await whole, 2026,
                    $"dotnet run -c Release --project tests/SplitBatch.Proof -- truth-table {trials}"));
                return 0;
            case ["error-rates", .. var options]:
                int runs = options is [var each, ..] ? int.Parse(each, CultureInfo.InvariantCulture) : 10_000;
                Console.Write(RateReport.Of(runs, 2026, $"dotnet run -c Release --project tests/SplitBatch.Proof -- error-rates {runs}"));
                return 0;
            case ["sealed", .. var options]:
                int cheats = options is [var some, ..] ? int.Parse(some, CultureInfo.InvariantCulture) : 10_000;
                Console.Write(CheatTable.Report(CheatTable.Run(cheats, 2026),
                    $"dotnet run -c Release --project tests/SplitBatch.Proof -- sealed {cheats}"));
                return 0;
            case ["sentences", .. var options]:
                int printed = options is [var number, ..] ? int.Parse(number, CultureInfo.InvariantCulture) : 1000;
                int from = options is [_, var start, ..] ? int.Parse(start, CultureInfo.InvariantCulture) : 1;
                SentenceRun.Write(printed, from, captionsOfEach: 20, Console.Out);
                return 0;
            case ["mutate", var room]:
                Console.Write(MutantReport.Of(Root(), room, $"dotnet run -c Release --project tests/SplitBatch.Proof -- mutate {room}"));
                return 0;
            case ["fuzz", .. var options]:
                int cases = options is [var many, ..] ? int.Parse(many, CultureInfo.InvariantCulture) : 100_000;
                int seed = options is [_, var first, ..] ? int.Parse(first, CultureInfo.InvariantCulture) : 1;
                var (finds, log) = await FuzzRun.AllAsync(cases, seed, options is [_, _, var only] ? only : null);
                Console.WriteLine($"| target | cases, from seed {seed} | took | finds |\n| --- | ---: | ---: | ---: |");
                Console.Write(log);
                foreach (var find in finds) Console.WriteLine($"\n- {find}");
                return finds.Count == 0 ? 0 : 1;
            case ["kills", .. var options]:
                int kills = options is [var wanted, ..] ? int.Parse(wanted, CultureInfo.InvariantCulture) : 1000;
                var run = await KillRun.Of(kills, 2026);
                Console.WriteLine($"# Programs killed while they write\n\nMade by `dotnet run -c Release --project tests/SplitBatch.Proof "
                    + $"-- kills {kills}`, seed 2026.\n");
                Console.WriteLine($"{run.Kills} writers killed, {run.Acknowledged} rows acknowledged and all there, {run.Named} rows cut "
                    + $"short and all named.");
                return 0;
            case [WriterProgram.Word, ..]:
                return WriterProgram.Run(args);
            default:
                Console.Error.WriteLine("truth-table [trials]    prints the truth table, 10000 trials a cell unless told otherwise");
                Console.Error
                    .WriteLine("error-rates [runs]    prints how often something false is said, 10000 runs a row unless told otherwise");
                Console.Error
                    .WriteLine("sealed [trials]    what becomes of false claims under sealed plans, 10000 trials a row unless told "
                        + "otherwise");
                Console.Error
                    .WriteLine("sentences [trials] [first]    prints random whole trials for tests/reference/sentences/read_sentences.py, "
                        + "1000 unless told otherwise");
                Console.Error.WriteLine("mutate Evidence    changes what may be said in every way, and tells what no test notices");
                Console.Error.WriteLine("fuzz [cases] [seed] [target]    spoils inputs, 100000 unless told otherwise");
                Console.Error.WriteLine("kills [count]    kills programs that write, 1000 unless told otherwise");
                return 2;
        }
    }

    /// <summary>The project's top folder, from where this file was built.</summary>
    private static string Root([CallerFilePath] string here = "") =>
        Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "..", ".."));
}
