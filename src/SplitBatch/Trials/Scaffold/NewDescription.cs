using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using SplitBatch.Panel.Serving;
using SplitBatch.Trials.Files;

namespace SplitBatch.Trials.Scaffold;

/// <summary>The trial.json of a new trial. Names that start with // are remarks, so that the file stays plain JSON.</summary>
internal static class NewDescription
{
    private static readonly JsonSerializerOptions Indented = new()
    {
        WriteIndented = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>The file's text.</summary>
    public static string Of(NewTrial trial)
    {
        var us = trial.Units == UnitSystem.Us;
        var volume = us ? trial.Volume.UsGallons : trial.Volume.Liters;
        var (unit, length, scale) = us ? ("gal", "ft", "scale [oz]") : ("L", "m", "scale [g]");
        return new JsonObject
        {
            ["//"] = "This file says what the trial asks and plans. Lines whose name starts with // explain, and are not read. Numbers in "
                + "this file always have a decimal point.",
            ["title"] = trial.Title,
            ["question"] = trial.Question,
            ["// why"] = "Why the answer matters, and what would change your mind; write both before you pour.",
            ["why"] = "",
            ["would change my mind"] = "",
            ["variable"] = trial.Variable,
            ["// held equal"] = "What you keep the same in both halves, as [\"yeast lot and pitching rate\", \"packaging day\"].",
            ["held equal"] = new JsonArray(),
            ["// follows from the variable"] =
                "Lines of the batch log that differ because of the variable and so are no confound, as [\"volume into fermenter\"].",
            ["follows from the variable"] = new JsonArray(),
            ["// units"] = "metric or us; the CSV files name their units in the header. Decimals of the CSV files: point or comma.",
            ["units"] = us ? "us" : "metric",
            ["decimals"] = trial.Decimals == DecimalMark.Comma ? "comma" : "point",
            ["beers"] = new JsonObject { ["A"] = trial.NameA, ["B"] = trial.NameB },
            ["// allergens"] = $"What in the beers may harm somebody, for both halves together. Accepted: "
                + $"{string.Join(", ", Allergens.Accepted)}. The no sheet is printed until this is said.",
            ["allergens"] = new JsonArray([.. (trial.Allergens?.Words ?? []).Select(word => JsonValue.Create(word))]),
            ["target"] = new JsonObject { ["bitterness [IBU]"] = trial.Target },
            ["// brew day"] = "Add the day of the brew, planned or done, as \"brew day\": \"2026-03-14\"; hops are aged to it. Without "
                + "it, the first day of the batch log counts.",
            ["// scale"] = "The step of the scale that the hops are weighed on.",
            [scale] = us ? 0.05 : 1,
            ["// kettle"] = $"One half at the end of the boil, volume measured cool. May also hold: evaporation per hour [{unit}], trub "
                + $"loss [{unit}], top-up [{unit}], altitude [{length}]; and for whirlpool and cooling additions the temperatures after "
                + $"flame-out, as \"after flame-out\": [ {{ \"time [min]\": 0, \"temperature [{(us ? "°F" : "°C")}]\": {(us ? 210 : 99)} "
                + $"}}, {{ \"time [min]\": 30, \"temperature [{(us ? "°F" : "°C")}]\": {(us ? 175 : 80)} }} ].",
            ["kettle"] = new JsonObject
            {
                [$"volume [{unit}]"] = Math.Round(volume, 3),
                ["gravity [SG]"] = Math.Round(trial.Gravity.Specific, 5),
                ["boil [min]"] = 60,
            },
            ["lab"] = new JsonObject
            {
                ["// samples"] =
                    "Which half each sample is, as { \"S1\": \"A\", \"S2\": \"B\" }; write it in when the lab's return is logged.",
                ["samples"] = new JsonObject(),
                ["// precision"] = "What the lab says of its method, as { \"analyte\": \"bitterness\", \"kind\": \"standard deviation\", "
                    + "\"condition\": \"repeatability\", \"value [BU]\": 0.6, \"source\": \"the lab's return\" }.",
                ["precision"] = new JsonArray(),
            },
            ["panels"] = new JsonArray(Panel(trial)),
            ["// published"] = "Where you published the seal's fingerprint, and later the result, in your own words: { \"seal\": \"the "
                + "club's chat, 2026-03-14\", \"result\": \"...\" }.",
            ["published"] = new JsonObject(),
        }.ToJsonString(Indented) + "\n";
    }

    private static JsonObject Panel(NewTrial trial)
    {
        var panel = new JsonObject
        {
            ["// declare"] = "When the plan below is final, and before the first cup is poured, seal it: splitbatch declare. From then on "
                + "the seal decides, and a change has to be put on record: splitbatch amend.",
            ["name"] = "main",
            ["protocol"] = trial.Protocol.Name,
            ["// shares"] = "alpha: the risk of showing a difference that is not there. power: the chance wanted of showing one as large "
                + "as margin. margin: the share of people who can tell that would matter. beta: the risk of ruling that out although "
                + "it is so.",
            ["alpha"] = 0.05,
            ["power"] = 0.80,
            ["margin"] = trial.Margin,
            ["beta"] = 0.05,
            ["tasters"] = trial.Tasters,
            ["replicates"] = 1,
            ["sessions"] = 1,
            ["stopping"] = "fixed",
            ["// asked beside"] = "What tasters are asked besides: attributes that they rate, preferred, comment; as [\"bitterness\", "
                + "\"preferred\"].",
            ["asked beside"] = new JsonArray(),
            ["// rules"] = "How doubtful ballots count, where not as usual: { \"late\": \"count\", \"missing\": \"count as wrong\" }; see "
                + "the README of the notebooks.",
        };
        if (trial.Protocol.NamesTheProperty)
        {
            panel["// expected"] = "The half that should show more of the attribute; fixed before pouring, because the test asks in this "
                + "direction.";
            panel["expected"] = "B";
            panel["attribute"] = "bitter";
        }

        return panel;
    }
}
