using CsCheck;
using SplitBatch.Bitterness.Models;
using SplitBatch.Brewing;
using UnitsNet;

namespace SplitBatch.Bitterness;

public class DosePropertyTests
{
    private static readonly Gen<IBitternessModel> Models = Gen.Int[0, 5]
        .Select(i =>
            ((IBitternessModel[])[.. BitternessModels.All, new Rager(TimeCurve.Table),
                new Garetz(TimeCurve.Table, creditThinWort: true)])[i]);

    private static readonly Gen<Kettle> Kettles =
        Gen.Select(Gen.Double[5, 60], Gen.Double[1.030, 1.110], Gen.Double[30, 120], Gen.Double[0, 0.2], Gen.Double[0, 2500], Gen.Bool)
            .Select((liters, gravity, minutes, evaporation, altitude, stand) =>
            {
                var kettle = Kettle.Metric(liters, gravity, minutes, evaporation * liters, altitude);
                return stand
                    ? kettle with
                    {
                        AfterBoil = TemperatureProfile.From(kettle.BoilingTemperature).Hold(Duration.FromMinutes(15))
                            .CoolTo(Temperature.FromDegreesCelsius(20), Duration.FromMinutes(20)),
                    }
                    : kettle;
            });

    [Fact]
    public void More_alpha_acid_never_means_less_bitterness() =>
        Gen.Select(Kettles, Models, Gen.Double[1, 20], Gen.Double[0, 10], Gen.Double[0, 1]).Sample((kettle, model, alpha, more, share) =>
        {
            double Of(double percent) =>
                BitternessEstimate.Of(kettle,
                    [HopCharge.Boil(HopLot.Pellets("p", percent), Mass.FromGrams(kettle.Volume.Liters), share * kettle.Boil.Minutes)],
                    model).Value.Value;
            Assert.True(Of(alpha + more) >= Of(alpha));
        });

    [Fact]
    public void A_longer_boil_of_the_hops_never_means_less_bitterness_within_an_hour() =>
        Gen.Select(Kettles, Models, Gen.Double[0, 1], Gen.Double[0, 1]).Sample((kettle, model, x, y) =>
        {
            var longest = Math.Min(60, kettle.Boil.Minutes);
            double Of(double minutes) =>
                BitternessEstimate.Of(kettle, [HopCharge.Boil(HopLot.Pellets("p", 8), Mass.FromGrams(20), minutes)], model).Value.Value;
            Assert.True(Of(Math.Max(x, y) * longest) >= Of(Math.Min(x, y) * longest) - 1e-12);
        });

    [Fact]
    public void Matching_then_estimating_returns_the_target() =>
        Gen.Select(Kettles, Models, Gen.Double[5, 80], Gen.Double[6, 18]).Sample((kettle, model, target, alpha) =>
        {
            var a = HopLot.Cones("a", 12);
            var b = HopLot.Pellets("b", alpha);
            var match = ChargeMatch.Solve(kettle, target, a, b, model: model, scale: Mass.FromMilligrams(0.001));
            Assert.Equal(target, BitternessEstimate.Of(kettle, match.A.Charges, model).Value.Value, 1e-4);
            Assert.Equal(target, BitternessEstimate.Of(kettle, match.B.Charges, model).Value.Value, 1e-4);
        });

    [Fact]
    public void Scaling_the_batch_scales_the_charge() =>
        Gen.Select(Kettles, Models, Gen.Double[0.2, 20]).Sample((kettle, model, factor) =>
        {
            var lot = HopLot.Pellets("p", 14);
            Mass Of(Kettle k) => ChargeMatch.Solve(k, 25, lot, lot, model: model, scale: Mass.FromMilligrams(0.0001)).A.HopMass;
            var larger = kettle with { Volume = kettle.Volume * factor, Evaporation = kettle.Evaporation * factor };
            Assert.Equal(factor, Of(larger) / Of(kettle), 1e-6 * factor);
        });

    [Fact]
    public void Several_additions_keep_their_proportions_and_fixed_ones_their_mass() =>
        Gen.Select(Kettles, Models, Gen.Double[20, 60], Gen.Double[0.5, 4]).Sample((kettle, model, target, ratio) =>
        {
            var lot = HopLot.Pellets("p", 10);
            HopCharge[] charges =
            [
                HopCharge.Boil(lot, Mass.FromGrams(1), 30),
                HopCharge.Boil(lot, Mass.FromGrams(ratio), 20),
                HopCharge.Boil(lot, Mass.FromGrams(0.05 * kettle.Volume.Liters), 5) with { IsFixed = true },
            ];
            var scale = Mass.FromMilligrams(0.001);
            var match = ChargeMatch.Solve(kettle, target, charges, charges, model, scale);

            // Both masses are rounded by up to half a step, so the ratio of two small ones is off by as much as this.
            var rounding = scale / match.B.Charges[0].Mass * (1 + ratio) / 2;
            Assert.Equal(ratio, match.B.Charges[1].Mass / match.B.Charges[0].Mass, rounding * 1.001 + 1e-9);
            Assert.Equal(charges[2].Mass, match.B.Charges[2].Mass);
            Assert.Equal(target, match.B.Bitterness.Value, 1e-4);
        });

    [Fact]
    public void B_can_be_matched_to_a_given_A_in_another_kettle_by_any_model() =>
        Gen.Select(Kettles, Kettles, Models).Sample((kettleA, kettleB, model) =>
        {
            HopCharge[] a = [HopCharge.Boil(HopLot.Cones("a", 5), Mass.FromGrams(2 * kettleA.Volume.Liters), 30)];
            var match = ChargeMatch.ToMatch(kettleA, a, [HopCharge.Boil(HopLot.Pellets("b", 12), Mass.FromGrams(1), 30)], model,
                Mass.FromMilligrams(0.001), kettleB: kettleB);
            Assert.Equal(a[0].Mass, match.A.Charges[0].Mass);
            Assert.Equal(0, match.Mismatch, 1e-4);
        });
}
