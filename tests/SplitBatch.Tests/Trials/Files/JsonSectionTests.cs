namespace SplitBatch.Trials.Files;

public class JsonSectionTests
{
    private readonly FaultList faults = [];

    private JsonSection? Read(string text) => JsonSection.Read("trial.json", new StringReader(text), faults);

    [Fact]
    public void A_quantity_carries_its_unit_in_its_name()
    {
        Assert.Equal(18.927, Read("""{ "volume [gal]": 5 }""")!.OptionalVolume("volume")!.Value.Liters, 3);
        Assert.Empty(faults);
    }

    [Theory]
    [InlineData("""{ "volume": 20 }""",
        "trial.json, volume = \"20\": The unit is missing. Accepted: \"volume [unit]\", with one of L, mL, hL, gal, qt, fl oz.")]
    [InlineData("""{ "volume [g]": 20 }""",
        "trial.json, volume [g] = \"20\": The unit \"g\" is not one for this value. Accepted: \"volume [unit]\", with one of L, mL, hL, "
            + "gal, qt, fl oz.")]
    [InlineData("""{ "volume [L]": "20" }""",
        "trial.json, volume [L] = \"20\": The value is not a number. Accepted: a number between 0 and 1000000000, with a decimal point "
            + "and without quotation marks.")]
    public void A_quantity_without_a_fitting_unit_or_number_is_refused(string text, string fault)
    {
        Assert.Null(Read(text)!.OptionalVolume("volume"));
        Assert.Equal(fault, Assert.Single(faults).ToString());
    }

    [Fact]
    public void A_missing_comma_is_found_by_its_line()
    {
        Assert.Null(Read("{\n \"title\": \"x\"\n \"question\": \"y\"\n}"));
        Assert.Equal(3, Assert.Single(faults).Row);
    }

    [Fact]
    public void A_name_that_stands_twice_is_refused()
    {
        Assert.Null(Read("""{ "title": "x", "title": "y" }"""));
        Assert.Contains("title", Assert.Single(faults).Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void A_misspelt_name_is_found_after_reading_and_the_nearest_offered()
    {
        var root = Read("""{ "panel": { "alhpa": 0.05 } }""")!;
        root.Section("panel")!.OptionalShare("alpha");
        root.RefuseUnasked();
        var fault = Assert.Single(faults);
        Assert.Equal(("panel.alhpa", "Did you mean \"alpha\"?"), (fault.Column, fault.Suggestion));
    }

    [Theory]
    [InlineData("{}")]
    [InlineData("""{ "title": " " }""")]
    [InlineData("""{ "title": null }""")]
    public void A_blank_text_that_is_needed_is_one_fault(string text)
    {
        Assert.Null(Read(text)!.Text("title"));
        Assert.Equal("The value is missing.", Assert.Single(faults).Problem);
    }

    [Theory]
    [InlineData("[]")]
    [InlineData("")]
    [InlineData("null")]
    public void What_is_not_an_object_is_one_fault(string text)
    {
        Assert.Null(Read(text));
        Assert.Single(faults);
    }
}
