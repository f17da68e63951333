using UnitsNet;

namespace SplitBatch.Brewing;

public class StorageLossTests
{
    private static readonly HopLot Lot = HopLot.Cones("cones", 6) with
    {
        AssayDate = new DateOnly(2025, 10, 1),
        Storage = Temperature.FromDegreesCelsius(5),
        Packaging = Packaging.Barrier,
        LossInSixMonths = 0.50,
    };

    /// <summary>
    /// Nickerson and Likens (1979), worked by hand from the published equation; a hop trade text prints 10 % for an index of .310.
    /// </summary>
    [Theory]
    [InlineData(0.25, 0)]
    [InlineData(0.28, 5.4140)]
    [InlineData(0.31, 10.2764)]
    [InlineData(0.40, 22.4532)]
    [InlineData(0.50, 33.1133)]
    public void The_storage_index_tells_the_percent_lost(double index, double percent) =>
        Assert.Equal(percent, 100 * NickersonLikens.ShareLost(index), 4);

    /// <summary>Garetz (1994), worked by hand from the published equation.</summary>
    [Theory]
    [InlineData(0.50, 5, Packaging.Barrier, 180, 0.840896)]
    [InlineData(0.35, -18, Packaging.Barrier, 365, 0.927329)]
    [InlineData(0.20, 20, Packaging.Open, 90, 0.894427)]
    [InlineData(0.35, 20, Packaging.Open, 180, 0.65)]
    public void Time_temperature_and_packaging_tell_the_share_left(double loss, double celsius, Packaging packaging, double days,
        double left) =>
            Assert.Equal(left, GaretzStorage.ShareLeft(loss, celsius, packaging, days), 6);

    [Fact]
    public void Brew_day_alpha_acid_has_an_interval_of_assay_and_storage_together()
    {
        var loss = StorageLoss.Of(Lot, Lot.AssayDate!.Value.AddDays(180));
        Assert.Equal("Garetz", loss.Model);
        Assert.Equal(6 * 0.840896, loss.Alpha.Percent, 5);
        var storage = 0.3 * -Math.Log(0.840896);
        var half = 1.96 * Math.Sqrt(storage * storage + 0.10 * 0.10 / 3);
        Assert.Equal(loss.Alpha.Percent * (1 - half), loss.PercentInterval.Low, 5);
        Assert.Equal(loss.Alpha.Percent * (1 + half), loss.PercentInterval.High, 5);
        Assert.Equal("cones: 5.0 % alpha acid on brew day of 6.0 % alpha acid assayed (84 % left, by Garetz), 4.3 to 5.8 % (95 %)",
            loss.ToString());
    }

    [Fact]
    public void A_measured_index_is_preferred_and_its_scatter_counts()
    {
        var loss = StorageLoss.Of(Lot with { StorageIndex = 0.40 }, new DateOnly(2026, 3, 1));
        Assert.Equal("Nickerson & Likens", loss.Model);
        Assert.Equal(1 - 0.224532, loss.Left, 6);
        Assert.InRange(loss.RelativeUncertainty, 0.01, 0.04);
        Assert.Contains(loss.Notes, note => note.Contains("alpha and beta acids lost together", StringComparison.Ordinal));
        var known = StorageLoss.Of(Lot with { StorageIndex = 0.40, StorageIndexAtAssay = 0.28 }, new DateOnly(2026, 3, 1));
        Assert.Equal((1 - 0.224532) / (1 - 0.054140), known.Left, 5);
    }

    [Fact]
    public void Ageing_goes_with_the_lot_into_charges_and_error_terms()
    {
        var aged = Lot.On(Lot.AssayDate!.Value.AddDays(180));
        Assert.Equal(6 * 0.840896, aged.Alpha.Percent, 5);
        Assert.True(aged.StorageUncertainty > 0.04);
        Assert.Equal(0.10 / Math.Sqrt(3), aged.AlphaUncertainty.RelativeTo(aged.Alpha), 9);
    }

    [Fact]
    public void A_lot_of_which_too_little_is_known_is_left_as_assayed_and_says_what_is_missing()
    {
        var loss = StorageLoss.Of(HopLot.Cones("cones", 6), new DateOnly(2026, 3, 1));
        Assert.Equal(1, loss.Left);
        Assert.Contains("assay date, storage temperature, packaging, loss in six months", Assert.Single(loss.Notes),
            StringComparison.Ordinal);
    }

    [Fact]
    public void Impossible_histories_are_refused()
    {
        Assert.Contains("before the assay", Assert.Throws<ArgumentException>(() => StorageLoss.Of(Lot, new DateOnly(2025, 9, 1))).Message,
            StringComparison.Ordinal);
        Assert.Contains("do not grow younger",
            Assert.Throws<ArgumentException>(
                () => StorageLoss.Of(Lot with { StorageIndex = 0.27, StorageIndexAtAssay = 0.35 }, new DateOnly(2026, 3, 1))).Message,
                StringComparison.Ordinal);
        Assert.Contains("Fahrenheit",
            Assert.Throws<ArgumentOutOfRangeException>(() => Lot with { Storage = Temperature.FromDegreesCelsius(68) }).Message,
            StringComparison.Ordinal);
    }
}
