using SplitBatch.Bitterness;
using SplitBatch.Brewing;
using SplitBatch.Display.Charts;
using SplitBatch.Display.Sheets;
using SplitBatch.Display.Tables;
using SplitBatch.Display.WriteUp;
using SplitBatch.Trials;

namespace SplitBatch.Display;

/// <summary>A trial in US units is read in ounces, gallons and °F, and nobody reads a name of the code.</summary>
public partial class UnitsAndWordsTests
{
    private static Trial Stout { get; } = Trial.Open(ThreeWriteUps.Trial("stout-early-or-late"));

    [Fact]
    public void Sheets_of_a_trial_in_us_units_pour_ounces_on_letter_paper()
    {
        var sheets = PanelSheets.Of(Stout);
        Assert.Contains("1.75 fl oz in every cup, at 52 °F (11 °C).", sheets.Pouring.Html, StringComparison.Ordinal);
        Assert.Contains("fl oz of the one beer and ", sheets.Briefing.Html, StringComparison.Ordinal);
        Assert.Contains("@page{size:letter", sheets.Pouring.Html, StringComparison.Ordinal);
    }

    [Fact]
    public void The_charges_of_a_US_trial_are_tabled_in_ounces_quarts_and_gallons()
    {
        var doses = Stout.Doses!;
        var charges = doses.Table();
        Assert.Equal(["", "", "", "", "oz", "oz", "%", "IBU"], charges.Columns.Select(column => column.Unit));
        Assert.Equal("1.35", charges.Cell(0, 4));
        Assert.Equal("whirlpool, 0 min after flame-out", charges.Cell(1, 3));
        var carried = doses.WhatComesWithIt();
        Assert.Equal(["", "IBU", "oz", "oz", "oz", "qt", "gal"], carried.Columns.Select(column => column.Unit));
        Assert.Equal(doses.A.WortHeld.UsQuarts, (double)carried.Rows[0][5]!, 1e-9);
        Assert.Equal(doses.A.IntoFermenter.UsGallons, (double)carried.Rows[0][6]!, 1e-9);
    }

    [Fact]
    public void The_charges_of_a_US_trial_are_drawn_and_told_in_ounces()
    {
        var chart = (Stout.Doses!).Chart();
        Assert.Equal("oz", chart.X.Unit);
        Assert.StartsWith("A: 1.35 oz of bittering pellets with 0.129 oz of alpha acid", chart.Reading, StringComparison.Ordinal);
        var glance = (Stout.Doses!).AtAGlance(criticalDifference: 2);
        Assert.DoesNotContain(glance.Rows.SelectMany(row => row), cell => cell is string text && Metric().IsMatch(text));
    }

    /// <summary>Numbers with a metric unit; the write-up's cautions and the ratio of wort held have none.</summary>
    [Fact]
    public void The_write_up_of_a_US_trial_states_no_gram_no_litre_and_no_Celsius()
    {
        var text = TrialReport.Of(Stout).ToMarkdown();
        Assert.Contains(" oz", text, StringComparison.Ordinal);
        Assert.Contains("66 days at 28 °F", text, StringComparison.Ordinal);
        Assert.Empty(Metric().Matches(text).Select(match => match.Value));
        Assert.DoesNotContain((Stout.Doses!).Table().Columns, column => column.Unit is "g" or "L");
    }

    [Theory]
    [InlineData("amber-cone-or-pellet")]
    [InlineData("stout-early-or-late")]
    [InlineData("lager-one-rest-or-two")]
    public void No_name_of_the_code_stands_in_a_write_up(string name)
    {
        var text = TrialReport.Of(Trial.Open(ThreeWriteUps.Trial(name))).ToMarkdown();
        var names = typeof(HopForm).Assembly.GetExportedTypes().Where(type => type.IsEnum).SelectMany(Enum.GetNames)
            .Where(word => word.Skip(1).Any(char.IsUpper));
        Assert.All(names, word => Assert.DoesNotMatch($@"\b{word}\b", text));
    }

    [Fact]
    public void A_lot_shows_alpha_and_beta_acids_with_the_assays_range_then_and_on_brew_day()
    {
        var table = Trial.Open(ThreeWriteUps.Trial("amber-cone-or-pellet")).LotsOnBrewDay.Table();
        string[] names = [.. table.Columns.Select(column => column.Name)];
        string Of(string column) => table.Cell(0, Array.IndexOf(names, column));
        Assert.Equal(("6.6 ± 0.3", "4.8 ± 0.3"), (Of("alpha acid [%]"), Of("beta acid [%]")));
        Assert.EndsWith("(2026-03-14)", table.Caption, StringComparison.Ordinal);

        // Garetz (1994) by hand: 35 % in six months, 145 days at 4 °C in a barrier leave 0.920501; 30 % of the exponent 0.082837 and the
        // assay's 0.3 / 1.96 / 6.6 in squares make 0.0340, and 1.96 of that is 6.7 % of 6.0753: 5.67 to 6.48.
        Assert.Equal("6.1 (5.7 to 6.5)", Of("alpha acid on brew day [%]"));
        Assert.Equal("Garetz", Of("aged by"));
        var lager = Trial.Open(ThreeWriteUps.Trial("lager-one-rest-or-two")).LotsOnBrewDay.Table();
        Assert.Equal("nothing: as assayed", lager.Cell(0, lager.Columns.Count - 1));
        Assert.Contains("taken as assayed; ageing it needs a storage index of brew day, or else: loss in six months.", lager.Note,
            StringComparison.Ordinal);
    }

    [Fact]
    public void Names_in_the_house_chart_keep_clear_of_each_other()
    {
        CalibrationPair[] pairs = [new("lager-one-rest-or-two", 25.8, 20.4), new("lager-one-rest-or-two", 25.8, 20.3),
            new("stout-early-or-late", 38.3, 35.5), new("stout-early-or-late", 38.5, 42.9), new("amber-cone-or-pellet", 28.1, 27.1),
            new("amber-cone-or-pellet", 27.9, 24.4)];
        foreach (var width in new[] { 360, 720 })
        {
            var words = HouseCalibration.Fit(pairs).Chart().Compose(width).Shapes.OfType<Drawing.Writing>()
                .Where(text => pairs.Any(pair => pair.Batch == text.Text)).ToList();
            Assert.Equal(3, words.Count);
            foreach (var (one, other) in words.SelectMany((one, i) => words.Skip(i + 1).Select(other => (one, other))))
            {
                var apart = Math.Abs(one.At.Y - other.At.Y) >= 14
                    || one.At.X + Drawing.Face.Regular.Width(one.Text, one.Size) <= other.At.X
                    || other.At.X + Drawing.Face.Regular.Width(other.Text, other.Size) <= one.At.X;
                Assert.True(apart, $"{one.Text} and {other.Text} overlap at {width} pixels");
            }
        }
    }

    [System.Text.RegularExpressions.GeneratedRegex(@"\d (?:g|kg|mg|L|mL|°C)\b|\[(?:g|kg|L|°C)\]")]
    private static partial System.Text.RegularExpressions.Regex Metric();
}
