using SplitBatch.Lab;

namespace SplitBatch.Proof.ErrorRates;

/// <summary>Lab values of one beer from several runs: differences that are not there.</summary>
internal static class RunRates
{
    public static RateTable Table { get; } = new(
        "Lab values of several runs",
        "Two halves that are one beer; readings and runs scatter normally. Promised: a difference in at most 5 of 100, with the critical "
            + "difference of separate runs, from the run means of a control, and by t over runs that hold both halves. \"By "
            + "repeatability\" and \"by 1.96\" are the habits.",
        Run);

    private static IEnumerable<ErrorRate> Run(int runs, int seed)
    {
        var row = 0;
        foreach (var ratio in new[] { 0, 0.5, 1, 2 })
        foreach (var count in new[] { 1, 2, 4 })
        {
            var random = Draw.Source(seed, row++);
            double one = RunDifference.OneRun(1, count, count), separate = RunDifference.SeparateRuns(1, ratio, count, count);
            int byRuns = 0, byRepeatability = 0;
            for (var run = 0; run < runs; run++)
            {
                var apart = Math.Abs(Mean(random, random.Normal(0, ratio), count) - Mean(random, random.Normal(0, ratio), count));
                if (apart > separate) byRuns++;
                if (apart > one) byRepeatability++;
            }

            var setting = FormattableString.Invariant($"runs scatter {ratio:0.0} times as much as readings, {count} + {count} readings ")
                + FormattableString.Invariant($"in separate runs");
            yield return new(setting, "a difference", 0.05, byRuns, runs);
            yield return new(setting, "a difference, by repeatability", null, byRepeatability, runs);
        }

        foreach (var k in new[] { 3, 5, 11 })
        {
            var random = Draw.Source(seed, row++);
            int byControl = 0, byNormal = 0;
            for (var run = 0; run < runs; run++)
            {
                double[] control = [.. Enumerable.Range(0, k).Select(_ => Mean(random, random.Normal(0, 1), 2))];
                var apart = Math.Abs(Mean(random, random.Normal(0, 1), 2) - Mean(random, random.Normal(0, 1), 2));
                var mean = control.Average();
                if (apart > RunDifference.FromControl(control)) byControl++;
                if (apart > 1.96 * Math.Sqrt(2 * control.Sum(x => (x - mean) * (x - mean)) / (k - 1))) byNormal++;
            }

            yield return new($"a control read in {k} runs, halves in separate runs", "a difference", 0.05, byControl, runs);
            yield return new($"a control read in {k} runs, halves in separate runs", "a difference, by 1.96", null, byNormal, runs);
        }

        foreach (var k in new[] { 2, 3, 6 })
        {
            var random = Draw.Source(seed, row++);
            yield return new($"both halves in each of {k} runs that scatter 3 times as much as readings", "a difference", 0.05,
                Draw.Count(runs, () =>
                {
                    double[] middle = [.. Enumerable.Range(0, k).Select(_ => random.Normal(0, 3))];
                    return PairedRuns.Of([.. middle.Select(m => Mean(random, m, 2))],
                        [.. middle.Select(m => Mean(random, m, 2))]).Mean.PValue <= 0.05;
                }), runs);
        }
    }

    private static double Mean(Random random, double middle, int count) => middle + random.Normal(0, 1 / Math.Sqrt(count));
}
