using System.Text;
using System.Text.RegularExpressions;
using SplitBatch.Trials.Files;
using SplitBatch.Trials.Reading;

namespace SplitBatch.Trials;

/// <summary>
/// A slip for every message of a check that is not asserted elsewhere: one change to a trial that has no fault, and what is then said of
/// it. The last test looks through the source for messages that no test asserts.
/// </summary>
public sealed partial class EveryMessageTests : IDisposable
{
    private readonly DirectoryInfo root = Directory.CreateTempSubdirectory("trial-");
    private readonly string folder;

    public EveryMessageTests() =>
        folder = new TrialFolder(Examples.Folder("stout-early-or-late")).CopyTo(Path.Combine(root.FullName, "stout")).Path;

    public void Dispose() => root.Delete(recursive: true);

    [Theory]
    [InlineData("trial.json", "\"title\": \"Stout: bittered early or late?\"", "\"title\": 5",
        "title = \"5\": The value is not text. Accepted: text in quotation marks.")]
    [InlineData("trial.json", "\"held equal\": [", "\"held equal\": 5, \"held equals\": [",
        "held equal = \"5\": The value is not a list of texts. Accepted: [\"one\", \"two\"].")]
    [InlineData("trial.json", "\"why\":", "\"whi\":", "whi: The name is not known here, so its value would be passed over.")]
    [InlineData("trial.json", "\"invented\": true", "\"invented\": \"yes\"",
        "invented = \"yes\": The value is neither true nor false. Accepted: true or false, without quotation marks.")]
    [InlineData("trial.json", "\"tasters\": 36", "\"tasters\": 36.5", "panels[0].tasters = \"36.5\": The value is not a whole number.")]
    [InlineData("trial.json", "\"tasters\": 36", "\"tasters\": 36, \"margin as d-prime\": 1.2",
        "panels[0].margin as d-prime = \"1.2\": The margin is declared twice, as a share and as a d-prime. Accepted: one of them.")]
    [InlineData("trial.json", "\"boil [min]\": 60", "\"boil [min]\": \"an hour\"",
        "kettle.boil [min] = \"an hour\": The value is not a number.")]
    [InlineData("trial.json", "\"declared\": \"2026-02-02\"", "\"declared\": \"2 Feb 2026\"",
        "panels[0].declared = \"2 Feb 2026\": The date cannot be read. Accepted: year-month-day, as \"2026-03-14\".")]
    [InlineData("trial.json", "\"beers\": {", "\"beers\": 5, \"beer\": {",
        "beers = \"5\": The value is not an object. Accepted: { ... }.")]
    [InlineData("trial.json", "\"panels\": [", "\"panels\": 5, \"panel\": [",
        "panels = \"5\": The value is not a list of objects. Accepted: [ { ... }, { ... } ].")]
    [InlineData("trial.json", "\"panels\": [",
        "\"panels\": [ { \"name\": \"main\", \"protocol\": \"triangle\", \"tasters\": 24, \"alpha\": 0.05, \"power\": 0.8, \"margin\": "
            + "0.3, \"beta\": 0.05, \"seed\": 1 },", "Two panels have this name. Accepted: each panel once.")]
    [InlineData("trial.json", "\"analyte\": \"bitterness\"", "\"analyte\": \"biterness\"",
        "The analyte is not known. Accepted: bitterness,")]
    [InlineData("charges.csv", "amount [oz]", "amount",
        "amount = \"1.35\": The header names no unit. Accepted: a header such as amount [unit], with one of")]
    [InlineData("charges.csv", "A,bittering pellets,1.35", "A,bittering pellets,1,30",
        "The row has 6 values under 5 headers. Accepted: one value under each header. Put values that hold a comma in quotation marks, or "
            + "separate the values with semicolons.")]
    [InlineData("charges.csv", "A,bittering pellets,1.35", "A,bittering \"pellets\",1.35",
        "A quotation mark stands where none can be read. Accepted: quotation marks around the whole value, doubled inside it.")]
    [InlineData("charges.csv", "A,bittering pellets,1.35", "A,bittering pellets,\"1,300.5\"",
        "amount [oz] = \"1,300.5\": Thousands separators are not accepted, because they can be mistaken for decimals.")]
    [InlineData("charges.csv", "A,bittering pellets,1.35", "A,bittering pellets,\"1,30\"",
        "amount [oz] = \"1,30\": This file writes decimals with a point, so \"1,30\" could be read in two ways; write 1.30, or without a "
            + "separator if thousands are meant.")]
    [InlineData("charges.csv", "beer,lot,", "beer,lot,lot,", "Two columns are headed \"lot\". Accepted: each header once.")]
    [InlineData("lab-returns.csv", "bitterness,1,35.2", "bitterness,1.5,35.2", "replicate = \"1.5\": The value is not a whole number.")]
    [InlineData("lab-returns.csv", "N1,,bitterness,1,35.2,BU,", "N1,,gloss,1,35.2,,",
        "The analyte is not one of the known ones, and the row names no unit. Accepted: bitterness,")]
    [InlineData("lab-returns.csv", "N2,,bitterness,1", "bottle 77,,bitterness,1", "Add it in trial.json under \"lab\", \"samples\".")]
    [InlineData("ballots-main.csv", "2026-02-21 19:01", "yesterday",
        "when = \"yesterday\": The time cannot be read without guessing; the ballot is kept without it.")]
    [InlineData("ballots-main.csv", "2026-02-21 19:01,guess,,", "2026-02-21 19:01,guess,perhaps,",
        "knew variable = \"perhaps\": The answer is neither yes nor no, so it is taken as yes, which is the careful reading. Accepted: "
            + "yes, no or blank.")]
    [InlineData("serving-main.csv", "S1,T01,1,1,1,804", "S1,T02,1,1,1,804",
        "Set 1 is split between tasters, sessions, servers or replicates. Accepted: one taster, session, server and replicate for "
            + "each set.")]
    [InlineData("serving-main.csv", "S1,T01,1,1,1,804,B", "S1,T01,1,1,1,111,B", "code = \"111\": The code may hint:")]
    public void A_slip_in_a_file_is_named_with_its_place(string file, string old, string with, string message)
    {
        var path = Path.Combine(folder, file);
        var text = File.ReadAllText(path);
        Assert.Contains(old, text, StringComparison.Ordinal);
        var at = text.IndexOf(old, StringComparison.Ordinal);
        File.WriteAllText(path, string.Concat(text.AsSpan(0, at), with, text.AsSpan(at + old.Length)));
        Says(file, message);
    }

