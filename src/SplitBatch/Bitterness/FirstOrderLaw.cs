using System.Collections.Immutable;

namespace SplitBatch.Bitterness;

/// <summary>The law of propagation of uncertainty, first order (JCGM 100:2008, 5.1), with sensitivities by central differences.</summary>
internal static class FirstOrderLaw
{
    internal static ImmutableArray<Contribution> Contributions(DoseSampler sampler, out (double A, double B, double Difference) standard)
    {
        // Draw 2v has variable v one standard uncertainty up, draw 2v + 1 one down, all else at rest.
        var count = sampler.Variables.Length;
        var n = (2 * count + 7) / 8 * 8;
        var (errors, scratch, a, b) = (new double[count * n], new double[4 * n], new double[n], new double[n]);
        for (var v = 0; v < count; v++)
        {
            errors[v * n + 2 * v] = 1;
            errors[v * n + 2 * v + 1] = -1;
        }

        sampler.Evaluate(Side.A, errors, scratch, a);
        sampler.Evaluate(Side.B, errors, scratch, b);
        var parts = Enumerable.Range(0, count).Select(v => (
            sampler.Variables[v].Term,
            A: (a[2 * v] - a[2 * v + 1]) / 2,
            B: (b[2 * v] - b[2 * v + 1]) / 2)).ToArray();
        var (sumA, sumB, sumD) = (parts.Sum(p => p.A * p.A), parts.Sum(p => p.B * p.B), parts.Sum(p => (p.B - p.A) * (p.B - p.A)));
        standard = (Math.Sqrt(sumA), Math.Sqrt(sumB), Math.Sqrt(sumD));
        return
        [
            .. parts.GroupBy(p => p.Term).Select(group =>
            {
                var toDifference = group.Sum(p => (p.B - p.A) * (p.B - p.A));
                return new Contribution(
                    group.Key, Math.Sqrt(group.Sum(p => p.A * p.A)), Math.Sqrt(group.Sum(p => p.B * p.B)), Math.Sqrt(toDifference),
                    sumD == 0 ? 0 : toDifference / sumD);
            }).OrderByDescending(c => c.Share).ThenByDescending(c => Math.Max(c.ToA, c.ToB)),
        ];
    }
}
