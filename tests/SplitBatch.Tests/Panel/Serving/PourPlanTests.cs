using SplitBatch.Panel.Protocols;
using UnitsNet;

namespace SplitBatch.Panel.Serving;

public class PourPlanTests
{
    [Fact]
    public void Five_cups_of_50_mL_at_5_percent_hold_12_and_a_half_mL_or_9_9_g_of_alcohol()
    {
        // Check values, section 5: 5 x 50 mL at 5 % = 12.5 mL, 9.9 g.
        var pour = PourPlan.For(ServingPlan.Balanced(Protocol.TwoOutOfFive, 10, seed: 1), 5, 5);
        Assert.All(pour.Tasters, taster => Assert.Equal(12.5, taster.Alcohol.Milliliters, 9));
        Assert.Equal(9.9, Math.Round(pour.Most.AlcoholMass.Grams, 1));
        Assert.Equal("T01, session 1: 5 cups, 250 mL of beer, 12.5 mL (9.9 g) of alcohol", pour.Tasters[0].ToString());
    }

    [Fact]
    public void Twenty_four_triangles_take_36_cups_of_each_beer()
    {
        var pour = PourPlan.For(ServingPlan.Balanced(Protocol.Triangle, 24, seed: 1), 5.2, 5.2,
            new PourOptions { Pour = Volume.FromMilliliters(40), Spare = 0.25, Container = Volume.FromMilliliters(500) });
        Assert.Equal("beer A: 36 cups, 1.44 L in the cups, 1.80 L with spare (4 containers)", pour.Beers[0].ToString());
        Assert.Equal("beer B: 36 cups, 1.44 L in the cups, 1.80 L with spare (4 containers)", pour.Beers[1].ToString());
    }

    [Fact]
    public void A_pour_in_ounces_is_planned_in_ounces()
    {
        // 36 cups x 1.75 fl oz = 63 fl oz, and 15 % more are 72.45; 3 x 1.75 = 5.25.
        var pour = PourPlan.For(ServingPlan.Balanced(Protocol.Triangle, 24, seed: 1), 5, 5,
            PourOptions.For(UnitSystem.Us) with { Container = Volume.FromUsOunces(12) });
        Assert.Equal("beer A: 36 cups, 63 fl oz in the cups, 72 fl oz with spare (7 containers)", pour.Beers[0].ToString());
        Assert.StartsWith("T01, session 1: 3 cups, 5.25 fl oz of beer, 7.8 mL (6.1 g) of alcohol", pour.Tasters[0].ToString(),
            StringComparison.Ordinal);
        Assert.Equal("1.75 fl oz in every cup, at 52 °F (11 °C)", pour.Options.ToString());
        Assert.Equal("50 mL in every cup, at 11 °C (52 °F)", PourOptions.For(UnitSystem.Metric).ToString());
    }

    [Fact]
    public void A_container_that_is_just_enough_needs_no_second_one()
    {
        var pour = PourPlan.For(ServingPlan.Balanced(Protocol.PairedTwoSided, 11, seed: 1), 5, 5,
            new PourOptions { Spare = 0.1, Container = Volume.FromMilliliters(605) });
        Assert.Equal(1, pour.Beers[0].Containers);
    }

    [Fact]
    public void References_and_cups_to_learn_a_beer_are_poured_too()
    {
        Assert.Equal(18 * 3, PourPlan.For(ServingPlan.Balanced(Protocol.DuoTrio, 18, seed: 1), 5, 5).Beers.Sum(beer => beer.Cups));
        var own = PourPlan.For(ServingPlan.Balanced(Protocol.ANotA, 10, seed: 1, replicates: 2), 5, 5);
        Assert.Equal((20, 10), (own.Beers[0].Cups, own.Beers[1].Cups));
        Assert.All(own.Tasters, taster => Assert.Equal(3, taster.Cups));
    }

    [Fact]
    public void Each_taster_drinks_what_the_key_gives_them()
    {
        var plan = ServingPlan.Balanced(Protocol.Triangle, 6, seed: 1);
        var pour = PourPlan.For(plan, 4, 10);
        foreach (var set in plan.Sets)
        {
            double strong = set.Cups.Count(cup => cup.Beer == Side.B);
            Assert.Equal(50 * ((strong * 0.10) + ((3 - strong) * 0.04)),
                pour.Tasters.Single(taster => taster.Taster == set.Taster).Alcohol.Milliliters, 9);
        }
        Assert.Contains(pour.Cautions, caution => caution.Contains("differ by 6.0 %", StringComparison.Ordinal));
    }

    [Fact]
    public void Cautions_name_age_driving_pregnancy_medicine_law_and_rest()
    {
        string all =
            string.Join(' ',
                PourPlan.For(ServingPlan.Balanced(Protocol.Triangle, 6, seed: 1), 5, 5,
                    new PourOptions { Allergens = Allergens.Of("barley", "lactose") }).Cautions);
        foreach (string word in new[] { "Adults", "drives", "pregnant", "medicine", "Local law", "spit", "Rest 4 min", "11 °C (52 °F)" })
            Assert.Contains(word, all, StringComparison.Ordinal);
        Assert.DoesNotContain("tire the palate", all, StringComparison.Ordinal);
        var many = PourPlan.For(ServingPlan.Balanced(Protocol.Triangle, 2, seed: 1, replicates: 6), 6, 6);
        Assert.Contains("g of alcohol in one sitting. Pour less", many.Cautions[0], StringComparison.Ordinal);
        Assert.Contains("6 sets in one sitting tire the palate", many.Cautions[1], StringComparison.Ordinal);
    }

    [Fact]
    public void A_share_given_for_a_percentage_is_caught() =>
        Assert.Contains("write 5 for 5 %",
            Assert.Throws<ArgumentOutOfRangeException>(
                () => PourPlan.For(ServingPlan.Balanced(Protocol.Triangle, 6, seed: 1), 0.05, 5)).Message, StringComparison.Ordinal);
}
