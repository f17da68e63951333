using UnitsNet;

namespace SplitBatch.Trials.Files;

public class CsvTableTests
{
    private readonly FaultList faults = [];

    private CsvTable Read(string text, DecimalMark? mark = null, IReadOnlyDictionary<string, string>? names = null) =>
        CsvTable.Read("hops.csv", new StringReader(text), faults, mark, names);

    [Fact]
    public void A_unit_in_the_header_becomes_part_of_the_quantity()
    {
        var row = Assert.Single(Read("lot,amount [oz]\ncones,2\n").Rows);
        Assert.Equal("cones", row.Text("lot"));
        Assert.Equal(56.699, row.Mass("amount")!.Value.Grams, 3);
        Assert.Empty(faults);
    }

    [Fact]
    public void A_spreadsheet_file_with_byte_order_mark_semicolons_and_decimal_commas_is_read()
    {
        var row = Assert.Single(Read("\uFEFFlot;alpha [%]\r\ncones;5,6\r\n").Rows);
        Assert.Equal(5.6, row.Number("alpha"));
        Assert.Empty(faults);
    }

    [Fact]
    public void Remarks_and_empty_rows_are_passed_over_and_lines_keep_their_numbers()
    {
        var table = Read("# what this is\nlot,alpha [%]\n\n# a remark\ncones,4.7\n");
        Assert.Equal(5, Assert.Single(table.Rows).Line);
    }

    [Fact]
    public void A_remark_that_a_spreadsheet_put_into_quotation_marks_is_still_a_remark()
    {
        var table = Read("\uFEFF\"# what this is; and how\";;\r\nlot;alpha [%];\r\ncones;5,6;\r\n");
        Assert.Equal(5.6, Assert.Single(table.Rows).Number("alpha"));
        Assert.Equal((";", 3), (table.Delimiter, table.Rows[0].Line));
        Assert.Empty(faults);
    }

    [Fact]
    public void A_missing_column_is_looked_for_in_the_line_of_the_header()
    {
        Read("# what this is\nlot,alpah [%]\ncones,4.7\n").Require("alpha");
        Assert.Equal("hops.csv, row 2, alpha: The column \"alpha\" is missing; the file has the columns lot, alpah [%]. Accepted: a "
            + "column headed alpha, with its unit in brackets where it has one. Did you mean \"alpah\"?",
            Assert.Single(faults).ToString());
    }

    [Theory]
    [InlineData("5,6", DecimalMark.Point, "could be read in two ways; write 5.6")]
    [InlineData("1.050", DecimalMark.Comma, "could be read in two ways; write 1,050")]
    [InlineData("1,234.5", DecimalMark.Point, "Thousands separators are not accepted")]
    [InlineData("1.234.567", DecimalMark.Point, "Thousands separators are not accepted")]
    [InlineData("5.6 %", DecimalMark.Point, "without a percent sign")]
    [InlineData("four", DecimalMark.Point, "\"four\" is not a number")]
    [InlineData("NaN", DecimalMark.Point, "\"NaN\" is not a number")]
    [InlineData("1e999", DecimalMark.Point, "\"1e999\" is not a number")]
    public void A_number_that_could_be_misread_is_refused_and_named(string text, DecimalMark mark, string problem)
    {
        var row = Assert.Single(Read($"lot;alpha [%]\ncones;{text}\n", mark).Rows);
        Assert.Null(row.Number("alpha"));
        var fault = Assert.Single(faults);
        Assert.Contains(problem, fault.Problem, StringComparison.Ordinal);
        Assert.Equal(("hops.csv", 2, "alpha [%]", text), (fault.File, fault.Row, fault.Column, fault.Value));
    }

    [Fact]
    public void A_unit_that_does_not_fit_the_column_is_named_with_those_that_do()
    {
        var row = Assert.Single(Read("lot,amount [gal]\ncones,2\n").Rows);
        Assert.Null(row.Mass("amount"));
        Assert.Equal(
            "hops.csv, row 2, amount [gal] = \"2\": The unit \"gal\" is not one for this column. Accepted: a header such as amount "
                + "[unit], with one of g, kg, mg, oz, lb.",
            Assert.Single(faults).ToString());
    }

    [Fact]
    public void A_missing_column_is_named_and_the_nearest_one_offered()
    {
        Assert.False(Read("lott,alpha [%]\ncones,4.7\n").Require("lot", "alpha"));
        Assert.Equal("Did you mean \"lott\"?", Assert.Single(faults).Suggestion);
    }

    [Fact]
    public void A_row_with_more_values_than_headers_is_a_fault_and_the_others_are_kept()
    {
        var table = Read("lot,note\ncones,dry, pale\npellets,fresh\n");
        Assert.Equal("pellets", Assert.Single(table.Rows).Text("lot"));
        Assert.Equal(2, Assert.Single(faults).Row);
    }

    [Fact]
    public void A_date_is_read_year_first_and_refused_otherwise()
    {
        var table = Read("lot,assayed\ncones,2026-03-04\npellets,03/04/2026\n");
        Assert.Equal(new DateOnly(2026, 3, 4), table.Rows[0].OptionalDate("assayed"));
        Assert.Null(table.Rows[1].OptionalDate("assayed"));
        Assert.Equal(3, Assert.Single(faults).Row);
    }

    [Fact]
    public void Columns_go_by_other_names_when_the_trial_says_so()
    {
        var row =
            Assert.Single(
                Read("Probe;Wert\nX1;21,5\n", names: new Dictionary<string, string> { ["sample"] = "Probe", ["value"] = "Wert" }).Rows);
        Assert.Equal("X1", row.Text("sample"));
        Assert.Equal(21.5, row.Number("value"));
    }

    [Fact]
    public void Binary_content_is_refused()
    {
        Assert.Empty(Read("lot,al\0pha\n1,2\n").Rows);
        Assert.Contains("NUL", Assert.Single(faults).Problem, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(5.6)]
    [InlineData(-0.1)]
    [InlineData(1e-9)]
    public void A_written_number_reads_back_the_same(double number)
    {
        foreach (var mark in Enum.GetValues<DecimalMark>())
        {
            Assert.True(NumberText.TryRead(NumberText.Write(number, mark), mark, out var read, out _));
            Assert.Equal(number, read);
        }
    }

    [Fact]
    public void A_fahrenheit_column_is_read_as_a_temperature() =>
        Assert.Equal(20, Assert.Single(Read("lot,storage [°F]\ncones,68\n").Rows).Temperature("storage")!.Value
            .As(UnitsNet.Units.TemperatureUnit.DegreeCelsius), 9);
}
