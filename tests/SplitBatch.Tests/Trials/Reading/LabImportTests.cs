using SplitBatch.Trials.Files;

namespace SplitBatch.Trials.Reading;

public class LabImportTests
{
    private readonly FaultList faults = [];

    private LabImport Import(string json) =>
        Assert.Single(LabSection.Read(JsonSection.Read("trial.json", new StringReader(json), faults)).Imports);

    private const string German = """
        { "imports": { "file": "incoming/befund.csv",
          "columns": { "report": "Bericht", "sample": "Probe", "analyte": "Analyse", "replicate": "Nr", "value": "Ergebnis", "unit": "Einheit" },
          "words": { "Bittereinheiten": "bitterness", "BE": "BU", "Farbe": "colour" }, "always": { "lab": "laboratory one", "received": "2026-04-02" } } }
        """;

    [Fact]
    public void A_return_with_other_names_words_and_decimal_commas_is_read_by_its_map()
    {
        var results = Import(German)
            .Read("Bericht;Probe;Analyse;Nr;Ergebnis;Einheit\r\nB7;K7;Bittereinheiten;1;25,1;BE\r\nB7;K7;Bittereinheiten;2;24,9;BE\r\n"
                + "B7;M2;Farbe;1;1.000,0;EBC\r\n", faults);
        Assert.Empty(faults);
        Assert.Equal([25.1, 24.9, 1000], results.Select(result => result.Value));
        Assert.Equal("B7/K7/bitterness/2", results[1].Id);
        Assert.Equal(("laboratory one", new DateOnly(2026, 4, 2)), (results[0].Laboratory, results[0].Received));
    }

    [Fact]
    public void A_file_with_semicolons_and_decimal_points_is_recognised_by_its_numbers()
    {
        var results = Import(German)
            .Read("Bericht;Probe;Analyse;Nr;Ergebnis;Einheit\nB7;K7;Bittereinheiten;1;25.1;BE\nB7;K7;Bittereinheiten;2;25;BE\n", faults);
        Assert.Empty(faults);
        Assert.Equal([25.1, 25.0], results.Select(result => result.Value));
    }

    [Fact]
    public void A_file_that_writes_decimals_in_two_ways_is_refused_whole()
    {
        Assert.Empty(
            Import(German)
                .Read("Bericht;Probe;Analyse;Nr;Ergebnis;Einheit\nB7;K7;Bittereinheiten;1;25.1;BE\n"
                    + "B7;K7;Bittereinheiten;2;24,9;BE\n", faults));
        Assert.Contains("in two ways: 25.1 and 24,9", Assert.Single(faults).Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void One_column_for_each_analyte_is_read_too_and_blanks_are_passed_over()
    {
        var results =
            Import("""{ "imports": [ { "file": "incoming/wide.csv", "columns": { "sample": "bottle" }, "analytes": { "bitterness":"""
                + """ "IBU", "colour": "color [SRM]", "alcohol": "ABV" } } ] }""")
                .Read("bottle,IBU,color [SRM],ABV\nK7,25.1,10,5.2\nK7,24.9,,\nM2,22.9,10.5,5.3\n", faults);
        Assert.Empty(faults);
        Assert.Equal(["wide/K7/bitterness/1", "wide/K7/colour/1", "wide/K7/alcohol/1", "wide/K7/bitterness/2", "wide/M2/bitterness/1",
            "wide/M2/colour/1", "wide/M2/alcohol/1"], results.Select(result => result.Id));
        Assert.Equal(19.7, results[1].Value, 9);
    }

    [Theory]
    [InlineData("B7;K7;Gluten;1;25,1;BE", "Analyse")]
    [InlineData("B7;K7;Bittereinheiten;x;25,1;BE", "Nr")]
    [InlineData("B7;K7;Bittereinheiten;1;< 5;BE", "Ergebnis")]
    [InlineData("B7;;Bittereinheiten;1;25,1;BE", "Probe")]
    [InlineData("B7;K7;Bittereinheiten;1;25,1;mmol", "Ergebnis")]
    public void What_cannot_be_used_is_named_by_the_row_it_stands_in(string row, string column)
    {
        Assert.Empty(Import(German).Read($"Bericht;Probe;Analyse;Nr;Ergebnis;Einheit\n{row}\n", faults));
        var fault = Assert.Single(faults);
        Assert.Equal(("incoming/befund.csv", 2, column), (fault.File, fault.Row, fault.Column));
    }

    [Fact]
    public void A_misspelt_column_in_the_map_is_named()
    {
        Import("""{ "imports": { "file": "a.csv", "columns": { "samlpe": "Probe" } } }""");
        Assert.Equal("Did you mean \"sample\"?", Assert.Single(faults).Suggestion);
    }

    [Fact]
    public void A_just_noticeable_difference_needs_its_source()
    {
        var json = JsonSection.Read("trial.json",
            new StringReader("""{ "just noticeable difference": { "low [BU]": 3, "high [BU]": 5 } }"""), faults);
        Assert.Null(LabSection.Read(json).Noticeable);
        Assert.Equal("just noticeable difference.source", Assert.Single(faults).Column);
    }
}
