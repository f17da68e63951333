using System.Globalization;
using System.IO.Compression;
using System.Text;
using SplitBatch.Trials.Files;

namespace SplitBatch.Display.WriteUp;

/// <summary>
/// The three write-ups as files: the same bytes wherever they are made, nothing of the machine in them, and nothing of a person's lost.
/// </summary>
public sealed class ThreeWriteUpsTests(ThreeWriteUps made) : IClassFixture<ThreeWriteUps>, IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("write-ups-again-");

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public void Made_again_from_another_folder_under_another_language_they_have_the_same_bytes()
    {
        var elsewhere = Path.Combine(_folder.FullName, "somewhere else", "data");
        foreach (var name in ThreeWriteUps.Names) new TrialFolder(ThreeWriteUps.Trial(name)).CopyTo(Path.Combine(elsewhere, name));
        var before = (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture);
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = CommaCulture();
            WriteUps.Make(ThreeWriteUps.Names.Select(name => Path.Combine(elsewhere, name)), Path.Combine(_folder.FullName, "again"));
        }
        finally
        {
            (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture) = before;
        }

        var files = Files(made.Output);
        Assert.True(files.Count > 100);
        Assert.Equal(files, Files(Path.Combine(_folder.FullName, "again")));
        Assert.All(files,
            file => Assert.True(File.ReadAllBytes(Path.Combine(made.Output, file)).AsSpan()
                .SequenceEqual(File.ReadAllBytes(Path.Combine(_folder.FullName, "again", file))), file));
    }

    [Fact]
    public void No_output_names_a_folder_a_user_or_a_machine()
    {
        List<string> secrets = [ThreeWriteUps.Repository(), made.Output, Path.TrimEndingDirectorySeparator(Path.GetTempPath()),
            Environment.GetFolderPath(Environment.SpecialFolder.UserProfile)];
        if (Environment.MachineName.Length > 4) secrets.Add(Environment.MachineName);
        if (Environment.UserName.Length > 4) secrets.Add(Environment.UserName);
        foreach (var file in Files(made.Output))
        {
            foreach (var text in Texts(Path.Combine(made.Output, file)))
                Assert.All(secrets, secret => Assert.False(text.Contains(secret, StringComparison.Ordinal), $"{file} names {secret}"));
        }
    }

    [Fact]
    public void Made_again_they_keep_what_a_person_wrote_and_take_away_only_what_they_made()
    {
        var (trial, output) = (Path.Combine(_folder.FullName, "mine"), Path.Combine(_folder.FullName, "out"));
        new TrialFolder(ThreeWriteUps.Trial("lager-one-rest-or-two")).CopyTo(trial);
        File.WriteAllText(Path.Combine(trial, "notes", "discussion.md"), "My own *last* word.\n");
        WriteUps.Make([trial], output);
        string At(params string[] parts) => Path.Combine([output, "mine", .. parts]);
        Assert.Contains("My own <em>last</em> word.", File.ReadAllText(At("write-up.html")), StringComparison.Ordinal);

        var figure = Directory.GetFiles(At("figures"), "figure-1-*.svg").Single();
        File.WriteAllText(At("figures", "of-my-own.svg"), "<svg/>");
        File.AppendAllText(At("write-up.md"), "Added by hand.\n");
        File.WriteAllText(Path.Combine(trial, "charges.csv"),
            File.ReadAllText(Path.Combine(trial, "charges.csv"))
                .Replace("B;noble pellets;140", "B;noble pellets;280", StringComparison.Ordinal));
        WriteUps.Make([trial], output);

        Assert.Equal("My own *last* word.\n", File.ReadAllText(Path.Combine(trial, "notes", "discussion.md")));
        Assert.EndsWith("Added by hand.\n", File.ReadAllText(At("write-up.kept-1.md")), StringComparison.Ordinal);
        Assert.True(File.Exists(At("figures", "of-my-own.svg")));
        Assert.False(File.Exists(figure), "A figure that is no longer made, and that nobody changed, is not left behind.");
        Assert.Contains("My own <em>last</em> word.", File.ReadAllText(At("write-up.html")), StringComparison.Ordinal);
    }

    [Fact]
    public void Two_folders_of_one_name_are_refused_before_anything_is_written()
    {
        var other = Path.Combine(_folder.FullName, "other", "lager-one-rest-or-two");
        new TrialFolder(ThreeWriteUps.Trial("lager-one-rest-or-two")).CopyTo(other);
        var output = Path.Combine(_folder.FullName, "out");
        var error = Assert.Throws<ArgumentException>(() => WriteUps.Make([other, ThreeWriteUps.Trial("lager-one-rest-or-two")], output));
        Assert.StartsWith("Two of the folders are called \"lager-one-rest-or-two\"", error.Message, StringComparison.Ordinal);
        Assert.False(Directory.Exists(output));
    }

    [Fact]
    public void A_lab_file_that_nobody_has_logged_yet_is_in_the_write_up_and_not_in_the_trial()
    {
        Assert.Contains("The lab measured 27.1 BU in half A", File.ReadAllText(made.PathOf("amber-cone-or-pellet", "write-up.md")),
            StringComparison.Ordinal);
        Assert.False(File.Exists(Path.Combine(ThreeWriteUps.Trial("amber-cone-or-pellet"), "lab-returns.csv")));
    }

    [Fact]
    public void They_say_what_the_lab_found_wrong_with_the_doses_where_it_did()
    {
        string Says(string name) => File.ReadAllText(made.PathOf(name, "write-up.md"));
        const string unequal = "What tasters notice may be that difference in bitterness and not the variable itself.";
        Assert.Contains(unequal, Says("amber-cone-or-pellet"), StringComparison.Ordinal);
        Assert.Contains(unequal, Says("stout-early-or-late"), StringComparison.Ordinal);
        Assert.DoesNotContain(unequal, Says("lager-one-rest-or-two"), StringComparison.Ordinal);
        Assert.Contains("Panel main departed from its plan. Ballots: planned 36, done 35. Fewer came in than were sealed, and whatever "
            + "the missing ones had answered, the result would be the same.", Says("stout-early-or-late"), StringComparison.Ordinal);
        Assert.DoesNotContain("departed from its plan", Says("lager-one-rest-or-two"), StringComparison.Ordinal);
    }

    private static CultureInfo CommaCulture()
    {
        var culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        (culture.NumberFormat.NumberDecimalSeparator, culture.NumberFormat.NumberGroupSeparator, culture.NumberFormat.NegativeSign) =
            (",", ".", "~");
        culture.DateTimeFormat.DateSeparator = ".";
        return culture;
    }

    private static List<string> Files(string folder) =>
        [.. Directory.GetFiles(folder, "*", SearchOption.AllDirectories).Select(file => Path.GetRelativePath(folder, file))
            .Order(StringComparer.Ordinal)];

    private static IEnumerable<string> Texts(string path) => path.EndsWith(".docx", StringComparison.Ordinal)
        ? new ZipArchive(File.OpenRead(path)).Entries.Select(entry => new StreamReader(entry.Open()).ReadToEnd())
        : [Encoding.Latin1.GetString(File.ReadAllBytes(path))];
}
