using SplitBatch.Bitterness.Models;
using SplitBatch.Brewing;
using UnitsNet;

namespace SplitBatch.Bitterness;

public class DoseUncertaintyTests
{
    private static readonly Kettle Kettle = Kettle.Metric(liters: 20, gravity: 1.050, evaporationLitersPerHour: 3);
    private static readonly HopLot Cones = HopLot.Cones("cones", 6.8);
    private static readonly HopLot Pellets = HopLot.Pellets("pellets", 8.3) with
    {
        AlphaUncertainty = AssayUncertainty.Standard(points: 0.25),
        StorageUncertainty = 0.03,
    };
    private static readonly ChargeMatch Match = ChargeMatch.Solve(Kettle, target: 32, Cones, Pellets);

    /// <summary>With readings alone, bitterness is linear in the errors: standard deviations are known in closed form.</summary>
    [Fact]
    public void A_linear_case_agrees_with_closed_form_propagation()
    {
        var budget = new ErrorBudget([new("reading", ErrorKind.Reading, 0.8, Sharing.Independent)]);
        var result = DoseUncertainty.Of(Match, budget, seed: 1, draws: 400_000);
        var (a, b) = (0.8 * Match.A.Bitterness.Value / Match.A.HopMass.Grams, 0.8 * Match.B.Bitterness.Value / Match.B.HopMass.Grams);
        var both = Math.Sqrt(a * a + b * b);
        Assert.Equal(a, result.FirstOrder.A, 1e-9);
        Assert.Equal(b, result.FirstOrder.B, 1e-9);
        Assert.Equal(both, result.FirstOrder.Difference, 1e-9);
        Assert.Equal(both, result.Deviation.Difference, 0.005 * both);
        Assert.Equal(Match.Mismatch - 1.959964 * both, result.Difference.Low, 0.02 * both);
        Assert.Equal(Match.Mismatch + 1.959964 * both, result.Difference.High, 0.02 * both);
        Assert.Equal(Match.Mismatch, result.Mean.Difference, 0.01 * both);
    }

    /// <summary>The difference of two rectangular errors of one width is triangular: its quantiles are known.</summary>
    [Fact]
    public void Two_rectangular_readings_give_a_triangular_difference()
    {
        var twins = ChargeMatch.AsGiven(Kettle, [HopCharge.Boil(Cones, Mass.FromGrams(60), 60)],
            [HopCharge.Boil(Cones, Mass.FromGrams(60), 60)]);
        var budget =
            new ErrorBudget([new("reading", ErrorKind.Reading, 1 / Math.Sqrt(3), Sharing.Independent) { Shape = ErrorShape.Rectangular }]);
        var result = DoseUncertainty.Of(twins, budget, seed: 2, draws: 400_000);
        var perGram = twins.A.Bitterness.Value / 60;
        var end = 2 * perGram * (1 - Math.Sqrt(0.05));
        Assert.Equal(-end, result.Difference.Low, 0.01 * end);
        Assert.Equal(end, result.Difference.High, 0.01 * end);
        Assert.Equal(0.25, result.ChanceBeyond(perGram), 0.005);
    }

    [Fact]
    public void An_error_shared_by_like_beers_cancels_in_their_difference_and_an_independent_one_does_not()
    {
        var twins = ChargeMatch.AsGiven(Kettle, [HopCharge.Boil(Cones, Mass.FromGrams(60), 60)],
            [HopCharge.Boil(Cones, Mass.FromGrams(60), 60)]);
        ErrorBudget Of(Sharing sharing) => new([new("formula", ErrorKind.Estimate, 0.2, sharing)]);
        var shared = DoseUncertainty.Of(twins, Of(Sharing.Shared), draws: 20_000);
        var apart = DoseUncertainty.Of(twins, Of(Sharing.Independent), draws: 20_000);
        Assert.Equal(0, shared.Deviation.Difference);
        Assert.Equal(0.2 * twins.A.Bitterness.Value, shared.FirstOrder.A, 1e-9);
        Assert.Equal(Math.Sqrt(2) * 0.2 * twins.A.Bitterness.Value, apart.FirstOrder.Difference, 1e-9);
    }