    [Theory]
    [InlineData("trial.json", "[]", "The file holds no JSON object. Accepted: text that starts with { and ends with }.")]
    [InlineData("trial.json", "{ \"title\": \"x\", }}", "This cannot be read as JSON near here:")]
    [InlineData("charges.csv", "beer,lot\0",
        "The file holds NUL characters, so it is not plain text. Accepted: a CSV file saved as UTF-8.")]
    [InlineData("serving-main.csv", "panel,protocol,session,server,taster,replicate,set,position,code,beer\n",
        "The key is empty. Accepted: one row for each cup.")]
    [InlineData("lab-returns.csv", "id,sample,analyte,value,unit,supersedes,reason\n1,N1,bitterness,35.2,BU,,\n2,N2,bitt",
        "The last row was cut short while it was written, and was never acknowledged; it is left out. Log it again if it was not; the "
            + "next row logged moves the remains out of the way.")]
    [InlineData("ballots-main.csv", "panel,taster,answer\nmain,T01,804\nother,T02,293\n",
        "Ballots of more than one panel stand in one file: main 1, other 1. Only those of the panel that is scored are counted; the "
            + "others are kept. Accepted: one panel in each file.")]
    [InlineData("lab-returns.csv", "id,sample,analyte,value,unit,absorbance,supersedes,reason\n1,N1,bitterness,35.2,BU,0.5,,\n",
        "value = \"35.2\": The row has a value and an absorbance, from which another value could follow. Accepted: one of the two: leave "
            + "the value blank, and it is worked out from the absorbance.")]
    [InlineData("lab-returns.csv", "id,sample,analyte,value,unit,absorbance,supersedes,reason\n1,N1,pH,,,0.5,,\n",
        "analyte = \"pH\": An absorbance at 275 nm gives bitterness and nothing else. Accepted: bitterness.")]
    [InlineData("ballots-main.csv.torn", "T01,80\n",
        "Rows that were cut short while they were written are kept here; they were never acknowledged. Accepted: no such file, once its "
            + "rows are known to stand in the other. Look whether each was entered again in ballots-main.csv, then delete this file.")]
    [InlineData("ballots-of-mine.csv", "taster,answer\n", "No file of this name is read. Accepted: ")]
    [InlineData("return of the lab.csv", "sample,value\n", "Files as they arrived from elsewhere go into the folder incoming.")]
    public void A_file_that_is_another_thing_is_named(string file, string text, string message)
    {
        File.WriteAllText(Path.Combine(folder, file), text);
        Says(file, message);
    }

