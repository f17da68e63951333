using SplitBatch.Lab;
using SplitBatch.Trials.Files;

namespace SplitBatch.Trials.Reading;

public class LabSectionTests
{
    private readonly FaultList faults = [];

    private LabSection Read(string text) => LabSection.Read(JsonSection.Read("trial.json", new StringReader(text), faults));

    [Fact]
    public void One_figure_with_kind_and_condition_is_known()
    {
        var section = Read("""{ "samples": { "K7": "A", "M2": "B" }, "precision": { "analyte": "bitterness", "kind": "standard"""
            + """ deviation", "condition": "repeatability", "value [IBU]": 0.6 } }""");
        Assert.Empty(faults);
        Assert.Equal(Side.B, section.Samples["M2"]);
        Assert.Equal(Precision.StandardDeviation(0.6, PrecisionCondition.Repeatability),
            section.Precision[Analyte.Bitterness].Known!.Repeatability);
    }

    [Fact]
    public void A_range_without_kind_stays_open()
    {
        var method =
            Read("""{ "precision": [ { "value [%]": 4, "up to [%]": 8, "source": "made up" } ] }""").Precision[Analyte.Bitterness];
        Assert.Empty(faults);
        Assert.Null(method.Known);
        Assert.Equal("4 to 8 %, kind not stated, repeatability or reproducibility not stated (made up)", method.ToString());
    }

    [Fact]
    public void Repeatability_and_reproducibility_of_one_method_are_joined()
    {
        var method = Read("""
            { "precision": [
              { "analyte": "pH", "kind": "95 % limit", "condition": "repeatability", "value [pH]": 0.05 },
              { "analyte": "pH", "kind": "95 % limit", "condition": "reproducibility", "value [pH]": 0.2 } ] }
            """).Precision[Analyte.Ph];
        Assert.Empty(faults);
        Assert.Equal((0.05, 0.2), (method.Known!.Repeatability!.LimitAt(4.4), method.Known.Reproducibility!.LimitAt(4.4)));
    }

    [Theory]
    [InlineData("""{ "precision": { "analyte": "biterness", "value [%]": 5 } }""", "precision.analyte")]
    [InlineData("""{ "precision": { "value": 5 } }""", "precision.value [BU]")]
    [InlineData("""{ "precision": { "kind": "CV", "value [BU]": 5 } }""", "precision.value [BU]")]
    [InlineData("""{ "precision": { "value [g/L]": 5 } }""", "precision.value [g/L]")]
    [InlineData("""{ "samples": { "K7": "C" } }""", "samples.K7")]
    public void What_cannot_be_used_is_named(string text, string column)
    {
        Read(text);
        Assert.Equal(column, Assert.Single(faults).Column);
    }
}
