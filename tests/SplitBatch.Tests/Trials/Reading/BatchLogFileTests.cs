using SplitBatch.BrewDay;
using SplitBatch.Trials.Files;
using UnitsNet;

namespace SplitBatch.Trials.Reading;

public sealed class BatchLogFileTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    private BatchLog ReadBack(FaultList faults) =>
        BatchLogFile.Read(CsvTable.Read("batch-log.csv", new StringReader(folder.Read("batch-log.csv")), faults));

    [Fact]
    public void Entries_of_every_sort_read_back_the_same()
    {
        BatchEntry[] entries =
        [
            BatchEntry.Measured("1", Side.A, "original gravity", 1.052, "SG", 0.001) with { When = new(2026, 3, 14), Who = "brewer" },
            BatchEntry.Measured("2", Side.B, "pitching temperature", Temperature.FromDegreesFahrenheit(68)),
            BatchEntry.Noted("3", null, "yeast lot", "Y, \"second\" pitch") with { Note = "from the cold store" },
            BatchEntry.Measured("4", Side.A, "original gravity", 1.053, "SG", 0.001) with { Supersedes = "1", Reason = "read again" },
        ];
        var log = new BatchLogFile(folder.Path);
        foreach (var entry in entries) Assert.True(log.Append(entry).WasNew);
        foreach (var entry in entries) Assert.False(log.Append(entry).WasNew);
        var faults = new FaultList();
        var read = ReadBack(faults);
        Assert.Empty(faults);
        Assert.Equal(entries.Select(entry => (entry.ToString(), entry.When, entry.Note, entry.Reason)),
            read.History.Rows.Select(entry => (entry.ToString(), entry.When, entry.Note, entry.Reason)));
        Assert.Equal(3, read.Entries.Count);
    }

    [Fact]
    public void A_file_without_a_method_column_takes_entries_without_a_method_only()
    {
        folder.Write("batch-log.csv", "# by hand\nid,when,who,beer,quantity,value,unit,uncertainty,supersedes,reason,note\n"
            + "1,2026-03-14,brewer,A,pH,4.42,pH,0.05,,,\n");
        var log = new BatchLogFile(folder.Path);
        log.Append(BatchEntry.Measured("2", Side.B, "pH", 4.4, "pH", 0.05));
        var error = Assert.Throws<LogException>(
            () => log.Append(BatchEntry.Measured("3", Side.B, "pH", 4.4, "pH") with { Method = "meter" }));
        Assert.Contains("Add a column headed method", error.Message, StringComparison.Ordinal);
        var faults = new FaultList();
        Assert.Equal(2, ReadBack(faults).Entries.Count);
        Assert.Empty(faults);
    }

    [Theory]
    [InlineData("1,,,C,pH,4.4,pH,,,,", "beer")]
    [InlineData("1,,,A,original gravity,1052,SG,,,,", "value")]
    [InlineData("1,,,A,original gravity,1.052,,,,,", "value")]
    [InlineData("1,,,A,pH,\"4,4\",pH,,,,", "value")]
    [InlineData("1,14.03.2026,,A,pH,4.4,pH,,,,", "when")]
    [InlineData("1,,,A,pH,4.4,pH,-1,,,", "uncertainty")]
    [InlineData("1,,,A,pH,4.4,pH,,7,gone,", "supersedes")]
    public void A_row_that_cannot_be_used_is_named(string row, string column)
    {
        folder.Write("batch-log.csv", $"id,when,who,beer,quantity,value,unit,uncertainty,supersedes,reason,note\n{row}\n");
        var faults = new FaultList();
        ReadBack(faults);
        var fault = Assert.Single(faults);
        Assert.Equal(("batch-log.csv", 2, column), (fault.File, fault.Row, fault.Column));
    }
}
