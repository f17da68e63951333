using System.Xml.Linq;
using SplitBatch.Bitterness;
using SplitBatch.Brewing;
using SplitBatch.Display.Charts;
using SplitBatch.Display.Figures;
using SplitBatch.Display.Tables;
using SplitBatch.Lab;
using SplitBatch.Panel.Ballots;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;
using SplitBatch.Panel.Liking;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;
using SplitBatch.Panel.Serving;
using SplitBatch.Panel.Simulation;

namespace SplitBatch.Display.Charts;

/// <summary>Every chart, on small invented results: it draws for page and phone, says its numbers, and has them as a table.</summary>
public class ChartsTests
{
    private static ChargeMatch Match { get; } =
        ChargeMatch.Solve(Kettle.Metric(20, 1.050), 32, HopLot.Cones("cones", 5), HopLot.Pellets("pellets", 11));

    private static DoseUncertainty Doubt { get; } = DoseUncertainty.Of(Match, draws: 20_000);

    private static LabComparison Measured { get; } =
        LabComparison.Compare(Precision.Limit95(2.0, PrecisionCondition.Repeatability), [24.9, 25.6], [26.1, 26.4]);

    private static Forest Two { get; } =
        Forest.Of([new("home", Protocol.Triangle, 24, 11), new("brewery", Protocol.Tetrad, 40, 30), new("club", Protocol.DuoTrio, 6, 6)]);

    private static IEnumerable<Rating> Ratings { get; } =
        [.. Enumerable.Range(1, 18)
            .SelectMany(
                i => new[] { new Rating($"T{i}", "bitterness", 4 + i % 3, 5 + i % 4),
                    new Rating($"T{i}", "fruit", 3 + i % 2, 3 + (i + 1) % 2), new Rating($"T{i}", "liking", 6, 6 + i % 2) })];

    private static ScoredPanel Panel { get; } = Scored();

    private static ScoredPanel Scored()
    {
        var plan = ServingPlan.Balanced(Protocol.Triangle, tasters: 24, seed: 7);
        return plan.Score([.. plan.Sets.Select((set, i) => new Ballot(set.Taster, set.CodedCups.ElementAt(i % 3).Code))]);
    }

    internal static IReadOnlyList<Figure> All { get; } =
    [
        DifferenceTest.Of(Protocol.Triangle, 24, 11).Chart(),
        DifferenceTest.Of(Protocol.PairedTwoSided, 30, 8).Chart(),
        (new PanelPlan(Protocol.Triangle, 24)).Chart(),
        (new PanelPlan(Protocol.DuoTrio, 200) { Margin = 0.1 }).Chart(),
        PanelReading.Of(Protocol.Triangle, 24, 11, 0.3).Chart("main"),
        DiscriminatorCharts.Chart([("main", PanelReading.Of(Protocol.Triangle, 24, 11, 0.3)),
            ("second panel at the brewery", PanelReading.Of(Protocol.Tetrad, 40, 30, 0.3))]),
        LabComparison.Compare(Precision.Limit95(2.0, PrecisionCondition.Repeatability), [30.1, 31.0], [33.9, 34.4]).Chart(),
        Match.ChartOfModels(),
        Doubt.Chart(),
        Match.ChartAgainst(Measured),
        Match.ChartAgainst(Measured, Doubt),
        WaldPlan.Of(Protocol.Triangle, 0.3).Follow(Enumerable.Range(0, 60).Select(i => i % 3 != 1)).Chart(),
        WaldPlan.Of(Protocol.Triangle, 0.3).Follow(Enumerable.Range(0, 60).Select(i => i % 4 == 1)).Chart(),
        WaldPlan.Of(Protocol.DuoTrio, 0.3).Chart(),
        RatingComparison.OfAll(Ratings).Where(r => r.Group == RatingGroup.All).Chart("0 none to 10 very strong"),
        BiasReport.Of(Panel).Chart(),
        (BiasReport.Of(Panel).Checks[0]).Chart(),
        Match.Chart(),
        Two.Chart(),
        Two.Chart(Two.Combine()),
        HouseCalibration.Fit([new("autumn bitter", 31, 24.5), new("winter stout", 42, 30.1), new("summer ale", 22, 19.8)]).Chart(),
        LabComparison.Compare(LabPrecision.Of(Precision.Limit95(4.0, PrecisionCondition.Repeatability)), new Replicates("A", [30.1, 31.0]),
            new Replicates("B", [31.0])).Chart(),
        Simulate.Panels(Protocol.Triangle, 20, 200, seed: 1).Chart(),
        Simulate.Panels(Protocol.Triangle, 2, 200, seed: 1, new SimulatedTasters(DPrimeSpread.Discriminators(0.5)), replicates: 10)
            .Chart(),
        Protocol.Triangle.ExplorePower().Still,
        Protocol.Tetrad.ExploreCounts(tasters: 30).Still,
    ];

    public static TheoryData<int> Indices => [.. Enumerable.Range(0, All.Count)];

    [Theory]
    [MemberData(nameof(Indices))]
    public void A_chart_draws_for_page_and_phone_with_every_word_inside(int index)
    {
        foreach (var width in new[] { 360, 720 })
        {
            XDocument.Parse(All[index].ToSvg(width));
            var scene = All[index].Compose(width);
            Assert.All(scene.Shapes.OfType<Drawing.Writing>(), text =>
            {
                var length = Drawing.Face.For(text.Bold).Width(text.Text, text.Size);
                var left = text.Anchor switch { Drawing.Anchor.Start => text.At.X, Drawing.Anchor.Middle => text.At.X - length / 2,
                    _ => text.At.X - length };
                Assert.True(left >= 0 && left + length <= scene.Width + 0.5,
                    $"\"{text.Text}\" runs from {left:0} to {left + length:0} of {scene.Width:0}");
            });
        }
    }

    [Theory]
    [MemberData(nameof(Indices))]
    public void A_chart_has_words_units_and_numbers(int index)
    {
        var figure = All[index];
        Assert.False(string.IsNullOrWhiteSpace(figure.Title));
        Assert.Contains(figure.Reading, char.IsDigit);
        Assert.True(figure.X.IsCategorical || figure.X.Name.Length > 0);
        Assert.NotEmpty(figure.Numbers.Rows);
    }

    [Fact]
    public void The_count_chart_marks_the_critical_count()
    {
        var figure = DifferenceTest.Of(Protocol.Triangle, 20, 11).Chart();
        // 11 of 20 at 5 %: J. Soc. Cosmet. Chem. 22 (1971), p. 214
        Assert.Contains("11 or more show a difference", figure.ToSvg(), StringComparison.Ordinal);
        Assert.Contains("more than guessing gives", figure.Title, StringComparison.Ordinal);
    }

    [Fact]
    public void The_charges_of_a_match_stand_in_the_table()
    {
        var match = ChargeMatch.Solve(Kettle.Metric(20, 1.050), 32, HopLot.Cones("cones", 5), HopLot.Pellets("pellets", 11));
        var table = match.Table();
        Assert.Equal(2, table.Rows.Count);
        Assert.Equal(match.A.HopMass.Grams, (double)table.Rows[0][4]!, 1e-9);
        Assert.Equal(["A", "B"], match.WhatComesWithIt().Rows.Select(r => (string)r[0]!));
    }
}
