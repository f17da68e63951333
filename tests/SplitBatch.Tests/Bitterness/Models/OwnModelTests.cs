using SplitBatch.Brewing;
using UnitsNet;

namespace SplitBatch.Bitterness.Models;

/// <summary>A model that a brewer writes in a notebook cell, used wherever a published one is.</summary>
public class OwnModelTests
{
    /// <summary>Invented: 30 % of the alpha acid after an hour, in proportion to the minutes.</summary>
    private sealed class HouseRule : IBitternessModel
    {
        public string Name => "House rule";

        public string Citation => "own notes";

        public ValidRange Range { get; } = new(1.035, 1.070, 60, "own brews") { LowestBoil = Temperature.FromDegreesCelsius(97) };

        public string Character => "A straight line through the origin.";

        public double Utilisation(in Exposure exposure) => 0.30 * Math.Max(0, exposure.EquivalentMinutes) / 60;
    }

    private sealed class WarnsOfIron(double loss) : IBitternessModel
    {
        public string Name => "Iron kettle";

        public string Citation => "own notes";

        public ValidRange Range { get; } = new(1.000, 1.200, 300, "own brews") { CoversStand = true };

        public string Character => "Loses a share of the beer's bitterness.";

        public double Utilisation(in Exposure exposure) => 0.25;

        public double Settle(double sum, in WortState wort) => sum * (1 - loss);

        public IEnumerable<string> Warnings(Kettle kettle, IReadOnlyList<HopCharge> charges) => ["Iron darkens the wort."];
    }

    private static readonly Kettle Kettle = Kettle.Metric(20, 1.050);
    private static readonly HopLot Cones = HopLot.Cones("cones", 5.5);
    private static readonly HopLot Pellets = HopLot.Pellets("pellets", 9);

    [Fact]
    public void It_estimates_and_matches()
    {
        var match = ChargeMatch.Solve(Kettle, target: 30, Cones, Pellets, model: new HouseRule(), scale: Mass.FromGrams(1e-6));

        // By hand: grams = 30 mg/L x 20 L / (1000 x share x 0.30), pellets 1.07 times.
        Assert.Equal(600 / (1000 * 0.055 * 0.30), match.A.HopMass.Grams, 1e-4);
        Assert.Equal(600 / (1000 * 0.09 * 0.30 * 1.07), match.B.HopMass.Grams, 1e-4);
        Assert.Contains("30.0 and 30.0 IBU by House rule", match.ToString(), StringComparison.Ordinal);
        Assert.Empty(match.Warnings);
    }

    [Fact]
    public void It_stands_in_the_comparison_beside_the_published_ones()
    {
        var rows =
            ModelComparison.Of(Kettle, [HopCharge.Boil(Cones, Mass.FromGrams(40), 30)], [.. BitternessModels.All, new HouseRule()]).Rows;
        Assert.Equal(["Tinseth", "Rager", "Garetz", "Kinetics", "House rule"], rows.Select(row => row.Model));
        Assert.Equal(40 * 0.055 * 1000 / 20 * 0.15, rows[^1].Bitterness, 1e-9);
        Assert.Equal("own notes", rows[^1].Citation);
        Assert.True(rows[^1].InRange);
        Assert.False(
            ModelComparison.Of(Kettle.Metric(20, 1.090), [HopCharge.Boil(Cones, Mass.FromGrams(40), 30)],
                [new HouseRule()]).Rows[0].InRange);
    }

    /// <summary>
    /// One gram's reading error alone: the closed form is grams' share of the bitterness. Time enters the line in proportion.
    /// </summary>
    [Fact]
    public void Its_doubts_are_drawn_without_a_vector_form_of_its_own()
    {
        var match = ChargeMatch.Solve(Kettle, target: 30, Cones, Pellets, model: new HouseRule());
        var reading = match.Uncertainty(new ErrorBudget([new("reading", ErrorKind.Reading, 1, Sharing.Independent)]), draws: 50_000);
        Assert.Equal(match.A.Bitterness.Value / match.A.HopMass.Grams, reading.FirstOrder.A, 1e-9);
        Assert.Equal(reading.FirstOrder.A, reading.Deviation.A, 0.02 * reading.FirstOrder.A);
        var time = match.Uncertainty(new ErrorBudget([new("time", ErrorKind.Minutes, 2, Sharing.Shared)]), draws: 50_000);
        Assert.Equal(match.A.Bitterness.Value * 2 / 60, time.FirstOrder.A, 1e-9);
        Assert.Equal(time.FirstOrder.A, time.Deviation.A, 0.02 * time.FirstOrder.A);
    }

    [Fact]
    public void Its_own_range_warns_like_a_published_one()
    {
        var strong = BitternessEstimate.Of(Kettle.Metric(20, 1.080, altitudeMeters: 1500), [HopCharge.Boil(Cones, Mass.FromGrams(40), 60)],
            new HouseRule());
        Assert.Equal(2, strong.Warnings.Length);
        Assert.Contains("outside what House rule was made for (1.035 to 1.070)", strong.Warnings[0], StringComparison.Ordinal);
        Assert.Contains("House rule was made near sea level", strong.Warnings[1], StringComparison.Ordinal);
    }

    [Fact]
    public void It_may_warn_in_its_own_words_and_correct_the_beer_as_a_whole()
    {
        var match = ChargeMatch.Solve(Kettle, target: 30, Cones, Pellets, model: new WarnsOfIron(0.2), scale: Mass.FromGrams(0.001));
        Assert.Equal(600 / (1000 * 0.055 * 0.25 * 0.8), match.A.HopMass.Grams, 0.001);
        Assert.Contains("Iron darkens the wort.", match.Warnings);
        var doubt = match.Uncertainty(new ErrorBudget([new("assay", ErrorKind.Alpha, 0.05, Sharing.Shared)]), draws: 20_000);
        Assert.Equal(0.05 * 30, doubt.FirstOrder.A, 1e-3);
    }
}
