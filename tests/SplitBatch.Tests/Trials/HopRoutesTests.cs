using SplitBatch.Bitterness;
using SplitBatch.Bitterness.Models;
using SplitBatch.Brewing;
using SplitBatch.Trials.Files;
using UnitsNet;

namespace SplitBatch.Trials;

/// <summary>Every hop form, stage and loss, from the files of a trial folder to its doses. All data are invented.</summary>
public sealed class HopRoutesTests : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("hops-");

    public HopRoutesTests()
    {
        Describe();
        Write("hops.csv", """
            lot,form,alpha [%],alpha uncertainty [%],beta [%],beta uncertainty [%],crop year,assay date,storage [°C],packaging,HSI,HSI on brew day,loss in six months [%]
            cones,whole cones,5.5,0.3,4.0,0.4,2025,2025-10-01,5,barrier,,,50
            pellets,pellets,9.0,,4.2,,2024,2025-10-01,,,0.27,0.40,
            drops,iso extract,30,,,,,,,,,,
            scent,oil,0,,,,,,,,,,
            """);
    }

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public void Lots_are_aged_to_brew_day_and_the_doubt_of_it_is_in_the_budget()
    {
        Charge("A,cones,60,boil,60", "B,pellets,35,boil,60");
        var trial = Trial.Open(folder.FullName);

        // Garetz (1994) by hand: 180 days at 5 °C in a barrier, half lost in six months open at 20 °C: 0.840896 left.
        Assert.Equal(new DateOnly(2026, 3, 30), trial.BrewDay);
        Assert.Equal(5.5 * 0.840896, trial.LotOf(Side.A).Alpha.Percent, 5);

        // Nickerson and Likens (1979) by hand: 22.4532 % lost at an index of 0.40, 110 log10(0.27/0.25) = 3.6766 % at 0.27.
        Assert.Equal(9.0 * (1 - 0.224532) / (1 - 0.036766), trial.LotOf(Side.B).Alpha.Percent, 4);
        Assert.Equal(60 * 0.055 * 0.840896, trial.Doses!.A.AlphaMass.Grams, 5);
        Assert.Equal((5.5, 9.0), (trial.Lot("cones").Alpha.Percent, trial.Lot("pellets").Alpha.Percent));
        var storage = ErrorBudget.For(trial.Doses).Terms
            .Where(term => term.Name.StartsWith("storage, ", StringComparison.Ordinal)).ToList();
        Assert.Equal(["storage, cones", "storage, pellets"], storage.Select(term => term.Name));
        Assert.Equal(0.3 * -Math.Log(0.840896), storage[0].Standard, 5);
        Assert.Contains(trial.Doses.Uncertainty(draws: 1000).Contributions, c => c.Term.Name == "storage, cones" && c.ToA > 0);
        Assert.Contains("alpha acid of cones aged to brew day by Garetz, of pellets aged to brew day by Nickerson & Likens",
            trial.Verdict().Claims.Single(claim => claim.Id == "dose.mass").Method, StringComparison.Ordinal);
        Assert.Equal("cones (whole cones, 4.6 ± 0.3 % alpha acid on 2026-03-30, 4.0 ± 0.4 % beta acid, crop 2025)",
            trial.LotOf(Side.A).ToString());
        Assert.Contains("is aged already",
            Assert.Throws<ArgumentException>(() => trial.LotOf(Side.A).On(new DateOnly(2026, 4, 1))).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_too_little_is_known_the_assay_stands_and_the_reason_is_said()
    {
        Describe(brewDay: "");
        var trial = Trial.Open(folder.FullName);
        Assert.Null(trial.BrewDay);
        Assert.Equal("cones: the alpha acid is taken as assayed; ageing it needs a storage index of brew day, or else: brew day.",
            trial.LotsOnBrewDay[0].ToString());
        Assert.Equal("drops: the alpha acid is taken as assayed; the published storage models are for cones and pellets, not for iso "
            + "extract.", trial.LotsOnBrewDay[2].ToString());
        Assert.Equal(5.5, trial.LotOf(Side.A).Alpha.Percent, 9);
        Describe(brewDay: "\"brew day\": \"2025-09-01\",");
        Assert.Contains("the assay of 2025-10-01 is later than brew day", Trial.Open(folder.FullName).LotsOnBrewDay[0].ToString(),
            StringComparison.Ordinal);
    }

    [Fact]
    public void The_first_day_of_the_batch_log_is_brew_day_unless_trial_json_says_another()
    {
        Write("batch-log.csv", "id,when,beer,quantity,value,supersedes,reason\n1,2026-02-01,both,yeast lot,Y-1,,\n"
            + "2,2026-02-20,both,packaging date,2026-02-20,,\n");
        Assert.Equal(new DateOnly(2026, 3, 30), Trial.Open(folder.FullName).BrewDay);
        Describe(brewDay: "");
        Assert.Equal(new DateOnly(2026, 2, 1), Trial.Open(folder.FullName).BrewDay);
    }

    [Fact]
    public void An_index_that_grew_younger_is_a_fault_with_its_place()
    {
        Write("hops.csv", "lot,form,alpha [%],HSI,HSI on brew day\npellets,pellets,9,0.40,0.27\n");
        var error = Assert.Throws<TrialFolderException>(() => Trial.Open(folder.FullName));
        Assert.StartsWith("hops.csv, row 2, HSI on brew day = \"0.27\": pellets: a storage index of 0.27 now is below 0.40 at the assay; "
            + "hops do not grow younger.", Assert.Single(error.Faults).ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Oil_adds_no_bitterness_and_no_plant_matter()
    {
        Charge("A,cones,60,boil,60", "B,cones,60,boil,60", "B,scent,2,fermenter,");
        var doses = Trial.Open(folder.FullName).Doses!;
        Assert.Equal(0, doses.Mismatch, 12);
        Assert.Equal(0, doses.ExtraPlantMatter.Grams, 9);
        Assert.Equal(62, doses.B.HopMass.Grams, 9);
    }

    /// <summary>By hand: 2 g of 30 % at a yield of 82.5 % in 20 L less 1 L of trub.</summary>
    [Fact]
    public void Iso_extract_after_the_boil_bitters_by_its_yield_in_what_reaches_the_fermenter()
    {
        Charge("A,cones,60,boil,60", "B,drops,2,fermenter,");
        var doses = Trial.Open(folder.FullName).Doses!;
        Assert.Equal(2000 * 0.30 * 0.825 / 19, doses.B.Bitterness.Value, 9);
        Assert.Equal(0, doses.B.PlantMatter.Grams, 9);
    }

    /// <summary>By hand: cones hold 7.5 L/kg and pellets 6.5 L/kg, trub 1 L.</summary>
    [Fact]
    public void Hop_matter_and_trub_keep_back_wort_and_the_rest_reaches_each_fermenter()
    {
        Charge("A,cones,100,boil,60", "B,pellets,50,boil,60");
        var doses = Trial.Open(folder.FullName).Doses!;
        Assert.Equal(0.75, doses.A.WortHeld.Liters, 9);
        Assert.Equal(20 - 1 - 0.75, doses.A.IntoFermenter.Liters, 9);
        Assert.Equal(20 - 1 - 0.325, doses.B.IntoFermenter.Liters, 9);
    }

    /// <summary>
    /// An addition while the wort cools isomerises only on what is left of the profile: the kinetics integrated outside, in steps of a
    /// hundredth of a minute.
    /// </summary>
    [Fact]
    public void A_cooling_addition_follows_the_temperature_profile_of_trial_json()
    {
        Charge("A,cones,60,whirlpool,0", "B,cones,60,cooling,22");
        var trial = Trial.Open(folder.FullName);
        var kinetics = BitternessEstimate.Of(trial.Kettle, trial.Charges[Side.B], BitternessModels.Kinetics);
        double alpha = 1, iso = 0;
        for (var minute = 22.005; minute < 40; minute += 0.01)
        {
            var kelvin = 273.15 + (minute < 20 ? 95 - 15 * minute / 20 : 80 - 60 * (minute - 20) / 20);
            var (made, lost) = (7.9e11 * Math.Exp(-11858 / kelvin) * alpha * 0.01, 4.1e12 * Math.Exp(-12994 / kelvin) * iso * 0.01);
            (alpha, iso) = (alpha - made, iso + made - lost);
        }

        var share = iso * IsomerisationKinetics.DefaultYield;
        Assert.Equal(trial.Charges[Side.B][0].AlphaMass.Milligrams * share / 20, kinetics.Value.Value, 0.001 * kinetics.Value.Value);
        Assert.Contains(kinetics.Warnings, text => text.Contains("below 90 °C (194 °F)", StringComparison.Ordinal));
        Assert.True(trial.Doses!.A.Bitterness.Value > 5 * trial.Doses.B.Bitterness.Value);
        Assert.Contains(trial.Doses.Warnings,
            text => text.Contains("Tinseth knows nothing of hops after flame-out", StringComparison.Ordinal));
    }

    [Fact]
    public void Two_crop_years_are_named_as_a_confound_in_plain_words()
    {
        Charge("A,cones,60,boil,60", "B,pellets,35,boil,60");
        var trial = Trial.Open(folder.FullName);
        var crop = Assert.Single(trial.HopConfounds, confound => confound.Difference == HopDifference.CropYear);
        Assert.StartsWith("crop year: A 2025, B 2024.", crop.ToString(), StringComparison.Ordinal);
        Assert.Contains(trial.Verdict().Limitations,
            limit => limit.Sentence.StartsWith("The hop lots differ in more than the variable. Crop year: A 2025, B 2024.",
                StringComparison.Ordinal));
    }

    /// <summary>A gram scale in a US trial: what is read is in the trial's own units, and the numbers are the same.</summary>
    [Fact]
    public void The_units_of_the_trial_are_those_of_its_doses_whatever_the_columns_were_in()
    {
        Charge("A,cones,60,boil,60", "B,pellets,35,boil,60");
        var metric = Trial.Open(folder.FullName).Doses!;
        Describe(units: "us");
        var us = Trial.Open(folder.FullName).Doses!;
        Assert.StartsWith("A 2.116 oz cones and B 1.235 oz pellets: ", us.ToString(), StringComparison.Ordinal);
        Assert.Contains("more plant matter", us.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain(" g ", us.ToString(), StringComparison.Ordinal);
        Assert.Equal("5.3 gal of 1.050 (12.4 °P) at the end of a 60 min boil", us.A.Estimate.Kettle.ToString());
        Assert.Equal(metric.A.Bitterness.Value, us.A.Bitterness.Value, 9);
        Assert.Equal(metric.B.IntoFermenter.Liters, us.B.IntoFermenter.Liters, 9);
    }

    [Fact]
    public void Doses_are_worked_out_once()
    {
        Charge("A,cones,60,boil,60", "B,pellets,35,boil,60");
        var trial = Trial.Open(folder.FullName);
        Assert.Same(trial.Doses, trial.Doses);
    }

    private void Write(string file, string text) => File.WriteAllText(Path.Combine(folder.FullName, file), text.ReplaceLineEndings("\n"));

    private void Charge(params string[] rows) =>
        Write("charges.csv", "beer,lot,amount [g],stage,time [min]\n" + string.Join('\n', rows) + "\n");

    private void Describe(string brewDay = "\"brew day\": \"2026-03-30\",", string units = "metric") => Write("trial.json", $$"""
        {
          "title": "Every route", "question": "Do all routes lead to the doses?", "variable": "hop form", "hop variable": "form", "invented": true, {{brewDay}}
          "units": "{{units}}", "beers": { "A": "cones", "B": "another form" },
          "kettle": {
            "volume [L]": 20, "gravity [SG]": 1.050, "boil [min]": 60, "trub loss [L]": 1,
            "after flame-out": [
              { "time [min]": 0, "temperature [°C]": 95 }, { "time [min]": 20, "temperature [°C]": 80 }, { "time [min]": 40, "temperature [°C]": 20 }
            ]
          }
        }
        """);
}
