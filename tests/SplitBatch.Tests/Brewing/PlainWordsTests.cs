using UnitsNet;

namespace SplitBatch.Brewing;

/// <summary>No name of the code stands where a person reads.</summary>
public class PlainWordsTests
{
    [Fact]
    public void Every_value_has_words_and_no_word_is_a_name_of_the_code()
    {
        string[] words =
        [
            .. Enum.GetValues<HopForm>().Select(form => form.InWords()), .. Enum.GetValues<Packaging>()
                .Select(packaging => packaging.InWords()),
            .. Enum.GetValues<AdditionStage>().Select(stage => stage.InWords()), .. Enum.GetValues<HopDifference>()
                .Select(difference => difference.InWords()),
        ];
        Assert.All(words, word => Assert.Matches("^(CO2 extract|[a-z]+( [a-z]+)*)$", word));
    }

    [Fact]
    public void Lots_forms_storage_and_confounds_speak_in_words()
    {
        var cones = HopLot.Cones("cones", 5.5) with
        {
            CropYear = 2024,
            AssayDate = new DateOnly(2025, 10, 1),
            Storage = Temperature.FromDegreesFahrenheit(39),
            Packaging = Packaging.SealedWithAir,
            LossInSixMonths = 0.4,
            BetaPercent = 4.1,
        };
        var pellets = HopLot.Pellets("pellets", 9) with { CropYear = 2025 };
        Assert.Equal("cones (whole cones, 5.5 ± 0.6 % alpha acid, 4.1 ± 0.5 % beta acid, crop 2024)", cones.ToString());
        Assert.Equal("oil (oil)", HopLot.Oil("oil").ToString());
        Assert.StartsWith("whole cones: 1.00 times cones", HopForms.Default[HopForm.WholeCone].ToString(), StringComparison.Ordinal);
        Assert.StartsWith("cones: 60 days at 39 °F, packaging: sealed with air;",
            StorageLoss.Of(cones, new DateOnly(2025, 11, 30)).Notes[0], StringComparison.Ordinal);
        Assert.Equal(["crop year: A 2024, B 2025.", "form: A whole cones, B pellets."],
            HopConfound.Between(cones, pellets)
                .Select(confound => confound.ToString()[..(confound.ToString().IndexOf('.', StringComparison.Ordinal) + 1)]));
        Assert.Contains("lupulin pellets: this form must boil",
            Assert.Throws<ArgumentException>(() => HopForms.Default.WithYield(HopForm.LupulinPellet, 0.5, "own")).Message,
            StringComparison.Ordinal);
    }

    [Fact]
    public void The_assays_uncertainty_of_beta_acids_is_read_and_shown_as_given()
    {
        var lot = HopLot.Cones("cones", 5.5) with { BetaPercent = 4, BetaUncertainty = AssayUncertainty.Limit95(0.6) };
        Assert.Equal(0.6, lot.BetaUncertainty.HalfWidth95(4), 12);
        Assert.Contains("4.0 ± 0.6 % beta acid", lot.ToString(), StringComparison.Ordinal);
    }
}
