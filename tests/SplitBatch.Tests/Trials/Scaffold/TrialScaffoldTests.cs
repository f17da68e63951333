using SplitBatch.Panel.Protocols;
using SplitBatch.Trials.Files;
using UnitsNet;

namespace SplitBatch.Trials.Scaffold;

/// <summary>A new trial folder: usable from the first minute in every dialect, and never written over anything.</summary>
public sealed class TrialScaffoldTests : IDisposable
{
    private const string Notebook = """
        {
         "cells": [
          { "cell_type": "markdown", "id": "a", "metadata": {}, "source": ["# Größe"] },
          { "cell_type": "code", "execution_count": null, "id": "b", "metadata": { "tags": ["parameters"] }, "outputs": [], "source": ["// The trial\n", "var trialFolder = \"../data-demo/some-trial\"; // change me\n", "var tasters = 24;"] }
         ],
         "metadata": { "kernelspec": { "name": "splitbatch" } }, "nbformat": 4, "nbformat_minor": 5
        }
        """;

    private readonly DirectoryInfo root = Directory.CreateTempSubdirectory("new-trial-");

    public void Dispose() => root.Delete(recursive: true);

    private string At(params string[] parts) => Path.Combine([root.FullName, .. parts]);

    private static NewTrial Filled(UnitSystem units, DecimalMark decimals) => new()
    {
        Title = "Dry hops: cold or warm?", Variable = "temperature of dry hopping", NameA = "warm", NameB = "cold", Units = units,
        Decimals = decimals,
    };

    [Theory]
    [InlineData(UnitSystem.Metric, DecimalMark.Point)]
    [InlineData(UnitSystem.Metric, DecimalMark.Comma)]
    [InlineData(UnitSystem.Us, DecimalMark.Point)]
    public void A_new_folder_is_sound_from_the_first_minute(UnitSystem units, DecimalMark decimals)
    {
        TrialScaffold.Write(Filled(units, decimals), At("mine"));
        Assert.Equal([(Severity.Warning, "panels[0].declared"), (Severity.Warning, "allergens")],
            Trial.Check(At("mine")).Select(fault => (fault.Severity, fault.Column!)));

        var trial = Trial.Open(At("mine"));
        Assert.Equal(("Dry hops: cold or warm?", units, decimals), (trial.Title, trial.Description.Units, trial.Description.Decimals));
        Assert.Equal("Can tasters tell cold from warm, when everything but the temperature of dry hopping is the same?", trial.Question);
        Assert.Equal(units == UnitSystem.Us ? 18.927 : 20, trial.Kettle.FinalVolume.Liters, 3);
        Assert.Equal((40, null, 30.0), (trial.Panel().Plan.Tasters, trial.Panel().Plan.Seed, trial.Target));
        Assert.Empty(trial.Lots);
        Assert.Empty(trial.BatchLog.Entries);
        Assert.Empty(trial.Panel().Ballots);
    }

    [Theory]
    [InlineData(UnitSystem.Metric, DecimalMark.Point)]
    [InlineData(UnitSystem.Metric, DecimalMark.Comma)]
    [InlineData(UnitSystem.Us, DecimalMark.Point)]
    public void The_rows_shown_in_the_remarks_are_rows_that_can_be_read(UnitSystem units, DecimalMark decimals)
    {
        TrialScaffold.Write(Filled(units, decimals), At("mine"));
        foreach (var file in Directory.GetFiles(At("mine"), "*.csv"))
        {
            var lines = File.ReadAllLines(file);
            Assert.Contains(lines, line => line.StartsWith("# as in: ", StringComparison.Ordinal));
            File.WriteAllLines(file, [.. lines,
                .. lines.Where(line => line.StartsWith("# as in: ", StringComparison.Ordinal))
                    .Select(line => line["# as in: ".Length..])]);
        }

        Assert.DoesNotContain(Trial.Check(At("mine")), fault => fault.Severity == Severity.Error);
        var trial = Trial.Open(At("mine"));
        Assert.Equal(6.2, trial.Lot("my pellets").Alpha.Percent, 9);
        Assert.InRange(trial.Charges[Side.A].Single().Mass.Grams, 45, 46);
        Assert.Equal("original gravity", trial.BatchLog.Quantities[0]);
        Assert.Equal(24.5, trial.Lab.Results.Single().Value, 9);
        Assert.Equal("453", trial.Panel().Ballots.Single().Answer);
    }

    [Fact]
    public void Every_CSV_file_starts_with_a_byte_order_mark_and_an_explanation_and_every_file_stands_in_the_README()
    {
        var receipt = TrialScaffold.Write(Filled(UnitSystem.Metric, DecimalMark.Comma), At("mine"));
        var readme = File.ReadAllText(At("mine", "README.md"));
        foreach (var file in receipt.Files.Where(file => file.EndsWith(".csv", StringComparison.Ordinal)))
        {
            Assert.Equal("\uFEFF# ", System.Text.Encoding.UTF8.GetString(File.ReadAllBytes(At("mine", file)))[..3]);
            Assert.Contains(file, readme, StringComparison.Ordinal);
        }

        Assert.Contains("trial.json", readme, StringComparison.Ordinal);
    }

