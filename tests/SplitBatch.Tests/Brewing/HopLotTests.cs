using UnitsNet;

namespace SplitBatch.Brewing;

public class HopLotTests
{
    [Fact]
    public void Alpha_acid_as_a_fraction_is_recognised()
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => HopLot.Cones("cones", 0.056));
        Assert.Contains("it looks like a fraction: write 5.6 for 5.6 %", error.Message, StringComparison.Ordinal);
        Assert.Contains("use AlphaAcid.FromPercent(5.6)",
            Assert.Throws<ArgumentOutOfRangeException>(() => AlphaAcid.FromFraction(5.6)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Missing_or_impossible_alpha_acid_is_refused_by_form()
    {
        Assert.Contains("alpha acid is missing", Assert.Throws<ArgumentException>(() => HopLot.Pellets("pellets", 0)).Message,
            StringComparison.Ordinal);
        Assert.Contains("is it an extract?", Assert.Throws<ArgumentOutOfRangeException>(() => HopLot.Cones("cones", 47)).Message,
            StringComparison.Ordinal);
        Assert.Contains("holds no alpha acid",
            Assert.Throws<ArgumentException>(() => new HopLot("oil", HopForm.Oil, AlphaAcid.FromPercent(5))).Message,
            StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => HopLot.Cones("cones", -5.6));
        Assert.Throws<ArgumentException>(() => HopLot.Cones(" ", 5.6));
    }

    /// <summary>
    /// Published figures: EBC 7.7 critical difference 0.57 points at 10 % alpha acid (Brauwelt), divided by 2.8 (ISO 5725-6).
    /// </summary>
    [Fact]
    public void The_basis_of_an_assay_figure_settles_its_standard_uncertainty()
    {
        var alpha = AlphaAcid.FromPercent(10);
        Assert.Equal(0.57 / 2.8 / 10, AssayUncertainty.CriticalDifference(0.57).RelativeTo(alpha), 12);
        Assert.Equal(0.57 / 1.96 / 10, AssayUncertainty.Limit95(0.57).RelativeTo(alpha), 12);
        Assert.Equal(0.057, AssayUncertainty.Standard(0.57).RelativeTo(alpha), 12);
        Assert.Equal(0.10 / Math.Sqrt(3), AssayUncertainty.Packet.RelativeTo(alpha), 12);
    }

    [Fact]
    public void Two_crop_years_are_a_confound_and_the_variable_under_test_is_not()
    {
        var a = HopLot.Cones("cones", 5.1) with { CropYear = 2024, Storage = Temperature.FromDegreesCelsius(5) };
        var b = HopLot.Pellets("pellets", 8.3) with { CropYear = 2025, Storage = Temperature.FromDegreesCelsius(5) };
        var found = HopConfound.Between(a, b, HopDifference.Form);
        var crop = Assert.Single(found);
        Assert.Equal(HopDifference.CropYear, crop.Difference);
        Assert.Equal(("2024", "2025"), (crop.A, crop.B));
        Assert.False(crop.IsUnknown);
        Assert.Empty(HopConfound.Between(a, b with { CropYear = 2024 }, HopDifference.Form));
        Assert.True(Assert.Single(HopConfound.Between(a, b with { CropYear = null }, HopDifference.Form)).IsUnknown);
    }

    [Fact]
    public void Storage_packaging_age_and_index_are_confounds_too()
    {
        var a = HopLot.Cones("cones", 5.6) with
        {
            CropYear = 2025, Storage = Temperature.FromDegreesCelsius(-18), Packaging = Packaging.Barrier,
            AssayDate = new DateOnly(2025, 10, 1), StorageIndex = 0.28,
        };
        var b = HopLot.Cones("cones, warm", 5.6) with
        {
            CropYear = 2025, Storage = Temperature.FromDegreesCelsius(18), Packaging = Packaging.Open,
            AssayDate = new DateOnly(2026, 2, 1), StorageIndex = 0.45,
        };
        Assert.Equal(
            [HopDifference.Storage, HopDifference.Packaging, HopDifference.AssayDate, HopDifference.StorageIndex],
            HopConfound.Between(a, b).Select(confound => confound.Difference));
    }

    [Fact]
    public void Form_factors_are_sourced_and_can_be_changed()
    {
        Assert.All(HopForms.Default.Rows, row => Assert.NotEmpty(row.Source));
        Assert.Equal(Enum.GetValues<HopForm>(), HopForms.Default.Rows.Select(row => row.Form));
        var changed = HopForms.Default.With(HopForm.Pellet, 1.2, "own returns");
        Assert.Equal((1.2, "own returns"), (changed[HopForm.Pellet].Factor, changed[HopForm.Pellet].Source));
        Assert.Equal(1.07, HopForms.Default[HopForm.Pellet].Factor);
        Assert.Throws<ArgumentException>(() => HopForms.Default.With(HopForm.Pellet, 1.2, " "));
        Assert.Throws<ArgumentOutOfRangeException>(() => HopForms.Default.With(HopForm.Pellet, -1, "own returns"));
    }

    [Fact]
    public void A_form_that_needs_no_boil_has_a_yield_and_says_so()
    {
        Assert.Contains("use WithYield",
            Assert.Throws<ArgumentException>(() => HopForms.Default.With(HopForm.IsoExtract, 2, "own")).Message, StringComparison.Ordinal);
        Assert.Contains("use With.",
            Assert.Throws<ArgumentException>(() => HopForms.Default.WithYield(HopForm.Pellet, 0.3, "own")).Message,
            StringComparison.Ordinal);
        Assert.Equal(0.7, HopForms.Default.WithYield(HopForm.IsoExtract, 0.7, "own")[HopForm.IsoExtract].DirectYield);
    }
}
