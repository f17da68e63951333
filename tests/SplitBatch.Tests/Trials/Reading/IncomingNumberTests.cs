using SplitBatch.Trials.Files;

namespace SplitBatch.Trials.Reading;

public class IncomingNumberTests
{
    [Theory]
    [InlineData("25.3", DecimalMark.Point)]
    [InlineData("25,3", DecimalMark.Comma)]
    [InlineData("1.234,5", DecimalMark.Comma)]
    [InlineData("1,234.5", DecimalMark.Point)]
    [InlineData("1.234.567", DecimalMark.Comma)]
    [InlineData("0.512", DecimalMark.Point)]
    [InlineData("0,512", DecimalMark.Comma)]
    [InlineData("25", null)]
    [InlineData("1.050", null)]
    [InlineData("1,050", null)]
    public void A_cell_proves_a_decimal_mark_only_where_it_can_be_read_in_one_way(string cell, DecimalMark? mark) =>
        Assert.Equal(mark, IncomingNumber.MarkOf(["25", cell], out _));

    [Fact]
    public void Cells_that_prove_different_marks_are_a_contradiction()
    {
        Assert.Null(IncomingNumber.MarkOf(["25.3", "1.050", "25,4"], out var contradiction));
        Assert.Equal(("25.3", "25,4"), contradiction);
    }

    [Theory]
    [InlineData("1.050", DecimalMark.Point, 1.05)]
    [InlineData("1,050", DecimalMark.Comma, 1.05)]
    [InlineData("1.234,5", DecimalMark.Comma, 1234.5)]
    [InlineData("1,234.5", DecimalMark.Point, 1234.5)]
    [InlineData("1 234,5", DecimalMark.Comma, 1234.5)]
    [InlineData("1'234.5", DecimalMark.Point, 1234.5)]
    [InlineData("1'234", DecimalMark.Point, 1234)]
    [InlineData("1\u00A0234", DecimalMark.Comma, 1234)]
    [InlineData("1.234.567", DecimalMark.Comma, 1234567)]
    [InlineData("-3,5", DecimalMark.Comma, -3.5)]
    public void A_number_is_read_with_its_thousands_where_nothing_else_can_be_meant(string text, DecimalMark mark, double number)
    {
        Assert.True(IncomingNumber.TryRead(text, mark, out var read, out var problem), problem);
        Assert.Equal(number, read);
    }

    [Theory]
    [InlineData("1.234", DecimalMark.Comma)]
    [InlineData("12,34.5", DecimalMark.Point)]
    [InlineData("1,2345", DecimalMark.Point)]
    [InlineData("1.234'567", DecimalMark.Comma)]
    [InlineData("< 1.0", DecimalMark.Point)]
    [InlineData("25.3 BU", DecimalMark.Point)]
    [InlineData("12 34", DecimalMark.Point)]
    public void What_could_be_read_in_two_ways_is_refused(string text, DecimalMark mark)
    {
        Assert.False(IncomingNumber.TryRead(text, mark, out _, out var problem));
        Assert.NotEmpty(problem);
    }

    [Fact]
    public void Every_grouped_number_written_by_a_spreadsheet_reads_back_or_is_refused_and_never_reads_as_another()
    {
        var random = new Random(41);
        foreach (var (mark, point, group) in new[] { (DecimalMark.Point, ".", ","), (DecimalMark.Comma, ",", "."),
            (DecimalMark.Comma, ",", " "), (DecimalMark.Point, ".", "'") })
        {
            for (var i = 0; i < 500; i++)
            {
                var decimals = random.Next(0, 4);
                var value = Math.Round(random.NextDouble() * Math.Pow(10, random.Next(0, 8)), decimals);
                var text = value.ToString("N" + decimals, System.Globalization.CultureInfo.InvariantCulture)
                    .Replace(".", "|", StringComparison.Ordinal).Replace(",", group, StringComparison.Ordinal)
                    .Replace("|", point, StringComparison.Ordinal);
                if (IncomingNumber.TryRead(text, mark, out var read, out _)) Assert.Equal(value, read);
                if (IncomingNumber.MarkOf([text], out _) is { } proved) Assert.Equal(mark, proved);
            }
        }
    }
}
