using System.Text;
using SplitBatch.Trials.Files;
using SplitBatch.Trials.Reading;

namespace SplitBatch.Trials;

/// <summary>
/// A trial folder as other systems leave it: their line ends, their spelling of names, their separators in paths, their code pages.
/// Windows and macOS take "Hops.csv" and "hops.csv" for one file, and Windows writes paths with a backslash.
/// </summary>
public sealed class OtherSystemsTests : IDisposable
{
    private readonly DirectoryInfo _root = Directory.CreateTempSubdirectory("systems-");

    private string Folder => Path.Combine(_root.FullName, "mine");

    public void Dispose() => _root.Delete(recursive: true);

    [Fact]
    public void Windows_line_ends_and_byte_order_marks_change_nothing_that_is_said()
    {
        Copy(name => name, text => "\uFEFF" + text.ReplaceLineEndings("\r\n"));
        Assert.Equal(Said(Examples.Folder("amber-cone-or-pellet")), Said(Folder));
    }

    [Fact]
    public void Old_Macintosh_line_ends_are_read_too()
    {
        Copy(name => name, text => text.ReplaceLineEndings("\r"));
        Assert.Equal(Said(Examples.Folder("amber-cone-or-pellet")), Said(Folder));
    }

    [Fact]
    public void Names_in_other_letters_mean_the_same_files()
    {
        Copy(name => char.ToUpperInvariant(name[0]) + name[1..].Replace(".csv", ".CSV", StringComparison.Ordinal), text => text);
        Assert.Equal(Said(Examples.Folder("amber-cone-or-pellet")), Said(Folder));
        Assert.DoesNotContain(Trial.Check(Folder),
            fault => fault.Problem.Contains("No file of this name is read", StringComparison.Ordinal));
    }

    [Fact]
    public void A_log_is_added_to_as_it_is_spelt()
    {
        Copy(name => name, text => text);
        File.WriteAllText(Path.Combine(Folder, "Lab-Returns.csv"), string.Join(',', LogFormat.LabReturns.Columns) + "\n");
        new LabReturnLog(Folder).Append(new Lab.LabResult("R1", "K7", Lab.Analyte.Bitterness, 25));
        Assert.Equal(2, File.ReadAllLines(Path.Combine(Folder, "Lab-Returns.csv")).Length);
        Assert.Single(Directory.GetFiles(Folder, "*", SearchOption.TopDirectoryOnly),
            file => Path.GetFileName(file).Equals("lab-returns.csv", StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public void Of_two_files_that_differ_in_letters_alone_the_exact_one_is_read_and_the_other_is_named()
    {
        Copy(name => name, text => text);
        File.WriteAllText(Path.Combine(Folder, "Hops.csv"), "lot\nnobody's\n");
        if (new DirectoryInfo(Folder).GetFiles("*ops.csv").Length == 1) return; // A disk that holds only one of them.
        Assert.Equal(Said(Examples.Folder("amber-cone-or-pellet")), Said(Folder));
        Assert.Contains(Trial.Check(Folder), fault => fault.File == "Hops.csv" && fault.Severity == Severity.Warning);
    }

    [Fact]
    public void A_path_in_trial_json_may_be_written_with_a_backslash()
    {
        Copy(name => name, text => text.Replace("incoming/lab-return.csv", "incoming\\\\lab-return.csv", StringComparison.Ordinal));
        Assert.Contains("incoming\\\\lab-return.csv", File.ReadAllText(Path.Combine(Folder, "trial.json")), StringComparison.Ordinal);
        Assert.NotEmpty(Trial.WorkOn(Folder).ImportReturns().Lab.Results);
    }

    [Theory]
    [InlineData(1252)]
    [InlineData(850)]
    [InlineData(10000)]
    public void A_file_in_an_old_code_page_is_refused_with_its_name_and_what_to_do(int codePage)
    {
        Encoding.RegisterProvider(CodePagesEncodingProvider.Instance);
        Copy(name => name, text => text);
        var file = Path.Combine(Folder, "hops.csv");
        File.WriteAllText(file, File.ReadAllText(file).Replace("lot", "löt", StringComparison.Ordinal), Encoding.GetEncoding(codePage));
        var fault = Assert.Single(Trial.Check(Folder), fault => fault.File == "hops.csv" && fault.Severity == Severity.Error);
        Assert.Contains("not UTF-8", fault.Problem, StringComparison.Ordinal);
        Assert.Contains("CSV UTF-8", fault.Accepted, StringComparison.Ordinal);
    }

    private static string Said(string folder)
    {
        var trial = Trial.Open(folder);
        return string.Join('\n', trial.Verdict().Claims.Select(claim => claim.Sentence).Append(trial.Question)
            .Append(trial.Note("introduction") ?? ""));
    }

    private void Copy(Func<string, string> named, Func<string, string> spelt)
    {
        var from = Examples.Folder("amber-cone-or-pellet");
        foreach (var file in Directory.EnumerateFiles(from, "*", SearchOption.AllDirectories))
        {
            var parts = Path.GetRelativePath(from, file).Split(Path.DirectorySeparatorChar);
            if (parts[0] is "work" or "practice") continue;
            var to = Path.Combine([Folder, .. parts.Select(named)]);
            Directory.CreateDirectory(Path.GetDirectoryName(to)!);
            File.WriteAllText(to, spelt(File.ReadAllText(file)));
        }
    }
}
