using SplitBatch.BrewDay;
using SplitBatch.Lab;
using SplitBatch.Trials.Files;

namespace SplitBatch.Trials.Reading;

public sealed class LabReturnLogTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    private static LabResult Result(string id, double value = 25.1) =>
        new(id, "K7", Analyte.Bitterness, value) { Received = new(2026, 4, 2), Method = "EBC 9.8" };

    private IReadOnlyList<LabResult> ReadBack(FaultList faults) =>
        LabReturnLog.Read(CsvTable.Read("lab-returns.csv", new StringReader(folder.Read("lab-returns.csv")), faults));

    [Fact]
    public void Several_results_are_logged_as_one_by_one()
    {
        using var one = new TemporaryFolder();
        using var many = new TemporaryFolder();
        LabResult[] results = [Result("R1"), Result("R2", 21.5) with { Supersedes = "R1", Reason = "typing error" }, Result("R1"),
            Result("R3", 24)];
        foreach (var result in results) new LabReturnLog(one.Path).Append(result);
        var log = new LabReturnLog(many.Path);
        Assert.Equal([true, true, false, true], log.Append(results).Select(receipt => receipt.WasNew));
        Assert.Equal(one.Read("lab-returns.csv"), many.Read("lab-returns.csv"));
        Assert.All(log.Append(results), receipt => Assert.False(receipt.WasNew));
        Assert.Throws<LogException>(() => log.Append([Result("R4", 25), Result("R3", 26), Result("R5", 27)]));
        Assert.Equal(["R1", "R2", "R3"], log.Log.Read().Select(row => row.Id));
    }

    [Fact]
    public void Work_on_a_lab_s_file_grows_with_its_rows_and_not_with_their_square()
    {
        long Allocated(int rows)
        {
            using var folder = new TemporaryFolder();
            var results = Enumerable.Range(1, rows).Select(i => Result($"R{i}")).ToList();
            var before = GC.GetAllocatedBytesForCurrentThread();
            new LabReturnLog(folder.Path).Append(results);
            return GC.GetAllocatedBytesForCurrentThread() - before;
        }

        Allocated(50);
        // Twice the bytes for twice the rows; four times if each row read the file again.
        Assert.InRange((double)Allocated(800) / Allocated(400), 1.5, 2.3);
    }

    [Fact]
    public void A_logged_result_reads_back_the_same()
    {
        Assert.Equal("Logged R1 in lab-returns.csv.", new LabReturnLog(folder.Path).Append(Result("R1")).ToString());
        var faults = new FaultList();
        Assert.Equal(Result("R1"), Assert.Single(ReadBack(faults)));
        Assert.Empty(faults);
    }

    [Fact]
    public void Logging_the_same_result_twice_is_harmless()
    {
        var log = new LabReturnLog(folder.Path);
        log.Append(Result("R1"));
        var before = folder.Read("lab-returns.csv");
        Assert.False(log.Append(Result("R1")).WasNew);
        Assert.Equal(before, folder.Read("lab-returns.csv"));
    }

    [Fact]
    public void Another_result_under_a_taken_id_is_refused_and_nothing_is_written()
    {
        var log = new LabReturnLog(folder.Path);
        log.Append(Result("R1"));
        var before = folder.Read("lab-returns.csv");
        var error = Assert.Throws<LogException>(() => log.Append(Result("R1", 26)));
        Assert.Contains("supersedes it and says why", error.Message, StringComparison.Ordinal);
        Assert.Equal(before, folder.Read("lab-returns.csv"));
    }

    [Fact]
    public void A_correction_is_added_and_the_old_row_stays()
    {
        var log = new LabReturnLog(folder.Path);
        log.Append(Result("R1"));
        Assert.Throws<LogException>(() => log.Append(Result("R2", 21.5) with { Supersedes = "R1" }));
        Assert.Throws<LogException>(() => log.Append(Result("R2", 21.5) with { Supersedes = "R9", Reason = "typing error" }));
        log.Append(Result("R2", 21.5) with { Supersedes = "R1", Reason = "typing error, \"21,5\" was read as 25.1" });
        var error = Assert.Throws<LogException>(() => log.Append(Result("R3", 21.4) with { Supersedes = "R1", Reason = "again" }));
        Assert.Contains("already superseded by R2", error.Message, StringComparison.Ordinal);
        var faults = new FaultList();
        var history = new LogHistory<LabResult>(ReadBack(faults));
        Assert.Empty(faults);
        Assert.Equal(2, history.Rows.Count);
        Assert.Equal("R2", Assert.Single(history.InForce).Id);
    }

    [Fact]
    public void Rows_by_hand_are_read_with_faults_that_name_row_column_and_value()
    {
        folder.Write("lab-returns.csv",
            "id,sample,beer,analyte,replicate,value,unit,supersedes,reason\nR1,K7,C,bitterness,1,25,BU,,\nR2,K7,A,biterness,1,25,,,\n"
                + "R3,K7,A,pH,1,42,pH,,\nR4,K7,A,pH,1,4.2,pH,R9,\n");
        var faults = new FaultList();
        var read = ReadBack(faults);
        Assert.Equal(["R4"], read.Select(result => result.Id));
        Assert.Equal([(2, "beer"), (3, "analyte"), (4, "value"), (5, "reason"), (5, "supersedes")],
            faults.Select(fault => (fault.Row!.Value, fault.Column!)));
        Assert.Equal("Did you mean \"bitterness\"?", faults[1].Suggestion);
    }

    [Theory]
    [InlineData("id,received,sample,beer,analyte,replicate,value,unit,method,lab,supersedes,reason\nR0,,K7,,bitterness,1,25,BU,,,,\"\"\n"
        + "R1,2026-04-02,K", 1)]
    [InlineData("id,received,sample,beer,analyte,replicate,value,unit,method,lab,supersedes,reason\nR0,,K7,,bitterness,1,25,BU,,,,\"\"\n"
        + "R1,2026-04-02,K7,,bitterness,1,25.1,BU,EBC 9.8,,,\"", 1)]
    [InlineData("id,received,sam", 0)]
    public void A_row_cut_short_is_set_aside_before_the_next_is_written(string torn, int whole)
    {
        folder.Write("lab-returns.csv", torn);
        var receipt = new LabReturnLog(folder.Path).Append(Result("R1"));
        Assert.NotNull(receipt.SetAside);
        Assert.EndsWith(receipt.SetAside, torn, StringComparison.Ordinal);
        Assert.Equal(receipt.SetAside + "\n", folder.Read("lab-returns.csv.torn"));
        var faults = new FaultList();
        Assert.Equal(whole + 1, ReadBack(faults).Count);
        Assert.Empty(faults);
    }

    [Fact]
    public void A_spreadsheet_file_with_a_mark_a_remark_and_no_last_line_end_is_added_to_and_not_cut()
    {
        const string Saved = "\uFEFF# remark, with commas, and more, and more, and more, and more, and more, and more, and more, and "
            + "more, and more, and more\r\n"
            + "id;received;sample;analyte;value;unit;method;supersedes;reason;replicate\r\nR0;;K7;bitterness;25,5;BU;;;;1";
        folder.Write("lab-returns.csv", Saved);
        Assert.Null(new LabReturnLog(folder.Path).Append(Result("R1")).SetAside);
        Assert.StartsWith(Saved[1..], folder.Read("lab-returns.csv"), StringComparison.Ordinal);
        Assert.Equal(2, ReadBack(new FaultList()).Count);
    }

    [Fact]
    public void A_whole_last_row_without_a_line_end_is_kept()
    {
        folder.Write("lab-returns.csv",
            "id,sample,analyte,value,unit,supersedes,reason,received,method,replicate\r\nR0,K7,bitterness,25,BU,,,,,1");
        Assert.Null(new LabReturnLog(folder.Path).Append(Result("R1")).SetAside);
        Assert.Equal(2, ReadBack([]).Count);
        Assert.EndsWith("R1,K7,bitterness,25.1,BU,,,2026-04-02,EBC 9.8,1\r\n", folder.Read("lab-returns.csv"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_with_semicolons_and_decimal_commas_is_added_to_in_its_own_way()
    {
        folder.Write("lab-returns.csv",
            "\uFEFFid;received;sample;analyte;replicate;value;unit;method;supersedes;reason\r\nR0;;K7;bitterness;1;25,3;BU;;;\r\n");
        new LabReturnLog(folder.Path).Append(Result("R1"));
        var faults = new FaultList();
        Assert.Equal([25.3, 25.1], ReadBack(faults).Select(result => result.Value));
        Assert.Empty(faults);
    }
}
