using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;

namespace SplitBatch.Proof.Sentences;

/// <summary>
/// A random lab return: none, one reading or many, one run or several, other days, methods and laboratories, and what is known of the
/// precision.
/// </summary>
internal static class RandomLab
{
    private static readonly (string Analyte, string Unit, double Level, double Deviation, int Decimals)[] Analytes =
        [("bitterness", "BU", 28, 0.5, 1), ("alcohol", "% vol", 5.1, 0.03, 2), ("pH", "pH", 4.3, 0.02, 2), ("colour", "EBC", 18, 0.4, 1),
            ("iso-alpha acids", "mg/L", 24, 0.5, 1)];

    public static void Add(Dice dice, JsonObject json, Dictionary<string, string> files)
    {
        if (dice.Chance(0.3)) return;
        var named = dice.Chance(0.3);
        var lab = new JsonObject { ["samples"] = new JsonObject { ["S1"] = "A", ["S2"] = "B" } };
        var precision = new JsonArray();
        var text =
            new StringBuilder(
                "id,received,sample,beer,analyte,replicate,value,unit,method,lab,supersedes,reason,absorbance,blank,dilution,who,run\n");
        var id = 0;
        foreach (var (analyte, unit, level, deviation, decimals) in Analytes)
        {
            if (!dice.Chance(analyte == "bitterness" ? 0.95 : 0.2)) continue;
            foreach (var stated in Precision(dice, analyte, unit, level, deviation)) precision.Add(stated);
            Measure(dice, (sample, day, method, by, run, replicate, value) =>
            {
                var beer = named ? sample == "S1" ? "A" : "B" : "";
                var own = analyte == "bitterness" && by == "own";
                var reading = own
                    ? string.Create(CultureInfo.InvariantCulture, $"{Number(value / 50, 3)},{dice.Of("0.004", "", "0.02")},")
                    : ",,";
                text.Append(CultureInfo.InvariantCulture,
                    $"r{++id},{day},{sample},{beer},{analyte},{replicate},{(own ? "" : Number(value, decimals))},{(own ? "" : unit)},"
                        + $"{method},{(by == "own" ? "" : by)},,,{reading},,{run}\n");
                if (own || !dice.Chance(0.02)) return;
                text.Append(CultureInfo.InvariantCulture,
                    $"r{++id},{day},{sample},{beer},{analyte},{replicate},{Number(value + deviation, decimals)},{unit},{method},"
                        + $"{(by == "own" ? "" : by)},r{id - 1},misprint,,,,,{run}\n");
            }, level, deviation, analyte);
        }

        if (id == 0) return;
        if (precision.Count > 0) lab["precision"] = precision;
        json["lab"] = lab;
        files["lab-returns.csv"] = text.ToString();
    }

    private delegate void Result(string sample, string day, string method, string by, string run, int replicate, double value);

    private static void Measure(Dice dice, Result add, double level, double deviation, string analyte)
    {
        var apart = dice.Of(0.0, 0, 1, 3, 8) * deviation * dice.Of(1, -1);
        var (n, m) = (dice.Of(1, 2, 2, 3, 6), dice.Of(1, 2, 2, 2, 4));
        if (dice.Chance(0.6)) m = n;
        var days = dice.Of(("2026-05-04", "2026-05-04"), ("2026-05-04", "2026-05-04"), ("", ""), ("2026-05-04", "2026-05-07"),
            ("2026-05-04", ""));
        var methods = dice.Of(("", ""), ("", ""), ("EBC 9.8", "EBC 9.8"), ("EBC 9.8", "ebc 9.8"), ("EBC 9.8", "HPLC"));
        var by = dice.Of(("", ""), ("Valley", "Valley"), ("Valley", "Valley"), ("Valley", "Hill"), ("own", "own"));
        if (by.Item1 == "own" && analyte != "bitterness") by = ("", "");
        var runs = dice.Of<(string[] A, string[] B)>(([""], [""]), ([""], [""]), (["R1"], ["R1"]), (["R1"], ["R2"]),
            (["R1", "R2", "R3"], ["R1", "R2", "R3"]), (["R1", "R2"], ["R1", "R2"]), (["R1", "R2"], ["R2"]));
        Sample("S1", runs.A, n, 0, days.Item1, methods.Item1, by.Item1);
        Sample("S2", runs.B, m, apart, days.Item2, methods.Item2, by.Item2);
        if (dice.Chance(0.08)) foreach (var sample in dice.Some(["S1", "S2"], 0.8))
            Sample(sample, runs.A, 1, 0, days.Item1, methods.Item1, "Meadow");
        if (dice.Chance(0.03) && analyte != "bitterness") Sample("S3", runs.A, 1, 0, days.Item1, methods.Item1, by.Item1);

        void Sample(string sample, string[] where, int count, double off, string day, string method, string lab)
        {
            var replicate = 0;
            foreach (var run in where)
            {
                for (var i = 0; i < count; i++)
                    add(sample, day, method, lab, run, ++replicate,
                        Math.Max(level / 4, dice.Near(level + off, dice.Chance(0.03) ? 12 * deviation : deviation)));
            }
        }
    }

    private static IEnumerable<JsonObject> Precision(Dice dice, string analyte, string unit, double level, double deviation)
    {
        if (dice.Chance(0.2)) yield break;
        foreach (var condition in dice.Of<string[]>(["repeatability"], ["repeatability"], ["repeatability"], ["reproducibility"],
            ["intermediate precision"], ["repeatability", "reproducibility"], ["repeatability", "intermediate precision"], [""]))
        {
            var json = new JsonObject { ["analyte"] = analyte };
            var size = deviation * (condition switch { "reproducibility" => 3, "intermediate precision" => 1.8, _ => 1 })
                * dice.Of(0.9, 1, 1.1);
            var kind = dice.Of("standard deviation", "standard deviation", "95 % limit", "coefficient of variation", "");
            if (kind.Length > 0) json["kind"] = kind;
            if (condition.Length > 0) json["condition"] = condition;
            var percent = kind == "coefficient of variation" || (kind.Length == 0 && dice.Chance(0.3));
            var figure = (percent ? 100 * size / level : size) * (kind == "95 % limit" ? 2.8 : 1);
            if (percent) figure = Math.Max(figure, 0.2);
            json[$"value [{(percent ? "%" : unit)}]"] = Math.Round(figure, 3);
            if (dice.Chance(0.1)) json[$"up to [{(percent ? "%" : unit)}]"] = Math.Round(figure * 2, 3);
            yield return json;
        }
    }

    private static string Number(double value, int decimals) => Math.Round(value, decimals).ToString(CultureInfo.InvariantCulture);
}
