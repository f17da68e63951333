using UnitsNet;
using SplitBatch.Numbers;

namespace SplitBatch;

/// <summary>One style for every number that a reader sees.</summary>
public class PrintedTests
{
    [Theory]
    [InlineData(0.06958, "7.0 %")]
    [InlineData(0.7418, "74 %")]
    [InlineData(0.0996, "10 %")]
    [InlineData(0.0044, "0.4 %")]
    [InlineData(0.0004, "0.04 %")]
    [InlineData(0.00001, "less than 0.01 %")]
    [InlineData(0.9962, "99.6 %")]
    [InlineData(0.99999, "more than 99.9 %")]
    [InlineData(0, "0 %")]
    [InlineData(1, "100 %")]
    [InlineData(-0.19, "−19 %")]
    public void A_share_has_the_digits_that_count(double share, string text) => Assert.Equal(text, Printed.Percent(share));

    [Theory]
    [InlineData(0.05004, 0.05, "5.004 %")]
    [InlineData(0.04996, 0.05, "4.996 %")]
    [InlineData(0.05, 0.05, "5 %")]
    [InlineData(0.0504, 0.05, "5.04 %")]
    [InlineData(0.201, 0.20, "20.1 %")]
    public void A_share_beside_its_limit_shows_on_which_side_it_lies(double share, double limit, string text) =>
        Assert.Equal(text, Printed.Percent(share, against: limit));

    [Theory]
    [InlineData(0.0696, "p = 0.070")]
    [InlineData(0.0042, "p = 0.004")]
    [InlineData(0.00042, "p < 0.001")]
    [InlineData(1, "p = 1.000")]
    public void A_p_value_has_three_decimals(double p, string text) => Assert.Equal(text, Printed.PValue(p));

    [Fact]
    public void A_p_value_beside_its_level_shows_on_which_side_it_lies() =>
        Assert.Equal("p = 0.0504", Printed.PValue(0.0504, against: 0.05));

    [Fact]
    public void Decimals_of_a_kind_never_change() =>
        Assert.Equal(["1.050", "32.0 IBU", "38.0 g", "0.85 oz", "20.0 L", "1.00", "5.6 %"], new string[]
        {
            Printed.Gravity(1.05), Printed.Bitterness(32, "IBU"), Printed.Mass(Mass.FromGrams(38)),
            Printed.Mass(Mass.FromOunces(0.85)), Printed.Volume(Volume.FromLiters(20)), Printed.Ratio(1), Printed.HopAcid(5.6),
        });

    [Fact]
    public void A_minus_is_a_minus_sign_and_zero_has_none() =>
        Assert.Equal(["−2.3 BU", "+2.3 BU", "0.0 BU", "0.0 BU"], new string[]
        {
            Printed.Bitterness(-2.31, "BU").WithSign, Printed.Bitterness(2.31, "BU").WithSign,
            Printed.Bitterness(-0.04, "BU").WithSign, Printed.Bitterness(0.04, "BU").WithSign,
        });

    [Fact]
    public void What_a_person_chose_is_printed_as_chosen() =>
        Assert.Equal(["5 %", "2.5 %", "1.75 fl oz", "90 min", "1,200"], new string[]
        {
            Printed.ChosenPercent(0.05), Printed.ChosenPercent(0.025), Printed.Chosen(1.75, "fl oz"), Printed.Chosen(90, "min"),
            Printed.Chosen(1200),
        });

    [Fact]
    public void Counts_have_commas_and_a_noun_in_the_right_number() =>
        Assert.Equal(["10,000", "1 taster", "24 tasters", "7.7", "8", "14"], new string[]
        {
            Printed.Count(10_000), Printed.Count(1, "taster"), Printed.Count(24, "taster"),
            Printed.Expected(23 / 3.0), Printed.Expected(8), Printed.Expected(13.67),
        });

    [Fact]
    public void A_range_says_its_unit_once_and_an_open_end_in_words()
    {
        Assert.Equal("21.3 to 30.8 BU", Printed.Range(Printed.Bitterness(21.3), Printed.Bitterness(30.8, "BU")));
        Assert.Equal("0.45 or more", Printed.Range(new Interval(0.45, double.PositiveInfinity), Printed.DPrime));
    }

    [Fact]
    public void The_unrounded_value_stays_with_the_text() => Assert.Equal(6.958, Printed.Percent(0.06958).Value, 1e-9);

    [Fact]
    public void A_default_value_prints_nothing() => Assert.Equal("", default(Printed).ToString());
}
