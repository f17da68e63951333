using System.Collections.Immutable;
using SplitBatch.Brewing;

namespace SplitBatch.Bitterness;

/// <summary>All sources of error in a pair of doses, each marked shared or independent.</summary>
/// <example><code>ErrorBudget.For(match).With("volume, each kettle", standard: 0.03)</code></example>
public sealed record ErrorBudget
{
    /// <summary>A budget of the given terms.</summary>
    /// <exception cref="ArgumentException">Two terms share a name.</exception>
    public ErrorBudget(IEnumerable<ErrorTerm> terms)
    {
        ArgumentNullException.ThrowIfNull(terms);
        Terms = [.. terms];
        if (Terms.GroupBy(term => term.Name).FirstOrDefault(group => group.Count() > 1) is { } twice)
        {
            throw new ArgumentException($"Two error terms are called \"{twice.Key}\"; give each its own name.", nameof(terms));
        }
    }

    /// <summary>The terms: the rows of a table.</summary>
    public ImmutableArray<ErrorTerm> Terms { get; }

    /// <summary>
    /// The usual terms for a match. Assay, storage and form come from the lots and the form factors, the reading error from the
    /// scale. The others are common practice without a source: change them to what you know of your own brewery.
    /// </summary>
    public static ErrorBudget For(ChargeMatch match)
    {
        ArgumentNullException.ThrowIfNull(match);
        const string usual = "common practice, no source";
        HopLot[] Lots(SideDose side) => [.. side.Charges.Select(charge => charge.Lot).DistinctBy(lot => lot.Name)];
        var (lotsA, lotsB) = (Lots(match.A), Lots(match.B));
        var lots = lotsA.Concat(lotsB).DistinctBy(lot => lot.Name).ToArray();
        var forms = lots.Select(lot => lot.Form).Distinct();
        Sharing Of<T>(T key, Func<HopLot, T> by) where T : notnull =>
            lotsA.Any(lot => by(lot).Equals(key)) && lotsB.Any(lot => by(lot).Equals(key)) ? Sharing.Shared : Sharing.Independent;
        return new(
        [
            .. lots.Where(lot => lot.Form != HopForm.Oil)
                .Select(lot => new ErrorTerm($"assay, {lot.Name}", ErrorKind.Alpha, lot.AlphaUncertainty.RelativeTo(lot.Alpha),
                    Of(lot.Name, l => l.Name))
                {
                    Target = lot.Name, Source = lot.AlphaUncertainty.Basis, Remedy = $"have {lot.Name} assayed",
                    Shape = lot.AlphaUncertainty == AssayUncertainty.Packet ? ErrorShape.Rectangular : ErrorShape.Normal,
                }),
            .. lots.Where(lot => lot.StorageUncertainty > 0)
                .Select(lot => new ErrorTerm($"storage, {lot.Name}", ErrorKind.Alpha, lot.StorageUncertainty, Of(lot.Name, l => l.Name))
                {
                    Target = lot.Name, Source = lot.AgedBy is { } model ? $"storage model of {model}" : "storage model",
                    Remedy = $"have {lot.Name} assayed on brew day",
                }),
            .. forms.Where(form => match.A.Dose.Forms[form].FactorUncertainty > 0)
                .Select(form => new ErrorTerm($"form factor, {form.InWords()}", ErrorKind.Form, match.A.Dose.Forms[form].FactorUncertainty,
                    Of(form, l => l.Form))
                {
                    Target = form.InWords(), Source = match.A.Dose.Forms[form].Source,
                    Remedy = "use one form in both halves, or learn the factor from your own returns",
                }),
            new("scale, reading", ErrorKind.Reading, match.Scale.Grams / Math.Sqrt(12), Sharing.Independent)
            {
                Shape = ErrorShape.Rectangular,
                Source = "the scale's resolution",
                Remedy = "weigh on a finer scale",
            },
            new("scale, calibration", ErrorKind.Calibration, 0.002, Sharing.Shared)
            {
                Source = usual,
                Remedy = "check the scale with a known mass",
            },
            new("volume, common gauge", ErrorKind.Volume, 0.015, Sharing.Shared)
            {
                Source = usual,
                Remedy = "calibrate the gauge with weighed water",
            },
            new("volume, each kettle", ErrorKind.Volume, 0.015, Sharing.Independent)
            {
                Source = usual,
                Remedy = "weigh the wort of each half",
            },
            new("gravity", ErrorKind.Gravity, 1, Sharing.Shared) { Source = usual, Remedy = "check the hydrometer in water" },
            new("time", ErrorKind.Minutes, 0.5, Sharing.Independent) { Source = usual, Remedy = "time both halves by one clock" },
            new("formula", ErrorKind.Formula, 0.20, Sharing.Shared) { Source = usual, Remedy = "learn the house factor from returns" },
            .. AlikeInTime(match) ? [] : (ErrorTerm[])[new("formula, unlike times", ErrorKind.Formula, 0.10, Sharing.Independent)
            {
                Source = "judgement, no source: a formula that is off at one time or temperature is not off alike at another",
                Remedy = "add both halves' hops at one time, or have both beers measured",
            }],
            new("kettle and yeast, each half", ErrorKind.Estimate, 0.04, Sharing.Independent)
            {
                Source = usual,
                Remedy = "split one wort, pitch one yeast, ferment side by side",
            },
        ]);
    }