    [Fact]
    public void Notebooks_are_copied_with_the_folder_filled_in_and_nothing_else_changed()
    {
        Directory.CreateDirectory(At("notebooks"));
        File.WriteAllText(At("notebooks", "1-design.ipynb"), Notebook);
        File.WriteAllText(At("notebooks", "README.md"), "not a notebook");
        var receipt = TrialScaffold.Write(Filled(UnitSystem.Metric, DecimalMark.Point), At("mine"), At("notebooks"));
        Assert.Contains("notebooks/1-design.ipynb", receipt.Files);
        var cells = System.Text.Json.Nodes.JsonNode.Parse(File.ReadAllText(At("mine", "notebooks", "1-design.ipynb")))!["cells"]!;
        Assert.Equal("# Größe", (string?)cells[0]!["source"]![0]);
        Assert.Equal(["// The trial\n", "var trialFolder = \"..\"; // mine\n", "var tasters = 24;"],
            cells[1]!["source"]!.AsArray().Select(line => (string?)line));
        Assert.Equal(["README.md", "1-design.ipynb"],
            new[] { "README.md", Path.GetFileName(Directory.GetFiles(At("mine", "notebooks")).Single()) });
    }

    [Fact]
    public void Cells_that_only_the_example_can_fill_are_left_out_of_a_copied_notebook()
    {
        Directory.CreateDirectory(At("notebooks"));
        const string Practice = """{ "cell_type": "code", "metadata": { "tags": ["example"] }, "source":"""
            + """ "trial.Practice(\"two-yeasts\")" }""";
        File.WriteAllText(At("notebooks", "1-design.ipynb"),
            Notebook.Replace("\"cells\": [", $"\"cells\": [{Practice}, ", StringComparison.Ordinal));
        TrialScaffold.Write(Filled(UnitSystem.Metric, DecimalMark.Point), At("mine"), At("notebooks"));
        var copied = File.ReadAllText(At("mine", "notebooks", "1-design.ipynb"));
        Assert.Contains("# Größe", copied, StringComparison.Ordinal);
        Assert.DoesNotContain("Practice", copied, StringComparison.Ordinal);
    }

    [Fact]
    public void A_folder_that_holds_something_is_left_alone()
    {
        Directory.CreateDirectory(At("mine"));
        File.WriteAllText(At("mine", "diary.txt"), "mine");
        var error = Assert.Throws<IOException>(() => TrialScaffold.Write(new NewTrial(), At("mine")));
        Assert.Equal("The folder \"mine\" holds files, so nothing was written; name a new or an empty folder.", error.Message);
        Assert.Equal("mine", File.ReadAllText(At("mine", "diary.txt")));
        Assert.Single(root.GetFileSystemInfos());
    }

    [Fact]
    public void A_notebook_that_cannot_be_copied_leaves_nothing_behind()
    {
        Directory.CreateDirectory(At("notebooks"));
        File.WriteAllText(At("notebooks", "1-design.ipynb"), """{ "cells": [] }""");
        Assert.Equal("1-design.ipynb has no cell tagged parameters.",
            Assert.Throws<InvalidDataException>(() => TrialScaffold.Write(new NewTrial(), At("mine"), At("notebooks"))).Message);
        Assert.Equal(["notebooks"], root.GetFileSystemInfos().Select(entry => entry.Name));
    }

    [Fact]
    public void An_empty_folder_is_filled_and_a_missing_parent_made()
    {
        Directory.CreateDirectory(At("empty"));
        TrialScaffold.Write(new NewTrial(), At("empty"));
        TrialScaffold.Write(new NewTrial(), At("a", "b", "mine"));
        Assert.True(Trial.Open(At("empty")).Folder.HoldsTrial && Trial.Open(At("a", "b", "mine")).Folder.HoldsTrial);
    }

    [Fact]
    public void Answers_are_read_as_people_write_them()
    {
        NewTrial Take(string name, string text, NewTrial? trial = null) =>
            TrialQuestions.All.Single(question => question.Name == name).Take(trial ?? new NewTrial(), text);
        Assert.Equal(1.050, Take("gravity", "1,050").Gravity.Specific, 9);
        Assert.Equal(12.4, Take("gravity", "12.4 °P").Gravity.Plato, 3);
        Assert.Equal(0.3, Take("margin", "30 %").Margin, 9);
        Assert.Equal(Volume.FromUsGallons(5.5).Liters, Take("volume", "5.5", new NewTrial { Units = UnitSystem.Us }).Volume.Liters, 9);
        Assert.Equal(Protocol.DuoTrio, Take("protocol", "duo-trio").Protocol);
        Assert.Equal("1,050", TrialQuestions.All.Single(question => question.Name == "gravity")
            .Suggest(new NewTrial { Decimals = DecimalMark.Comma }));
    }

    [Theory]
    [InlineData("gravity", "1050", "1050 looks like a hydrometer reading without its point: write 1.050.")]
    [InlineData("margin", "30", "the margin is 30; it must be a share above 0 and below 1 (5 % is 0.05).")]
    [InlineData("units", "imperial", "\"imperial\" is not known for units; accepted: metric or us.")]
    [InlineData("tasters", "two dozen", "The number of tasters cannot be read. \"two dozen\" is not a number.")]
    [InlineData("tasters", "12.5", "\"12.5\" is not a number of tasters; accepted: a whole number from 1.")]
    [InlineData("title", " ", "Title must not be blank.")]
    [InlineData("protocol", "triangel", "Did you mean \"triangle\"?")]
    public void An_answer_that_cannot_be_used_says_what_is_accepted(string name, string text, string words)
    {
        var question = TrialQuestions.All.Single(one => one.Name == name);
        Assert.Contains(words, Assert.ThrowsAny<ArgumentException>(() => question.Take(new NewTrial(), text)).Message,
            StringComparison.Ordinal);
    }
}
