using SplitBatch.Bitterness;
using SplitBatch.Brewing;
using SplitBatch.Lab;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;
using SplitBatch.Panel.Protocols;
using SplitBatch.Trials.Files;
using SplitBatch.Trials.Reading;
using UnitsNet;

namespace SplitBatch;

/// <summary>
/// Check values from common practice, no source: figures that a brewer may be quoted. They stand here and nowhere else, so that no
/// example, exercise or text of the project is built on them; a test over all files keeps it so.
/// </summary>
public class CommonPracticeTests
{
    [Fact]
    public void Two_charges_of_weak_and_strong_hops_hold_the_same_alpha_acid_within_half_a_percent()
    {
        var cones = HopCharge.Boil(HopLot.Cones("cones", alphaPercent: 4.7), Mass.FromGrams(64), 60).AlphaMass;
        var pellets = HopCharge.Boil(HopLot.Pellets("pellets", alphaPercent: 12.5), Mass.FromGrams(24), 60).AlphaMass;
        Assert.InRange(cones / pellets, 0.995, 1.005);
    }

    /// <summary>Beers estimated at 40 measured 25 and 21.5; at 24, 7 and 9.</summary>
    [Fact]
    public void A_house_far_below_its_estimates_learns_it_from_four_beers()
    {
        var house = HouseCalibration.Fit([new("first", 40, 25), new("second", 40, 21.5), new("third", 24, 7), new("fourth", 24, 9)]);
        Assert.Equal(0.44, house.RawFactor!.Value, 0.005);
        Assert.InRange(house.Factor, house.RawFactor.Value, 1);
        Assert.True(house.LeaveOneOutError < house.UncorrectedError);
    }

    [Fact]
    public void A_precision_of_4_3_to_10_percent_settles_25_against_21_5_only_under_some_readings()
    {
        var comparison = LabComparison.Compare(StatedPrecision.Percent(4.3, 10), [25.0], [21.5]);
        var byReading = comparison.Readings
            .ToDictionary(reading => reading.Precision.ToString(),
                reading => (Math.Round(reading.CriticalDifference!.Value, 3), reading.Judgement));
        Assert.Equal((2.799, Judgement.Exceeds), byReading["repeatability, coefficient of variation 4.3 %"]);
        Assert.Equal((6.51, Judgement.Within), byReading["repeatability, coefficient of variation 10 %"]);
        Assert.Equal(Judgement.DependsOnReading, comparison.Judgement);
    }

    [Fact]
    public void The_same_figure_is_read_from_a_trials_description_and_stays_open()
    {
        FaultList faults = [];
        var section = LabSection.Read(
            JsonSection.Read("trial.json",
                new StringReader("""{ "precision": [ { "value [%]": 4.3, "up to [%]": 10, "source": "common practice, no source" } ] }"""),
                faults));
        Assert.Empty(faults);
        Assert.Null(section.Precision[Analyte.Bitterness].Known);
    }

    /// <summary>R 4.2.2: pbinom(6, 20, 1/3, lower.tail = FALSE).</summary>
    [Fact]
    public void Seven_of_twenty_settles_nothing()
    {
        var reading = PanelReading.Of(Protocol.Triangle, tasters: 20, correct: 7, margin: 0.30);
        Assert.Equal(PanelAnswer.Inconclusive, reading.Answer);
        Assert.Equal(0.5207, reading.Difference.PValue, 5e-5);
    }

    [Fact]
    public void Two_people_with_five_sets_each_and_eight_of_ten_right_are_two_people()
    {
        var test = ReplicatedTest.Of(Protocol.Triangle, [new(Sets: 5, Correct: 5), new(Sets: 5, Correct: 3)]);
        Assert.True(test.Pooled.DifferenceShown);
        Assert.StartsWith("10 sets were tasted by 2 people. That is not 10 tasters", test.Warning, StringComparison.Ordinal);
    }
}