    /// <summary>The same budget with one term changed.</summary>
    /// <param name="name">The term's name.</param>
    /// <param name="standard">Its new standard uncertainty; unchanged when null.</param>
    /// <param name="sharing">Whether it is shared; unchanged when null.</param>
    /// <exception cref="ArgumentException">There is no such term; the message lists those there are.</exception>
    public ErrorBudget With(string name, double? standard = null, Sharing? sharing = null)
    {
        var old = Find(name);
        return new(
            Terms.Replace(old,
                old with { Standard = standard ?? old.Standard, Sharing = sharing ?? old.Sharing,
                    Source = standard is null ? old.Source : "as given" }));
    }

    /// <summary>The same budget with one more term.</summary>
    public ErrorBudget With(ErrorTerm term) => new(Terms.Add(term));

    /// <summary>The same budget without a term.</summary>
    /// <exception cref="ArgumentException">There is no such term.</exception>
    public ErrorBudget Without(string name) => new(Terms.Remove(Find(name)));

    /// <summary>For example <c>11 sources of error: ...</c>.</summary>
    public override string ToString() => $"{Terms.Length} sources of error: {string.Join("; ", Terms)}";

    /// <summary>
    /// Whether the halves' hops meet like conditions, weighted by alpha acid: only then is the formula's error one and the same.
    /// </summary>
    private static bool AlikeInTime(ChargeMatch match)
    {
        static (double Minutes, double Gravity) Mean(SideDose side)
        {
            var (sum, weight) = (0.0, 0.0);
            for (var i = 0; i < side.Charges.Length; i++)
            {
                if (!side.Dose.IsModelled(i)) continue;
                weight += side.Charges[i].AlphaMass.Grams;
                sum += side.Charges[i].AlphaMass.Grams * side.Dose.Exposures[i].EquivalentMinutes;
            }

            return (weight == 0 ? 0 : sum / weight, side.Estimate.Kettle.MeanGravity.Points);
        }

        var (a, b) = (Mean(match.A), Mean(match.B));
        return Math.Abs(a.Minutes - b.Minutes) <= 0.2 * Math.Max(a.Minutes, b.Minutes) && Math.Abs(a.Gravity - b.Gravity) <= 5;
    }

    private ErrorTerm Find(string name) => Terms.FirstOrDefault(term => term.Name == name)
        ?? throw new ArgumentException(
            $"There is no error term \"{name}\"; there are: {string.Join(", ", Terms.Select(term => term.Name))}.", nameof(name));
}