    [Fact]
    public void The_assay_of_one_lot_in_both_halves_is_shared_and_of_two_lots_independent()
    {
        var same = ErrorBudget.For(ChargeMatch.Solve(Kettle, 32, Cones, Cones));
        Assert.Equal(Sharing.Shared, same.Terms.Single(term => term.Name == "assay, cones").Sharing);
        Assert.All(ErrorBudget.For(Match).Terms.Where(term => term.Kind == ErrorKind.Alpha),
            term => Assert.Equal(Sharing.Independent, term.Sharing));
    }

    [Fact]
    public void The_result_depends_on_the_seed_and_not_on_the_number_of_threads()
    {
        var one = DoseUncertainty.Of(Match, seed: 7, draws: 50_000, threads: 1);
        var three = DoseUncertainty.Of(Match, seed: 7, draws: 50_000, threads: 3);
        Assert.Equal(one.Difference, three.Difference);
        Assert.Equal(one.Deviation, three.Deviation);
        Assert.NotEqual(one.Difference, DoseUncertainty.Of(Match, seed: 8, draws: 50_000).Difference);
    }

    /// <summary>A slow, obvious version: change the inputs themselves, and estimate again.</summary>
    [Theory]
    [InlineData("Tinseth")]
    [InlineData("Rager")]
    [InlineData("Garetz")]
    [InlineData("Kinetics")]
    public void Vectors_of_draws_agree_with_estimating_each_changed_dose(string name)
    {
        var model = BitternessModels.All.Single(m => m.Name == name);
        var kettle = Kettle with
        {
            AfterBoil = TemperatureProfile.From(Kettle.BoilingTemperature).Hold(Duration.FromMinutes(10))
                .CoolTo(Temperature.FromDegreesCelsius(20), Duration.FromMinutes(20)),
        };
        var iso = new HopLot("drops", HopForm.IsoExtract, AlphaAcid.FromPercent(30));
        HopCharge[] charges = [HopCharge.Boil(Cones, Mass.FromGrams(40), 60), HopCharge.Boil(Pellets, Mass.FromGrams(10), 15),
            HopCharge.Fermenter(iso, Mass.FromGrams(0.5))];
        var match = ChargeMatch.AsGiven(kettle, charges, charges, model);
        var budget = new ErrorBudget(
        [
            new("assay", ErrorKind.Alpha, 0.03, Sharing.Shared) { Target = "pellets" },
            new("form", ErrorKind.Form, 0.06, Sharing.Shared) { Target = "whole cones" },
            new("scale", ErrorKind.Calibration, 0.01, Sharing.Shared),
            new("volume", ErrorKind.Volume, 0.02, Sharing.Shared),
            new("gravity", ErrorKind.Gravity, 2, Sharing.Shared),
            new("time", ErrorKind.Minutes, 0.5, Sharing.Shared),
            new("beer", ErrorKind.Estimate, 0.2, Sharing.Shared),
            new("formula", ErrorKind.Formula, 0.1, Sharing.Shared),
        ]);
        var sampler = new DoseSampler(match.A.Dose, match.B.Dose, budget);
        double[] z = [0.7, -1.3, 0.4, 1.9, -0.8, 1.1, -0.5, 1.7];
        var errors = new double[z.Length * 8];
        for (var v = 0; v < z.Length; v++)
        {
            var column = Assert.Single(Enumerable.Range(0, z.Length), i => sampler.Variables[i].Term == budget.Terms[v]);
            errors.AsSpan(column * 8, 8).Fill(z[v]);
        }

        var (scratch, drawn) = (new double[32], new double[8]);
        sampler.Evaluate(Side.B, errors, scratch, drawn);

        var volume = 1 + 0.02 * z[3];
        var changed = kettle with
        {
            Volume = kettle.Volume * volume,
            Evaporation = kettle.Evaporation * volume,
            Gravity = Gravity.FromSpecific(kettle.Gravity.Specific + 0.002 * z[4] / (kettle.MeanGravity.Points / kettle.Gravity.Points)),
        };
        var scale = 1 + 0.01 * z[2];
        var pellets = Pellets with { Alpha = AlphaAcid.FromFraction(0.083 * (1 + 0.03 * z[0])) };
        var minutes = 0.5 * z[5];
        var late = (60 + minutes, 15 + minutes);
        var longer = changed with { Boil = Duration.FromMinutes(late.Item1), Evaporation = changed.Evaporation * (60 / late.Item1) };
        var forms = HopForms.Default.With(HopForm.WholeCone, 1 + 0.06 * z[1], "changed");
        var estimate = BitternessEstimate.Of(
            longer,
            [HopCharge.Boil(Cones, Mass.FromGrams(40 * scale), late.Item1),
                HopCharge.Boil(pellets, Mass.FromGrams(10 * scale), late.Item2), HopCharge.Fermenter(iso, Mass.FromGrams(0.5 * scale))],
            model,
            forms);
        var direct = estimate.Charges[2].Bitterness.Value;
        var expected = ((estimate.Value.Value - direct) * (1 + 0.1 * z[7]) + direct) * (1 + 0.2 * z[6]);
        Assert.True(direct > 5);
        Assert.Equal(expected, drawn[0], 0.002 * drawn[0]);
        Assert.All(drawn, value => Assert.Equal(drawn[0], value));
    }

