using SplitBatch.Bitterness.Models;
using SplitBatch.Brewing;
using SplitBatch.Numbers;
using UnitsNet;
using static SplitBatch.Bitterness.InventedDose;

namespace SplitBatch.Bitterness;

/// <summary>The terms of the usual budget, the law of propagation by hand, and the summary of draws recomputed from them.</summary>
public class DoubtEdgesTests
{
    private static readonly Kettle Kettle = Kettle.Metric(20, 1.050);
    private static readonly HopLot Cones = HopLot.Cones("cones", 5), Pellets = HopLot.Pellets("pellets", 10);

    private static ChargeMatch Given(HopCharge[] a, HopCharge[] b, Kettle? kettleB = null, double scale = 1) =>
        ChargeMatch.AsGiven(Kettle, a, b, scale: Mass.FromGrams(scale), kettleB: kettleB);

    private static ErrorTerm Term(ErrorBudget budget, string name) => budget.Terms.Single(term => term.Name == name);

    [Fact]
    public void The_usual_budget_takes_lots_forms_and_scale_from_the_match()
    {
        var assayed = HopLot.Pellets("assayed", 10) with
        {
            AlphaUncertainty = AssayUncertainty.Standard(0.3),
            StorageUncertainty = 0.04,
            AgedBy = "somebody",
        };
        var kept = HopLot.Pellets("kept", 10) with { StorageUncertainty = 0.02 };
        var match = Given([Boil(Cones, 30), Boil(assayed, 10), Boil(HopLot.Oil("oil"), 1)], [Boil(assayed, 10), Boil(kept, 15)], scale: 2);
        var budget = ErrorBudget.For(match);
        Assert.Equal(["assay, cones", "assay, assayed", "assay, kept", "storage, assayed", "storage, kept", "form factor, pellets"],
            budget.Terms.TakeWhile(term => term.Name != "scale, reading").Select(term => term.Name));
        Assert.Equal([Sharing.Independent, Sharing.Shared, Sharing.Independent, Sharing.Shared, Sharing.Independent, Sharing.Shared],
            budget.Terms.Take(6).Select(term => term.Sharing));
        Assert.Equal([0.10 / Math.Sqrt(3), 0.03, 0.10 / Math.Sqrt(3), 0.04, 0.02, HopForms.Default[HopForm.Pellet].FactorUncertainty],
            budget.Terms.Take(6).Select(term => term.Standard), new Near(1e-15));
        Assert.Equal([ErrorShape.Rectangular, ErrorShape.Normal, ErrorShape.Rectangular], budget.Terms.Take(3).Select(term => term.Shape));
        Assert.Equal(["cones", "assayed", "kept", "assayed", "kept", "pellets"], budget.Terms.Take(6).Select(term => term.Target));
        Assert.Equal("have assayed assayed", Term(budget, "assay, assayed").Remedy);
        Assert.Equal("standard uncertainty as given", Term(budget, "assay, assayed").Source);
        Assert.Equal(["storage model of somebody", "storage model"], budget.Terms.Skip(3).Take(2).Select(term => term.Source));
        Assert.Equal("have kept assayed on brew day", Term(budget, "storage, kept").Remedy);
        Assert.Equal(HopForms.Default[HopForm.Pellet].Source, Term(budget, "form factor, pellets").Source);
        Assert.StartsWith("use one form in both halves", Term(budget, "form factor, pellets").Remedy, StringComparison.Ordinal);
        var reading = Term(budget, "scale, reading");
        Assert.Equal((2 / Math.Sqrt(12), ErrorShape.Rectangular, ErrorKind.Reading), (reading.Standard, reading.Shape, reading.Kind));
        Assert.StartsWith("14 sources of error: assay, cones: 5.8 %, independent; ", budget.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_form_in_one_half_only_is_that_halfs_own_doubt()
    {
        var budget = ErrorBudget.For(Given([Boil(Cones, 30), Boil(Pellets, 5)], [Boil(Cones, 40)]));
        Assert.Equal(Sharing.Independent, Term(budget, "form factor, pellets").Sharing);
        Assert.Equal(Sharing.Shared, Term(budget, "assay, cones").Sharing);
    }

    /// <summary>Times count as alike up to a fifth of the longer, weighted by alpha acid, and gravities up to 5 points.</summary>
    [Theory]
    [InlineData(60, 48, true)]
    [InlineData(48, 60, true)]
    [InlineData(60, 47.9, false)]
    [InlineData(47.9, 60, false)]
    [InlineData(10, 10, true)]
    public void Half_A_and_half_B_share_the_formulas_error_at_like_times(double minutesA, double minutesB, bool alike) =>
        Assert.Equal(alike, IsAlike(Given([Boil(Cones, 50, minutesA)], [Boil(Pellets, 25, minutesB)])));

    [Fact]
    public void Alike_is_weighed_by_alpha_acid_and_looks_at_gravity_too()
    {
        Assert.True(IsAlike(Given([Boil(Cones, 20, 60), Boil(Pellets, 10, 20)], [Boil(Pellets, 20, 40)])));
        Assert.False(IsAlike(Given([Boil(Cones, 20, 60), Boil(Pellets, 20, 20)], [Boil(Pellets, 20, 45)])));
        Assert.True(IsAlike(Given([Boil(Cones, 50)], [Boil(Cones, 50)], Kettle.Metric(20, 1.0549))));
        Assert.False(IsAlike(Given([Boil(Cones, 50)], [Boil(Cones, 50)], Kettle.Metric(20, 1.0551))));
        Assert.False(IsAlike(Given([Boil(Cones, 50)], [Boil(Cones, 50)], Kettle.Metric(20, 1.0449))));
        HopCharge iso = HopCharge.Fermenter(HopLot.IsoExtract("iso", 30), Mass.FromGrams(2));
        Assert.True(IsAlike(Given([iso], [iso])));
        Assert.False(IsAlike(Given([Boil(Cones, 50)], [iso])));
        // Bitterness from after the kettle has no time in the boil, however much alpha acid it brings.
        Assert.True(IsAlike(Given([Boil(Cones, 50), iso with { Mass = Mass.FromGrams(6) }], [Boil(Cones, 50)])));
    }

    private static bool IsAlike(ChargeMatch match) => !ErrorBudget.For(match).Terms.Any(term => term.Name == "formula, unlike times");

    [Fact]
    public void A_changed_term_keeps_what_was_not_changed()
    {
        var budget = ErrorBudget.For(Given([Boil(Cones, 50)], [Boil(Pellets, 25)]));
        var wider = Term(budget.With("gravity", standard: 3), "gravity");
        Assert.Equal((3.0, Sharing.Shared, "as given"), (wider.Standard, wider.Sharing, wider.Source));
        var apart = Term(budget.With("gravity", sharing: Sharing.Independent), "gravity");
        Assert.Equal((1.0, Sharing.Independent, "common practice, no source"), (apart.Standard, apart.Sharing, apart.Source));
        Assert.Equal(budget.Terms.Length - 1, budget.Without("gravity").Terms.Length);
        Assert.DoesNotContain(budget.Without("gravity").Terms, term => term.Name == "gravity");
        Assert.Contains(budget.With(new ErrorTerm("own", ErrorKind.Estimate, 0.1, Sharing.Shared)).Terms, term => term.Name == "own");
        Assert.Contains("Two error terms are called \"gravity\"",
            Assert.Throws<ArgumentException>(() => budget.With(new ErrorTerm("gravity", ErrorKind.Gravity, 1, Sharing.Shared))).Message,
            StringComparison.Ordinal);
    }

    /// <summary>
    /// Calibration acts in proportion; readings by each charge's bitterness for a gram; the volume each kettle's own: squares added by
    /// hand.
    /// </summary>
    [Fact]
    public void The_law_of_propagation_adds_squares_term_by_term()
    {
        var match = Given([Boil(Cones, 40), Boil(Pellets, 10)], [Boil(Pellets, 25), Boil(Cones, 15, 20)]);
        ErrorTerm calibration = new("calibration", ErrorKind.Calibration, 0.1, Sharing.Shared),
            reading = new("reading", ErrorKind.Reading, 0.5, Sharing.Independent),
            beer = new("beer", ErrorKind.Estimate, 0.02, Sharing.Independent);
        var result = DoseUncertainty.Of(match, new ErrorBudget([calibration, reading, beer]), draws: 1000);
        double a = match.A.Bitterness.Value, b = match.B.Bitterness.Value;
        double PerGram(SideDose side, int i) => side.Estimate.Charges[i].Bitterness.Value / side.Charges[i].Mass.Grams;
        double Reading(SideDose side) => 0.5 * Math.Sqrt(Math.Pow(PerGram(side, 0), 2) + Math.Pow(PerGram(side, 1), 2));
        double readA = Reading(match.A), readB = Reading(match.B);
        var expected = new[]
        {
            (Term: calibration, A: 0.1 * a, B: 0.1 * b, D: 0.1 * Math.Abs(b - a)),
            (Term: reading, A: readA, B: readB, D: Math.Sqrt((readA * readA) + (readB * readB))),
            (Term: beer, A: 0.02 * a, B: 0.02 * b, D: 0.02 * Math.Sqrt((a * a) + (b * b))),
        };
        double Root(Func<(ErrorTerm Term, double A, double B, double D), double> part) =>
            Math.Sqrt(expected.Sum(row => part(row) * part(row)));
        Assert.Equal(Root(row => row.A), result.FirstOrder.A, 1e-9);
        Assert.Equal(Root(row => row.B), result.FirstOrder.B, 1e-9);
        Assert.Equal(Root(row => row.D), result.FirstOrder.Difference, 1e-9);
        foreach (var (found, row) in result.Contributions.Zip(expected.OrderByDescending(row => row.D)))
        {
            Assert.Equal(row.Term, found.Term);
            Assert.Equal(row.A, found.ToA, 1e-9);
            Assert.Equal(row.B, found.ToB, 1e-9);
            Assert.Equal(row.D, found.ToDifference, 1e-9);
            Assert.Equal(row.D * row.D / Math.Pow(Root(r => r.D), 2), found.Share, 1e-9);
        }
    }

    [Fact]
    public void Where_all_errors_cancel_the_larger_in_one_beer_stands_first_and_nothing_is_advised()
    {
        var twins = Given([Boil(Cones, 50)], [Boil(Cones, 50)]);
        var result = DoseUncertainty.Of(twins,
            new ErrorBudget([new("small", ErrorKind.Estimate, 0.01, Sharing.Shared), new("large", ErrorKind.Estimate, 0.1, Sharing.Shared),
                new("none", ErrorKind.Estimate, 0, Sharing.Shared)]), draws: 1000);
        Assert.Equal(["large", "small"], result.Contributions.Select(c => c.Term.Name));
        Assert.All(result.Contributions, c => Assert.Equal(0, c.Share));
        Assert.Equal("No source of error is left.", result.Advice);
        Assert.Equal("No source of error is left.", DoseUncertainty.Of(twins, new ErrorBudget([]), draws: 1000).Advice);
        Assert.Equal(1, Assert.Single(result.Histogram()).Share);
        Assert.Equal(0, result.ChanceBeyond(0));
    }

    [Theory]
    [InlineData(1000, 1)]
    [InlineData(5000, 2)]
    public void The_summary_is_that_of_the_draws(int draws, int threads)
    {
        var match = Given([Boil(Cones, 50)], [Boil(Pellets, 25)]);
        var budget = ErrorBudget.For(match);
        var (a, b, difference) = DoseDraws.Make(new DoseSampler(match.A.Dose, match.B.Dose, budget), 11, draws, threads);
        var result = DoseUncertainty.Of(match, budget, 11, draws, level: 0.8, criticalDifference: 2, tasteMargin: 0.5, threads: threads);
        Assert.Equal(draws, result.Draws);
        foreach (var (values, interval, mean, deviation) in new[] { (a, result.A, result.Mean.A, result.Deviation.A),
            (b, result.B, result.Mean.B, result.Deviation.B),
            (difference, result.Difference, result.Mean.Difference, result.Deviation.Difference) })
        {
            Assert.Equal(values.Average(), mean, 1e-9);
            Assert.Equal(Math.Sqrt(values.Sum(value => Math.Pow(value - values.Average(), 2)) / (draws - 1)), deviation, 1e-9);
            Assert.Equal(Quantiles.Of(values, 0.1, 0.9), [interval.Low, interval.High], new Near(1e-9));
            Assert.Equal(0.8, interval.Level);
        }

        Assert.Equal(b.Zip(a, (x, y) => x - y), difference);
        Assert.Equal(difference.Count(d => Math.Abs(d) > 2) / (double)draws, result.ChanceBeyondCriticalDifference);
        Assert.Equal(difference.Count(d => Math.Abs(d) > 0.5) / (double)draws, result.ChanceBeyondTasteMargin);
        var ends = Quantiles.Of(difference, 0.0005, 0.9995);
        var bins = result.Histogram(10);
        var width = (ends[1] - ends[0]) / 10;
        Assert.Equal(10, bins.Length);
        for (var i = 0; i < 10; i++)
        {
            Assert.Equal(ends[0] + (i * width), bins[i].Low, 1e-9);
            Assert.Equal(ends[0] + ((i + 1) * width), bins[i].High, 1e-9);
            Assert.Equal(difference.Count(d => Math.Floor((d - ends[0]) / width) == i) / (double)draws, bins[i].Share, 1e-12);
        }

        Assert.Contains(FormattableString.Invariant($"IBU (80 %, {Printed.Count(draws)} draws, seed 11). Chance of a difference beyond ")
            + FormattableString.Invariant($"the laboratory's critical difference of 2.0 IBU: {Printed.Percent(result.ChanceBeyond(2))}. ")
            + FormattableString.Invariant($"Chance of a difference beyond the taste margin of 0.5 IBU: ")
            + FormattableString.Invariant($"{Printed.Percent(result.ChanceBeyond(0.5))}. The largest doubt"), result.ToString(),
            StringComparison.Ordinal);
    }

    /// <summary>Bitterness in proportion to the minutes; the beer as a whole is corrected as told.</summary>
    private static InventedModel Line(Func<double, double> settle) => new("Line", minutes => 0.30 * minutes / 60, settle);

    /// <summary>
    /// By hand: a form's error is one for all charges of that form in a half; an error of the clock counts by the rate at which the wort
    /// isomerises when the charge goes in.
    /// </summary>
    [Fact]
    public void One_forms_error_is_one_and_the_clocks_error_weighs_by_the_rate()
    {
        var twice = Given([Boil(Pellets, 10), Boil(HopLot.Pellets("late pellets", 8), 20, 15)], [Boil(Cones, 50)]);
        var form = DoseUncertainty.Of(twice,
            new ErrorBudget([new("form", ErrorKind.Form, 0.1, Sharing.Independent) { Target = "pellets" }]), draws: 1000);
        Assert.Equal(0.1 * twice.A.Bitterness.Value, form.FirstOrder.A, 1e-9);
        Assert.Equal(0, form.FirstOrder.B);

        var kettle = Kettle with
        {
            AfterBoil = TemperatureProfile.From(Temperature.FromDegreesCelsius(90)).Hold(Duration.FromMinutes(30)),
        };
        var late = ChargeMatch.AsGiven(kettle, [HopCharge.Whirlpool(Pellets, Mass.FromGrams(40))], [Boil(Pellets, 40)], Line(sum => sum));
        var clock = DoseUncertainty.Of(late, new ErrorBudget([new("time", ErrorKind.Minutes, 2, Sharing.Independent)]), draws: 1000);
        var perMinute = 40 * 0.10 * 1000 / 20 * 0.30 / 60 * HopForms.Default[HopForm.Pellet].Factor;
        Assert.Equal(2 * perMinute, clock.FirstOrder.B, 1e-9);
        Assert.Equal(2 * perMinute * Isomerisation.K1(90) / Isomerisation.K1(kettle.BoilingTemperature.DegreesCelsius),
            clock.FirstOrder.A, 1e-9);
    }

    /// <summary>A model that corrects only bitter beers, or only mild ones, corrects the draws as well.</summary>
    [Fact]
    public void The_correction_of_the_whole_beer_reaches_the_draws()
    {
        ErrorBudget alpha = new([new("alpha", ErrorKind.Alpha, 0.2, Sharing.Shared)]);
        var capped = DoseUncertainty.Of(ChargeMatch.AsGiven(Kettle, [Boil(Cones, 50)], [Boil(Cones, 10)], Line(sum => Math.Min(40, sum))),
            alpha, draws: 2000);
        Assert.Equal(50 * 0.05 * 1000 / 20 * 0.30, 37.5, 1e-9);
        Assert.Equal(40, capped.A.High, 1e-9);
        Assert.True(capped.B.High < 15);
        var halved = DoseUncertainty.Of(
            ChargeMatch.AsGiven(Kettle, [Boil(Cones, 50)], [Boil(Cones, 10)], Line(sum => sum < 20 ? sum / 2 : sum)), alpha, draws: 2000);
        Assert.Equal(7.5 / 2, halved.Mean.B, 0.05);
    }

    [Fact]
    public void A_beer_bittered_after_the_kettle_alone_is_drawn_where_it_is_estimated()
    {
        var iso = HopCharge.Fermenter(HopLot.IsoExtract("iso", 30), Mass.FromGrams(2));
        var match = Given([Boil(Cones, 50), Boil(HopLot.Cones("none", 5), 0)], [iso]);
        var result = DoseUncertainty.Of(match, new ErrorBudget([new("scale", ErrorKind.Calibration, 0.01, Sharing.Shared)]), draws: 1000);
        Assert.Equal(match.A.Bitterness.Value, result.Mean.A, 0.05);
        Assert.Equal(match.B.Bitterness.Value, result.Mean.B, 0.05);
        Assert.Equal(0.01 * match.B.Bitterness.Value, result.FirstOrder.B, 1e-9);
    }

    private sealed class Near(double tolerance) : IEqualityComparer<double>
    {
        public bool Equals(double x, double y) => Math.Abs(x - y) <= tolerance;

        public int GetHashCode(double value) => 0;
    }

    [Fact]
    public void What_cannot_be_drawn_is_refused()
    {
        var match = Given([Boil(Cones, 50)], [Boil(Pellets, 25)]);
        Action[] acts =
        [
            () => DoseUncertainty.Of(match, draws: 999),
            () => DoseUncertainty.Of(match, draws: 50_000_001),
            () => DoseUncertainty.Of(match, draws: 1000, level: 0),
            () => DoseUncertainty.Of(match, draws: 1000, level: 1),
            () => DoseUncertainty.Of(match, draws: 1000, threads: 0),
            () => DoseUncertainty.Of(match, draws: 1000, criticalDifference: -1),
            () => DoseUncertainty.Of(match, draws: 1000, tasteMargin: -1),
            () => DoseUncertainty.Of(match, draws: 1000).ChanceBeyond(-1),
            () => DoseUncertainty.Of(match, draws: 1000).Histogram(1),
            () => DoseUncertainty.Of(match, draws: 1000).Histogram(1001),
        ];
        Assert.All(acts, act => Assert.ThrowsAny<ArgumentOutOfRangeException>(act));
    }
}
