using System.Globalization;
using SplitBatch.Brewing;

namespace SplitBatch.BrewDay;

/// <summary>
/// The two halves compared line by line: same, different within what the instrument can tell, different and so a confound, not measured.
/// </summary>
/// <remarks>
/// Two readings with half-widths a and b (95 %) may differ by the root of a² + b² when the halves are equal, by the usual rule
/// for independent errors. A difference without a stated uncertainty counts as a confound, because nobody can say that it is none.
/// </remarks>
public sealed class ParityCheck
{
    private readonly BatchLog log;
    private readonly ChangedQuantities variable;

    internal ParityCheck(BatchLog log, ChangedQuantities variable, IEnumerable<string>? expected)
    {
        this.log = log;
        this.variable = variable;
        var names = log.Quantities.Concat(expected ?? Expected).Distinct(StringComparer.OrdinalIgnoreCase);
        Lines = [.. names.Select(Line), .. Derived()];
    }

    /// <summary>What a split batch ought to have on both sides.</summary>
    public static IReadOnlyList<string> Expected { get; } =
    [
        BatchLog.OriginalGravity, BatchLog.FinalGravity, "volume into fermenter", "pitching temperature", "fermentation temperature", "pH",
        "colour", "carbonation", "yeast lot", "pitching date", "packaging date",
    ];

    /// <summary>
    /// Every line: the log's quantities in its order, then those that were expected, then what is worked out from gravities.
    /// </summary>
    public IReadOnlyList<ParityLine> Lines { get; }

    /// <summary>The lines on which something besides the variable differs; worked-out lines left out.</summary>
    public IReadOnlyList<ParityLine> Confounds => [.. Lines.Where(line => line.Verdict == Parity.Confound && !line.IsDerived)];

    /// <summary>The lines that one half or both lack.</summary>
    public IReadOnlyList<ParityLine> NotMeasured => [.. Lines.Where(line => line.Verdict == Parity.NotMeasured && !line.IsDerived)];

    /// <summary>The counts in a line, confounds by name.</summary>
    public override string ToString()
    {
        var measured = Lines.Where(line => !line.IsDerived).ToList();
        var same = measured.Count(line => line.Verdict == Parity.Same);
        var within = measured.Count(line => line.Verdict == Parity.WithinInstrument);
        var confounds = Confounds.Count == 0
            ? "no confound found"
            : $"confounds: {string.Join(", ", Confounds.Select(line => line.Quantity))}";
        var missing = NotMeasured.Count == 0
            ? "nothing expected is missing"
            : $"not measured: {string.Join(", ", NotMeasured.Select(line => line.Quantity))}";
        return $"{same} lines the same, {within} different within what the instrument can tell; {confounds}; {missing}.";
    }

    private ParityLine Line(string quantity)
    {
        var (a, b) = (log.Of(Side.A, quantity), log.Of(Side.B, quantity));
        IReadOnlyList<string> rows = [.. a.Concat(b).Select(entry => entry.Id).Distinct()];
        var (textA, textB) = (Show(a), Show(b));
        if (a.Count == 0 || b.Count == 0)
        {
            var who = a.Count + b.Count == 0 ? "either half" : a.Count == 0 ? "half A" : "half B";
            return new(quantity, textA, textB, null, null, "", Parity.NotMeasured,
                $"The {quantity} was not measured on {who}, so nobody can say whether it was equal.") { Rows = rows };
        }

        var units = a.Concat(b).Select(entry => entry.Unit?.Common).Distinct().ToList();
        var line = units is [{ } unit] ? Numbers(quantity, a, b, unit) : Words(quantity, a, b, textA!, textB!, mixed: units.Count > 1);
        return line with { A = textA, B = textB, Rows = rows };
    }

    private ParityLine Numbers(string quantity, IReadOnlyList<BatchEntry> a, IReadOnlyList<BatchEntry> b, string unit)
    {
        var difference = a.Average(entry => entry.CommonValue!.Value) - b.Average(entry => entry.CommonValue!.Value);
        var tolerance = Combine(HalfWidth(a), HalfWidth(b));
        return Judge(quantity, difference, tolerance, unit, Show(a)!, Show(b)!);
    }