    [Fact]
    public void One_code_twice_for_one_taster()
    {
        var path = Path.Combine(folder, "serving-main.csv");
        var lines = File.ReadAllLines(path).ToList();
        var first = lines.FindIndex(line => line.Contains(",T01,1,1,1,", StringComparison.Ordinal));
        lines.AddRange(lines.Skip(first).Take(3)
            .Select(line => line.Replace(",T01,1,1,", ",T01,2,900,", StringComparison.Ordinal)).ToList());
        File.WriteAllLines(path, lines);
        Says("serving-main.csv", "T01 gets the code 804 in more than one set of session 1. Accepted: each code once in a sitting.");
    }

    [Fact]
    public void A_file_that_is_not_UTF_8()
    {
        File.WriteAllBytes(Path.Combine(folder, "hops.csv"), Encoding.Latin1.GetBytes("lot,form,alpha [%],storage [°C]\nx,pellets,9,4\n"));
        Says("hops.csv", "The file is not UTF-8 text, so letters such as ° and ü would be lost. Accepted: a file saved as \"CSV UTF-8\" "
            + "(or plain text in UTF-8).");
    }

    [Fact]
    public void A_file_that_is_far_too_large()
    {
        using (var file = File.Create(Path.Combine(folder, "hops.csv"))) file.SetLength(TrialFolder.LargestFile + 1);
        Says("hops.csv", "bytes, too many for a trial. Accepted: at most 20,000,000 bytes.");
        Assert.Contains("The file has 20,000,001 bytes, too many for a trial.", string.Join('\n', Trial.Check(folder)),
            StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_leads_out_of_the_folder_and_one_that_another_program_holds()
    {
        var outside = Path.Combine(root.FullName, "outside.csv");
        File.WriteAllText(outside, "lot,form,alpha [%]\n");
        File.Delete(Path.Combine(folder, "hops.csv"));
        File.CreateSymbolicLink(Path.Combine(folder, "hops.csv"), outside);
        Says("hops.csv", "The file is a link that leads out of the trial folder. Accepted: a file of its own.");

        using var held = new FileStream(Path.Combine(folder, "charges.csv"), FileMode.Open, FileAccess.ReadWrite, FileShare.None);
        Says("charges.csv", "The file cannot be opened. Accepted: a file that this account may read, and that no other program holds.");
    }

    [Theory]
    [InlineData("27.3", "27,3", "Decimals are written in two ways: ", "one way throughout the file")]
    [InlineData("27.3", "many", "\"many\" is not a number.",
        "If the file writes decimals otherwise, say so as \"decimals\" under lab.imports in trial.json.")]
    [InlineData("S1,bitterness,1", "S1,gloss,1", "The analyte gloss is not known.",
        "Say what the laboratory's word means under \"words\" in trial.json.")]
    [InlineData("S1,bitterness,1", "S1,bitterness,first", "The value is not a whole number of 1 or more.", "1, 2, 3 ...")]
    public void A_slip_in_a_file_of_the_lab_is_named_when_it_is_logged(string old, string with, string message, string help)
    {
        var amber = new TrialFolder(Examples.Folder("amber-cone-or-pellet")).CopyTo(Path.Combine(root.FullName, "amber"));
        var path = amber.PathOf("incoming/lab-return.csv");
        File.WriteAllText(path, File.ReadAllText(path)
            .Replace(old, with.Contains(',', StringComparison.Ordinal) && !with.StartsWith('S') ? $"\"{with}\"" : with,
                StringComparison.Ordinal));
        var said = Assert.Throws<TrialFolderException>(() => Trial.Open(amber.Path).ImportReturns()).Message;
        Assert.Contains(message, said, StringComparison.Ordinal);
        Assert.Contains(help, said, StringComparison.Ordinal);
    }

    [Fact]
    public void A_column_of_the_lab_that_the_log_does_not_have()
    {
        var amber = new TrialFolder(Examples.Folder("amber-cone-or-pellet")).CopyTo(Path.Combine(root.FullName, "amber"));
        var path = amber.PathOf("trial.json");
        File.WriteAllText(path, File.ReadAllText(path)
            .Replace("\"sample\": \"bottle\"", "\"sampel\": \"bottle\"", StringComparison.Ordinal));
        Assert.Contains(Trial.Check(amber.Path),
            fault => fault.ToString().Contains("columns.sampel: The log has no such column. Accepted: report, received, sample,",
                StringComparison.Ordinal));
    }

    [Fact]
    public void What_is_not_written_over_is_said_to_be_left_alone()
    {
        File.WriteAllText(Path.Combine(folder, "ballots-main.csv"), "taster,answer\n");
        var place = new TrialFolder(folder);
        Assert.Contains("The file has no column for this value.",
            Assert.Throws<Files.LogException>(
                () => BallotFile.Append(place, "main", new Panel.Ballots.Ballot("T01", "804") { Comment = "dry" })).Message,
                StringComparison.Ordinal);
        var read = new Lab.AbsorbanceReading(0.25, path: UnitsNet.Length.FromMillimeters(5));
        Assert.Contains("The log keeps absorbances of a 10 mm cell, and this one was read in 5 mm; log the absorbance for 10 mm, 0.5. "
            + "Nothing was logged.", Assert.Throws<Files.LogException>(() => Trial.Open(folder).LogAbsorbance("own", "N1", read)).Message,
            StringComparison.Ordinal);
        Directory.CreateDirectory(Path.Combine(root.FullName, "full"));
        File.WriteAllText(Path.Combine(root.FullName, "full", "mine.txt"), "mine");
        Assert.Contains("\" holds files and is not a working copy, so it is left alone; name another.",
            Assert.Throws<IOException>(() => place.CopyTo(Path.Combine(root.FullName, "full"))).Message, StringComparison.Ordinal);
        Assert.False(NumberText.TryRead(" ", DecimalMark.Point, out _, out var problem));
        Assert.Equal("A number is missing.", problem);
    }

    /// <summary>Files whose sentences are those of a write, or of a result, and no fault of a folder.</summary>
    private static readonly string[] Elsewhere =
        ["AppendLog", "LogSheet", "LogReceipt", "Turn", "Appender", "CsvText", "LogRow", "TrialFolderException", "RatingFile",
            "PanelRecord", "BallotImport"];

    [Fact]
    public void Every_message_of_a_check_is_asserted_by_some_test()
    {
        var repository = new DirectoryInfo(Examples.Folder("stout-early-or-late")).Parent!.Parent!.FullName;
        var tests =
            Joined(string.Concat(Directory.EnumerateFiles(Path.Combine(repository, "tests"), "*.cs", SearchOption.AllDirectories)
                .Where(IsWritten).Select(File.ReadAllText)));
        string[] sources =
        [
            .. new[] { "Checks", "Files", "Reading" }
                .SelectMany(room => Directory.EnumerateFiles(Path.Combine(repository, "src", "SplitBatch", "Trials", room), "*.cs"))
                .Where(file => !Elsewhere.Contains(Path.GetFileNameWithoutExtension(file))),
            Path.Combine(repository, "src", "SplitBatch", "Panel", "Serving", "ServingKey.cs"),
        ];
        var messages =
            sources.SelectMany(file => Text().Matches(Joined(Code(file))),
                (file, text) => (File: Path.GetFileName(file), Text: text.Groups[1].Value))
                .Where(message => Sentence().IsMatch(message.Text))
                .Select(message => (message.File,
                    Fixed: Hole().Split(message.Text).Select(part => part.Trim()).MaxBy(part => part.Length)!))
                .Where(message => message.Fixed.Length >= 12)
                .Distinct()
                .ToList();
        Assert.True(messages.Count > 60, $"Only {messages.Count} messages were found.");
        var unasserted = string.Join("\n",
            messages.Where(message => !tests.Contains(message.Fixed, StringComparison.Ordinal))
                .Select(message => $"{message.File}: {message.Fixed}"));
        Assert.True(unasserted.Length == 0, unasserted);
    }

    private void Says(string file, string message)
    {
        var found = Trial.Check(folder);
        Assert.True(found.Any(fault => fault.File == file && fault.ToString().Contains(message, StringComparison.Ordinal)),
            string.Join('\n', found));
    }

    private static bool IsWritten(string path) =>
        !path.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal);

    /// <summary>A file's lines that are no comments.</summary>
    private static string Code(string file) =>
        string.Join('\n', File.ReadLines(file).Where(line => !line.TrimStart().StartsWith("//", StringComparison.Ordinal)));

    /// <summary>Text put together with + over several lines, as one.</summary>
    private static string Joined(string text) => Seam().Replace(text, "");

    [GeneratedRegex("""(?<!\\)"\)?\s*\n\s*\+ (?:(?:FormattableString\.)?Invariant\()?\$?"(?!")""")]
    private static partial Regex Seam();

    [GeneratedRegex("""\$?"((?:\\.|[^"\\])*)"(?!")""")]
    private static partial Regex Text();

    [GeneratedRegex(@"^[A-Z{].* .*[.:}]$")]
    private static partial Regex Sentence();

    [GeneratedRegex(@"\{[^{}]*\}")]
    private static partial Regex Hole();
}
