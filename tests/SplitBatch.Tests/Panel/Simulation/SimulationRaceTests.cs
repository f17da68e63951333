using System.Diagnostics;
using System.Globalization;
using SplitBatch.Numbers;
using SplitBatch.Panel.Protocols;
using Xunit.Abstractions;

namespace SplitBatch.Panel.Simulation;

/// <summary>
/// The simulation beside its vectorised NumPy counterpart, in one run on one core each. The shares must agree; the speeds are told, and
/// recorded in tests/reference/panel/simulation-race.csv, but not tested, because a machine may be busy.
/// </summary>
public class SimulationRaceTests(ITestOutputHelper output)
{
    private static readonly SimulatedTasters Mixed = new(DPrimeSpread.Discriminators(0.30, dPrime: 2)) { Guessing = 0.10 };

    [NumPyFact]
    public void Shares_are_NumPys_and_the_ratio_of_the_speeds_is_told()
    {
        int tastings = Environment.GetEnvironmentVariable("SPLITBATCH_RACE") is { } wish
            ? int.Parse(wish, CultureInfo.InvariantCulture)
            : 1_000_000;
        const int rounds = 3;
        var theirs = NumPy(tastings, rounds);
        var (triangle, panels) = (
            Least(rounds, () => Simulate.Tastings(Protocol.Triangle, 1, tastings, seed: 1, threads: 1).CorrectShare),
            Least(rounds, () => Simulate.Panels(Protocol.Triangle, 24, tastings / 24, seed: 1, Mixed, threads: 1).AtLeast(13)));

        output.WriteLine(theirs.Head);
        foreach (var (task, own) in new[] { ("triangle", triangle), ("panels", panels) })
        {
            var (share, seconds) = theirs.Tasks[task];
            output.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"{task},{tastings},{own.Share:0.000000},{share:0.000000},{tastings / own.Seconds / 1e6:0.0},"
                    + $"{tastings / seconds / 1e6:0.0},{seconds / own.Seconds:0.00}"));
        }

        double exact = Protocol.Triangle.CorrectShare(1);
        Assert.All([triangle.Share, theirs.Tasks["triangle"].Share],
            share => Assert.InRange(share, exact - Error(exact, tastings), exact + Error(exact, tastings)));
        double right = Mixed.ExpectedCorrect(Protocol.Triangle), reached = ExactBinomial.AtLeast(13, 24, right);
        Assert.All([panels.Share, theirs.Tasks["panels"].Share],
            share => Assert.InRange(share, reached - Error(reached, tastings / 24), reached + Error(reached, tastings / 24)));
    }

    private static double Error(double p, int n) => 5 * Math.Sqrt(p * (1 - p) / n);

    /// <summary>
    /// The least processor time of the rounds. It is that of the whole process, so other tests that run meanwhile count against us.
    /// </summary>
    private static (double Share, double Seconds) Least(int rounds, Func<double> task)
    {
        task();
        double share = 0, least = double.PositiveInfinity;
        for (int round = 0; round < rounds; round++)
        {
            var start = Environment.CpuUsage.TotalTime;
            share = task();
            least = Math.Min(least, (Environment.CpuUsage.TotalTime - start).TotalSeconds);
        }

        return (share, least);
    }

    private static (string Head, Dictionary<string, (double Share, double Seconds)> Tasks) NumPy(int tastings, int rounds)
    {
        using var process =
            Process.Start(new ProcessStartInfo(NumPyFactAttribute.Python ?? "python3",
                [Reference.PathOf("simulation_race.py"), Text(tastings), Text(rounds)])
            {
                RedirectStandardOutput = true,
                Environment = { ["OMP_NUM_THREADS"] = "1" },
            })!;
        var lines = process.StandardOutput.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries);
        process.WaitForExit();
        Assert.Equal(0, process.ExitCode);
        return (lines[0], lines.Skip(1).Select(line => line.Split(','))
            .ToDictionary(part => part[0], part => (Number(part[1]), Number(part[2]))));
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}

/// <summary>
/// A test that needs Python with NumPy: skipped, with the reason, on a machine without; never skipped in continuous integration.
/// </summary>
internal sealed class NumPyFactAttribute : FactAttribute
{
    /// <summary>The first Python that has NumPy: the system's, then the one of the path; null for none.</summary>
    public static string? Python { get; } = new[] { Installed.DebianPython, "python3" }
        .FirstOrDefault(python => Installed.Runs(python, "-c", "import numpy"));

    public NumPyFactAttribute() =>
        Skip = Installed.Reason(() => Python is null ? "Python with NumPy is not installed on this machine." : null);
}
