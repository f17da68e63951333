namespace SplitBatch.Numbers;

/// <summary>Fisher's exact test of two shares.</summary>
internal static class FisherExact
{
    /// <summary>
    /// The chance of so many hits or more among all such answers, where both kinds of set are answered alike; one-sided.
    /// </summary>
    public static double UpperTail(int hits, int different, int falseAlarms, int alike)
    {
        int total = hits + falseAlarms, n = different + alike;
        if (total == 0 || total == n) return 1;
        double p = (double)total / n, q = 1 - p;
        var last = Math.Min(different, total);
        var from = Math.Max(hits, total - alike);
        if (from > last) return 0;
        var first = ExactBinomial.LogPoint(from, different, p, q) + ExactBinomial.LogPoint(total - from, alike, p, q)
            - ExactBinomial.LogPoint(total, n, p, q);
        double sum = 1, term = 1;
        for (var x = from; x < last; x++)
        {
            var ratio = (double)(different - x) * (total - x) / ((x + 1.0) * (alike - total + x + 1));
            term *= ratio;
            sum += term;
            if (ratio < 1 && term < sum * 1e-18) break;
        }

        sum *= Math.Exp(first);
        return Math.Min(1, sum);
    }
}
