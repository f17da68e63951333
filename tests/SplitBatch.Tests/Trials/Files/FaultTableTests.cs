using System.Globalization;
using System.Text;

namespace SplitBatch.Trials.Files;

/// <summary>
/// Every call on the file system fails once, in each way in which it can, for every kind of file; a killed program leaves each
/// number of bytes. The table of what was found is <c>tests/reports/appender.md</c>, which
/// <c>SPLITBATCH_ACCEPT=1 dotnet test tests/SplitBatch.Tests --filter FaultTable</c> writes.
/// </summary>
public sealed class FaultTableTests : IDisposable
{
    private readonly TemporaryFolder root = new();
    private readonly TrialFolder trial;
    private readonly IReadOnlyList<string> files;

    public FaultTableTests()
    {
        trial = new TrialFolder(Examples.Folder("amber-cone-or-pellet")).CopyTo(root.PathOf("amber"));
        files = Names();
    }

    [Fact]
    public void A_write_that_fails_at_any_call_leaves_the_file_as_it_was_or_whole()
    {
        var table = new StringBuilder();
        foreach (var file in WrittenFile.All(trial)) table.Append(Row(file)).Append('\n');
        var report = Path.Combine(Path.GetDirectoryName(Examples.Folder("."))!, "..", "tests", "reports", "appender.md");
        var text = Head + table;
        if (Environment.GetEnvironmentVariable("SPLITBATCH_ACCEPT") == "1") File.WriteAllText(report, text);
        Assert.Equal(File.ReadAllText(report), text);
    }

    public void Dispose()
    {
        Disk.Here = new Disk();
        root.Dispose();
    }

    private const string Head = """
        # Writing people's data

        Made by `SPLITBATCH_ACCEPT=1 dotnet test tests/SplitBatch.Tests --filter FaultTable`, in the example trial of the amber ale.

        Each call on the file system that a write makes is failed once in each of four ways: the disk is full (half of the bytes are
        there), the account may not, the disk is gone (every later call fails too), the program is killed (nothing is tidied up; a
        write is killed after each number of bytes, a long one after every so many). After each fault the test asks that the file
        holds what it held before, or that with all of the new rows; that remains of a row stand behind a mark by which they are
        left out and named; that no other file is left that anybody sees; that the trial opens (of a write, after the first, the
        middle and the last bytes); and that a second try gives the very bytes of a write without a fault. A row of a ballot, rating
        or comment that is whole is not tried again.

        | file | calls | faults | as before | whole | remains named | trial opened | second try the same |
        | --- | --- | ---: | ---: | ---: | ---: | ---: | ---: |

        """;

    private string Row(WrittenFile file)
    {
        Reset(file);
        var counting = new FaultyDisk();
        Under(counting, () => file.Write(trial));
        var after = Bytes(file)!;
        int faults = 0, before = 0, whole = 0, named = 0, opened = 0, again = 0;
        for (var call = 0; call < counting.Calls.Count; call++)
        {
            var length = counting.Calls[call].Length;
            foreach (var (failure, cut) in FailuresOf(length))
            {
                var when = $"{file.What}: {failure} at call {call}, {counting.Calls[call].Name}, {cut} of {length} bytes";
                Reset(file);
                var error = Under(new FaultyDisk(call, failure, cut), () => file.Write(trial));
                Assert.True(error is not null, when);
                faults++;
                var found = Found(file, after, failure, error, when);
                if (found == State.Before) before++;
                else if (found == State.Whole) whole++;
                else named++;
                Assert.True(Names().Except(files).All(name => name == file.File || name == file.File + ".torn"), when);
                if (failure != Failure.Killed || cut == 0 || cut == length / 2 || cut >= length - 1)
                {
                    Assert.DoesNotContain(Trial.Check(trial.Path), fault => fault.Severity == Severity.Error);
                    opened++;
                }

                if (found == State.Whole && !file.HasIds) continue; // It is there: nobody tries again.
                file.Write(trial);
                Assert.True(after.AsSpan().SequenceEqual(Bytes(file)), when);
                Assert.True(Directory.GetFiles(trial.Path, ".*").Length == 0, when);
                again++;
            }
        }

        var calls = string.Join(", ", counting.Calls.Select(call => call.Name));
        return string.Create(CultureInfo.InvariantCulture,
            $"| {file.What} | {calls} | {faults} | {before} | {whole} | {named} | {opened} of {opened} | {again} of {again} |");
    }

    private enum State
    {
        Before,
        Whole,
        Named,
    }

    private static IEnumerable<(Failure Failure, int Cut)> FailuresOf(int length) =>
    [
        (Failure.Full, length / 2), (Failure.Refused, 0), (Failure.Gone, length / 2),
        .. Enumerable.Range(0, length + 1).Where(cut => cut % Step(length) == 0 || cut >= length - 1).Select(cut => (Failure.Killed, cut)),
    ];

    private static int Step(int length) => 1 + length / 400;

    private State Found(WrittenFile file, byte[] after, Failure failure, Exception error, string when)
    {
        var now = Bytes(file);
        if (now is not null && now.AsSpan().SequenceEqual(after))
        {
            Assert.True(failure == Failure.Killed || error.Message.Contains("may hold it or not", StringComparison.Ordinal), when);
            return State.Whole;
        }

        if (failure == Failure.Killed) Assert.IsType<KilledException>(error);
        else if (error is LogException && failure != Failure.Gone)
            Assert.EndsWith("Nothing was logged.", error.Message, StringComparison.Ordinal);
        if (now is null || file.Before is null)
        {
            Assert.True(now is null && file.Before is null, when);
            return State.Before;
        }

        var kept = Appender.Whole(now, out var remains);
        var held = Appender.Whole(file.Before, out _);
        var isAsBefore = kept.AsSpan().SequenceEqual(held)
            || (failure is Failure.Killed or Failure.Gone
                && kept.AsSpan().SequenceEqual([.. held, .. "\r\n"u8[..(kept.Length - held.Length)]]));
        Assert.True(isAsBefore, $"{when}: {Encoding.UTF8.GetString(now)}");
        if (remains is null) return State.Before;
        var faults = new FaultList();
        trial.ReadText(file.File, faults);
        Assert.Contains(faults,
            fault => fault.Problem.StartsWith("The last row was cut short", StringComparison.Ordinal) && fault.Value == remains.TrimEnd());
        return State.Named;
    }

    private void Reset(WrittenFile file)
    {
        foreach (var name in Names().Except(files)) File.Delete(trial.PathOf(name));
        foreach (var draft in Directory.GetFiles(trial.Path, ".*")) File.Delete(draft);
        if (file.Before is null) File.Delete(trial.PathOf(file.File));
        else File.WriteAllBytes(trial.PathOf(file.File), file.Before);
    }

    private byte[]? Bytes(WrittenFile file) => trial.Holds(file.File) ? File.ReadAllBytes(trial.PathOf(file.File)) : null;

    private List<string> Names() => [.. trial.Names("*").Where(name => name[0] != '.')];

    private static Exception? Under(Disk disk, Action write)
    {
        Disk.Here = disk;
        try
        {
            return Record.Exception(write);
        }
        finally
        {
            Disk.Here = new Disk();
        }
    }
}
