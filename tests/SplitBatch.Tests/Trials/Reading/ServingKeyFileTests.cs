using SplitBatch.Panel.Protocols;
using SplitBatch.Panel.Serving;
using SplitBatch.Trials.Files;

namespace SplitBatch.Trials.Reading;

public class ServingKeyFileTests
{
    public static TheoryData<string> Protocols => [.. Protocol.All.Select(protocol => protocol.Name)];

    [Theory]
    [MemberData(nameof(Protocols))]
    public void A_key_survives_its_file(string name)
    {
        var options = new ServingOptions { Tasters = ["Fern, the tall", "Moss \"M\"", "Reed", "#4"], Replicates = 2, Panel = "cellar" };
        var plan = ServingPlan.Balanced(Protocol.Parse(name), 4, seed: 12, options);
        FaultList faults = [];
        var back = ServingKeyFile.Read(
            CsvTable.Read("serving-cellar.csv", new StringReader(ServingKeyFile.Write(plan)), faults), seed: 12);
        Assert.Empty(faults);
        Assert.Equal(plan.Key, back!.Key);
    }

    [Fact]
    public void A_fault_of_the_key_names_its_row()
    {
        var plan = ServingPlan.Balanced(Protocol.Triangle, 6, seed: 12);
        string code = plan.Sets[1].Cups[2].Code;
        string text = ServingKeyFile.Write(plan).Replace($",3,{code},", ",3,111,", StringComparison.Ordinal);
        FaultList faults = [];
        Assert.NotNull(ServingKeyFile.Read(CsvTable.Read("serving-main.csv", new StringReader(text), faults)));
        var fault = Assert.Single(faults);
        Assert.Equal((8, "code", "111", Severity.Warning), (fault.Row, fault.Column, fault.Value, fault.Severity));
        FaultList more = [];
        Assert.Null(
            ServingKeyFile.Read(
                CsvTable.Read("serving-main.csv", new StringReader(text.Replace(",1,1,", ",1,x,", StringComparison.Ordinal)), more)));
        Assert.Contains("serving-main.csv, row 3, set = \"x\"", more[0].ToString(), StringComparison.Ordinal);
    }
}
