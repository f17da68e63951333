using SplitBatch.Lab;

namespace SplitBatch.Proof.ErrorRates;

/// <summary>Halves called equivalent that differ by the margin, and how often halves that are alike are found so.</summary>
internal static class EquivalenceRates
{
    public static RateTable Table { get; } = new(
        "Equivalence of lab means",
        "Readings scatter normally with a standard deviation of 1; the margin is 3. Promised at 5 %: halves that differ by the margin are "
            + "not called equivalent, whether the scatter is known or estimated from the run. Rows without a promise give the power at "
            + "equal means, beside what the plan foretells, and what it costs to leave out that the halves were in separate runs.",
        Run);

    private const double Margin = 3;

    private static IEnumerable<ErrorRate> Run(int runs, int seed)
    {
        var row = 0;
        foreach (var (count, others) in new[] { (2, 0), (2, 6), (3, 0), (4, 0) })
        foreach (var difference in new[] { Margin, -Margin, 0 })
        {
            var random = Draw.Source(seed, row++);
            int known = 0, estimated = 0;
            for (var run = 0; run < runs; run++)
            {
                double[] a = Readings(random, difference, count), b = Readings(random, 0, count);
                double[][] more = [.. Enumerable.Range(0, others).Select(_ => Readings(random, 20, 2))];
                if (LabEquivalence.Known(a.Average() - b.Average(), count, count, 1, Margin).IsEquivalent) known++;
                if (LabEquivalence.Estimated(a, b, Margin, more).IsEquivalent) estimated++;
            }

            var freedom = (2 * (count - 1)) + others;
            double? promise = difference == 0 ? null : 0.05;
            var setting = difference == 0
                ? $"equal halves, {count} + {count} readings"
                : $"halves {difference:0} apart, {count} + {count} readings";
            yield return new(setting, "equivalent, scatter known" + Planned(null), promise, known, runs);
            yield return new(setting, $"equivalent, scatter estimated with {freedom} degrees of freedom" + Planned(freedom), promise,
                estimated, runs);

            string Planned(int? df) => difference == 0
                ? FormattableString.Invariant($" (planned {100 * EquivalencePlan.Power(1, count, count, Margin, freedom: df):0.0} %)")
                : "";
        }

        foreach (var stated in new[] { 1.0, 0 })
        {
            var random = Draw.Source(seed, row++);
            yield return new("halves 3 apart in separate runs that scatter as much as readings, 2 + 2 readings",
                stated > 0 ? "equivalent" : "equivalent, the runs left out", stated > 0 ? 0.05 : null, Draw.Count(runs, () =>
                {
                    var apart = Readings(random, Margin + random.Normal(0, 1), 2).Average()
                        - Readings(random, random.Normal(0, 1), 2).Average();
                    return LabEquivalence.Known(apart, 2, 2, 1, Margin, stated).IsEquivalent;
                }), runs);
        }
    }

    private static double[] Readings(Random random, double mean, int count) =>
        [.. Enumerable.Range(0, count).Select(_ => random.Normal(mean, 1))];
}