    private ParityLine Judge(string quantity, double difference, double? tolerance, string unit, string a, string b)
    {
        var size = Format(Math.Abs(difference), unit);
        var values = $"The {quantity} was {a} in A and {b} in B";
        var isSame = Math.Abs(difference) < 1e-9;
        var (verdict, remark) = (isSame, variable.Contains(quantity), tolerance) switch
        {
            (true, _, _) => (Parity.Same, $"The {quantity} was the same in both halves: {a}."),
            (_, true, _) => (Parity.TheVariable, $"{values}; this follows from what the trial changes."),
            (_, _, null) =>
                (Parity.Confound, $"{values}, {size} apart, and the uncertainty of the instrument is not logged: a confound unless it is "
                    + $"shown to be none."),
            (_, _, { } most) when Math.Abs(difference) <= most * (1 + 1e-9) =>
                (Parity.WithinInstrument, $"{values}, {size} apart, which is within what the instruments can tell "
                    + $"({Format(most, unit)})."),
            (_, _, { } most) => (Parity.Confound,
                $"{values}, {size} apart, more than the instruments' uncertainty explains ({Format(most, unit)}): a confound."),
        };
        return new(quantity, a, b, difference, tolerance, unit, verdict, remark);
    }

    private ParityLine Words(string quantity, IReadOnlyList<BatchEntry> a, IReadOnlyList<BatchEntry> b, string textA, string textB,
        bool mixed)
    {
        string[] wordsA = [.. a.Select(entry => entry.Text).Distinct(StringComparer.OrdinalIgnoreCase)
            .Order(StringComparer.OrdinalIgnoreCase)];
        string[] wordsB = [.. b.Select(entry => entry.Text).Distinct(StringComparer.OrdinalIgnoreCase)
            .Order(StringComparer.OrdinalIgnoreCase)];
        var (verdict, remark) = (mixed, wordsA.SequenceEqual(wordsB, StringComparer.OrdinalIgnoreCase), variable.Contains(quantity)) switch
        {
            (true, _, _) =>
                (Parity.NotMeasured, $"The {quantity} was logged in units that cannot be compared ({textA} in A, {textB} in B)."),
            (_, true, _) => (Parity.Same, $"The {quantity} was the same in both halves: {textA}."),
            (_, _, true) =>
                (Parity.TheVariable, $"The {quantity} was {textA} in A and {textB} in B; this follows from what the trial changes."),
            _ => (Parity.Confound, $"The {quantity} was {textA} in A and {textB} in B: a confound."),
        };
        return new(quantity, textA, textB, null, null, "", verdict, remark);
    }

    private IEnumerable<ParityLine> Derived()
    {
        if (Fermented(Side.A) is not { } a || Fermented(Side.B) is not { } b) yield break;
        yield return Work("alcohol by volume", "%", beer => beer.PercentByVolume);
        yield return Work("apparent attenuation", "%", beer => beer.ApparentAttenuation * 100);
        yield return Work("real extract", "°P", beer => beer.RealExtract);

        ParityLine Work(string name, string unit, Func<Alcohol, double> of)
        {
            var line = Judge(name, of(a.Beer) - of(b.Beer), Combine(Spread(a, of), Spread(b, of)), unit, Format(of(a.Beer), unit),
                Format(of(b.Beer), unit));
            return line with { IsDerived = true };
        }
    }

    private (Alcohol Beer, double? Original, double? Final)? Fermented(Side side)
    {
        try
        {
            return log.Alcohol(side) is { } beer
                ? (beer, HalfWidth(log.Of(side, BatchLog.OriginalGravity)), HalfWidth(log.Of(side, BatchLog.FinalGravity)))
                : null;
        }
        catch (ArgumentOutOfRangeException)
        {
            return null;
        }
    }

    private static double? Spread((Alcohol Beer, double? Original, double? Final) half, Func<Alcohol, double> of)
    {
        if (half is not { Original: { } original, Final: { } final }) return null;
        var (og, fg) = (half.Beer.Original.Specific, half.Beer.Final.Specific);
        if (fg + final > og || og - original < fg) return null;
        return Combine((Of(og + original, fg) - Of(og - original, fg)) / 2, (Of(og, fg + final) - Of(og, fg - final)) / 2);

        double Of(double first, double second) => of(Alcohol.FromSpecific(first, second));
    }

    private static double? HalfWidth(IReadOnlyList<BatchEntry> entries) =>
        entries.All(entry => entry.CommonUncertainty is not null) ? entries.Max(entry => entry.CommonUncertainty) : null;

    private static double? Combine(double? a, double? b) => a is { } x && b is { } y ? Math.Sqrt(x * x + y * y) : null;

    private static string? Show(IReadOnlyList<BatchEntry> entries) =>
        entries.Count == 0 ? null : string.Join(", ", entries.Select(entry => entry.Shown()).Distinct());

    private static string Format(double value, string unit) =>
        string.Create(CultureInfo.InvariantCulture, $"{Math.Round(value, unit == "SG" ? 4 : 2)} {unit}")
            .Replace(" pH", "", StringComparison.Ordinal);
}