    [Fact]
    public void Hops_at_unlike_times_do_not_share_all_of_the_formulas_error()
    {
        const string unlike = "formula, unlike times";
        Assert.DoesNotContain(ErrorBudget.For(Match).Terms, term => term.Name == unlike);
        var late = ChargeMatch.Solve(Kettle, 32, [HopCharge.Boil(Pellets, Mass.FromGrams(1), 60)],
            [HopCharge.Boil(Pellets, Mass.FromGrams(1), 15)]);
        Assert.Equal(Sharing.Independent, ErrorBudget.For(late).Terms.Single(term => term.Name == unlike).Sharing);
    }

    [Fact]
    public void A_formula_for_boiled_hops_does_not_err_about_iso_extract()
    {
        var iso = HopLot.IsoExtract("drops", 30);
        var match = ChargeMatch.Solve(Kettle, 30, Cones, iso, scale: Mass.FromGrams(0.01));
        var result = match.Uncertainty(new ErrorBudget([new("formula", ErrorKind.Formula, 0.2, Sharing.Shared)]), draws: 5_000);
        Assert.Equal(0, result.Deviation.B, 1e-9);
        Assert.Equal(0.2 * match.A.Bitterness.Value, result.FirstOrder.Difference, 1e-9);
    }

    [Fact]
    public void Contributions_are_ranked_and_their_shares_add_to_one()
    {
        var result = DoseUncertainty.Of(Match, draws: 10_000, criticalDifference: 3.5, tasteMargin: 5);
        Assert.Equal(1, result.Contributions.Sum(c => c.Share), 1e-12);
        Assert.Equal(result.Contributions.OrderByDescending(c => c.Share).Select(c => c.Term.Name),
            result.Contributions.Select(c => c.Term.Name));
        Assert.Equal("form factor, pellets", result.Contributions[0].Term.Name);
        Assert.Equal("The largest doubt about the difference: form factor, pellets. To reduce it, use one form in both halves, or learn "
            + "the factor from your own returns.", result.Advice);
        Assert.True(result.ChanceBeyondTasteMargin < result.ChanceBeyondCriticalDifference);
    }

    [Fact]
    public void Ranked_shares_match_the_drawn_variance_when_errors_are_small()
    {
        var small = new ErrorBudget(ErrorBudget.For(Match).Terms.Select(term => term with { Standard = term.Standard / 20 }));
        var result = DoseUncertainty.Of(Match, small, draws: 400_000);
        Assert.Equal(result.FirstOrder.Difference, result.Deviation.Difference, 0.005 * result.FirstOrder.Difference);
        Assert.Equal(result.FirstOrder.A, result.Deviation.A, 0.005 * result.FirstOrder.A);
    }

    [Fact]
    public void An_unknown_term_is_answered_with_the_names_there_are()
    {
        var error = Assert.Throws<ArgumentException>(() => ErrorBudget.For(Match).With("volumes", 0.1));
        Assert.Contains("volume, each kettle", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_histogram_holds_all_but_a_thousandth_of_the_draws()
    {
        var bins = DoseUncertainty.Of(Match, draws: 100_000).Histogram(40);
        Assert.Equal(0.999, bins.Sum(bin => bin.Share), 0.0002);
    }
}
