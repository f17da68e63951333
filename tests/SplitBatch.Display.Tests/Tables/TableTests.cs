namespace SplitBatch.Display.Tables;

public class TableTests
{
    private sealed record Charge(string Lot, double? Grams, double Alpha);

    private static Table Charges => TableOf.Each<Charge>([new("cones", 61.25, 0.056), new("pellets", null, 0.125)], "The two charges")
        .Text("lot", c => c.Lot).Number("amount", c => c.Grams, "g").Percent("alpha acid", c => c.Alpha, decimals: 1).ToTable();

    [Fact]
    public void Headings_carry_units_and_cells_their_decimals()
    {
        Assert.Equal(["lot", "amount [g]", "alpha acid [%]"], Charges.Columns.Select(c => c.Heading));
        Assert.Equal("61.3", Charges.Cell(0, 1));
        Assert.Equal("\u2013", Charges.Cell(1, 1));
        Assert.Equal("12.5", Charges.Cell(1, 2));
    }

    [Fact]
    public void The_frame_holds_the_same_numbers_unrounded()
    {
        Assert.Equal(61.25, Charges.Frame["amount [g]"][0]);
        Assert.Null(Charges.Frame["amount [g]"][1]);
    }

    [Fact]
    public void A_row_of_the_wrong_length_is_refused()
    {
        var error = Assert.Throws<ArgumentException>(() => new Table("x", [new("a"), new("b")], [["one"]]));
        Assert.Contains("Row 1 has 1 values; the table has 2 columns.", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_number_in_a_column_of_words_is_refused() =>
        Assert.Throws<ArgumentException>(() => new Table("x", [new("a")], [[1.0]]));
}
