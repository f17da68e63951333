using SplitBatch.Trials.Files;
using SplitBatch.Trials.Reading;

namespace SplitBatch.Trials;

/// <summary>A folder with many mistakes is read once, and every one of them is reported with its place.</summary>
public sealed class TenFaultsTests : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("trial-");

    public void Dispose() => folder.Delete(recursive: true);

    private void Write(string file, string text) => File.WriteAllText(Path.Combine(folder.FullName, file), text);

    [Fact]
    public void Ten_different_faults_are_reported_together_each_with_its_place()
    {
        Write("trial.json", """
            {
              "title": "A trial with mistakes",
              "question": "Does it matter?",
              "variable": "hop form",
              "beers": { "A": "cones", "B": "pellets" },
              "kettle": { "volume": 20, "gravity [SG]": 1050 },
              "panels": [ { "name": "main", "protocol": "triangel", "tasters": 24, "alhpa": 0.05 } ]
            }
            """);
        Write("hops.csv", """
            lot,form,alpha [%]
            cones,whole cones,0.054
            pellets,pelets,6.0
            """);
        Write("charges.csv", """
            beer,lot,amount [g],stage,time [min]
            A,cone,55,boil,60
            C,pellets,-5,boil,60
            """);
        Write("lab-returns.csv", "id,sample,value,supersedes,reason\n1,S1,22.5,,\n");

        var error = Assert.Throws<TrialFolderException>(() => Trial.Open(folder.FullName));

        string[] expected =
        [
            "trial.json, kettle.volume = \"20\": The unit is missing.",
            "trial.json, kettle.gravity [SG] = \"1050\": 1050 is not a specific gravity; it must be between 0.980 and 1.200, such as "
                + "1.050. 1050 looks like a hydrometer reading without its point: write 1.050.",
            "trial.json, panels[0].protocol = \"triangel\":",
            "trial.json, panels[0].alhpa: The name is not known here",
            "hops.csv, row 2, alpha [%] = \"0.054\": 0.054 % alpha acid is too little for any hop; it looks like a fraction: write 5.4 "
                + "for 5.4 %.",
            "hops.csv, row 3, form = \"pelets\": The word is not known here. Accepted: whole cones, pellets,",
            "charges.csv, row 2, lot = \"cone\": No lot of this name stands in hops.csv.",
            "charges.csv, row 3, beer = \"C\": The word is not known here. Accepted: A, B.",
            "charges.csv, row 3, amount [g] = \"-5\": The value is out of range.",
            "lab-returns.csv, row 1, analyte: The column \"analyte\" is missing",
        ];
        foreach (var start in expected)
        {
            Assert.Contains(error.Faults, fault => fault.ToString().StartsWith(start, StringComparison.Ordinal));
        }

        Assert.All(error.Faults, fault => Assert.Contains(fault.ToString(), error.Message, StringComparison.Ordinal));
    }

    [Fact]
    public void Two_lots_of_one_name_are_refused_whatever_their_case()
    {
        var faults = new FaultList();
        Assert.Single(
            HopLotReader.Read(CsvTable.Read("hops.csv", new StringReader("lot,form,alpha [%]\nx,whole cones,5\nX,pellets,6\n"), faults)));
        Assert.StartsWith("hops.csv, row 3, lot = \"X\": A lot of this name stands in an earlier row.", Assert.Single(faults).ToString(),
            StringComparison.Ordinal);
    }

    [Fact]
    public void A_folder_without_a_trial_says_so() =>
        Assert.Contains("trial.json: The file is missing.", Assert.Throws<TrialFolderException>(() => Trial.Open(folder.FullName)).Message,
            StringComparison.Ordinal);
}
