using SplitBatch.BrewDay;
using SplitBatch.Lab;
using SplitBatch.Trials.Files;
using SplitBatch.Trials.Reading;

namespace SplitBatch.Trials.Scaffold;

/// <summary>The CSV files of a new trial.</summary>
internal static class NewSheets
{
    /// <summary>File name to text.</summary>
    public static IReadOnlyDictionary<string, string> Of(NewTrial trial)
    {
        var sheet = new SheetText(trial);
        var us = trial.Units == UnitSystem.Us;
        var (mass, degrees) = us ? ("oz", "°F") : ("g", "°C");
        return new Dictionary<string, string>
        {
            [HopLotReader.FileName] = sheet.File(
                [
                    "Hop lots: one row for each lot. Needed: lot, form and alpha. Leave blank what you do not know.",
                    "Form is one of: whole cones / pellets / lupulin pellets / isomerised pellets / CO2 extract / iso extract / oil. "
                        + "Packaging: open / sealed with air / barrier.",
                    $"Percentages are numbers without a percent sign. An uncertainty is half of a 95 % range. Storage is the temperature "
                        + $"of the cold store in {degrees}.",
                    "HSI (the hop storage index) belongs to the assay. One measured again on brew day - or else storage and packaging and "
                        + "the loss that the variety shows in six months at room temperature - lets the alpha acid be aged to brew day; "
                        + "without them it is taken as assayed.",
                ],
                ["lot", "form", "alpha [%]", "alpha uncertainty [%]", "beta [%]", "beta uncertainty [%]", "crop year", "assay date",
                    $"storage [{degrees}]", "packaging", "HSI", "HSI on brew day", "loss in six months [%]"],
                ["my pellets", "pellets", 6.2, 0.3, 4.4, 0.3, 2025, "2025-10-20", us ? 39 : 4, "barrier", 0.28, "", 30]),
            [ChargeReader.FileName] = sheet.File(
                [
                    "Hop charges as weighed: one row for each addition of each half. Beer is A or B.",
                    "Stage is one of: first wort / boil / whirlpool / cooling / fermenter. Time: minutes before flame-out for the boil "
                        + "and minutes after it for whirlpool and cooling.",
                ],
                ["beer", "lot", $"amount [{mass}]", "stage", "time [min]"],
                ["A", "my pellets", us ? 1.6 : 45.5, "boil", 60]),
            [LogFormat.BatchLog.FileName] = sheet.File(
                [
                    "Batch log: one row for each thing measured or noted on a half. Beer is A or B or both. Never change a row: a "
                        + "correction is a new row that names the id it supersedes and the reason.",
                    "Worth logging on both halves: " + string.Join(" / ", ParityCheck.Expected) + ".",
                    "Uncertainty is half the width of what the instrument can tell in 95 of 100 readings, in the same unit. Words and "
                        + "dates need no unit.",
                ],
                LogFormat.BatchLog.Columns,
                [1, "2026-03-14", "brewer", "A", "original gravity", 1.05, "SG", 0.001, "hydrometer"],
                [2, "2026-03-14", "brewer", "A", "yeast lot", "Y-1"]),
            [LogFormat.LabReturns.FileName] = sheet.File(
                [
                    "Lab returns: one row for each single result as the lab returned it. Replicates are rows of their own and not "
                        + "averaged.",
                    "Analyte is one of: " + string.Join(" / ", Analyte.Known.Select(known => known.Name))
                        + ". Which half a sample is stands in trial.json and can stay out until the return is in.",
                ],
                LogFormat.LabReturns.Columns,
                ["R-1/S1/bitterness/1", "2026-04-02", "S1", "", "bitterness", 1, 24.5, "BU", "iso-octane extraction", "the lab's name"]),
            [BallotFile.NameOf("main")] = sheet.File(
                [
                    "Ballots: one row for each answer as given. Taster is a code and not a name. Answer is the code of the cup that was "
                        + "picked.",
                    "Set stands on the serving sheet. Knew variable and brewer and late: yes or blank.",
                ],
                BallotFile.Columns,
                ["T01", 1, 1, 453, "2026-05-02 19:02", "fairly sure"]),
        };
    }
}
