using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;

namespace SplitBatch.Proof.Sentences;

/// <summary>A random batch log, and random hop lots and charges, as files.</summary>
internal static class RandomBrew
{
    private static readonly (string Quantity, string Unit, double Centre, double Step, int Decimals)[] Measured =
    [
        ("original gravity", "SG", 1.050, 0.001, 4), ("final gravity", "SG", 1.011, 0.001, 4),
        ("volume into fermenter", "L", 19.5, 0.3, 1),
        ("pitching temperature", "°C", 18, 0.5, 1), ("fermentation temperature", "°F", 66, 1, 1), ("pH", "pH", 4.3, 0.05, 2),
        ("colour", "EBC", 18, 1, 1),
        ("colour", "SRM", 9, 0.5, 1), ("carbonation", "vol", 2.4, 0.1, 2), ("mash temperature", "°C", 66, 0.5, 1),
        ("dissolved oxygen", "ppb", 40, 5, 0),
        ("alcohol by volume", "%", 5.1, 0.1, 2), ("real extract", "°P", 4.2, 0.1, 2), ("bitterness", "IBU", 30, 1, 1),
        ("original gravity", "°P", 12.4, 0.1, 1),
    ];

    private static readonly (string Quantity, string[] Texts)[] Noted =
        [("yeast lot", ["L1", "L1", "L2"]), ("pitching date", ["2026-03-14", "2026-03-14", "2026-03-15"]),
            ("packaging date", ["2026-03-29", "2026-03-29", "2026-03-30"]), ("yeast strain", ["ale", "lager"])];

    public static void Add(Dice dice, JsonObject json, Dictionary<string, string> files)
    {
        if (dice.Chance(0.75)) files["batch-log.csv"] = Log(dice);
        if (dice.Chance(0.4)) AddHops(dice, json, files);
    }

    private static string Log(Dice dice)
    {
        var text = new StringBuilder("id,when,who,beer,quantity,value,unit,uncertainty,method,supersedes,reason,note\n");
        var id = 0;
        var thorough = dice.Chance(0.3) ? 1.0 : dice.Share();
        HashSet<string> done = [];
        foreach (var (quantity, unit, centre, step, decimals) in Measured)
        {
            if (!dice.Chance(quantity is "dissolved oxygen" or "alcohol by volume" or "real extract" or "bitterness" or "mash temperature"
                ? 0.12
                : thorough) || !done.Add(quantity)) continue;
            var apart = dice.Of(0.0, 0, 0, 0.5, 1, 2, 5) * dice.Of(1, -1);
            var uncertainty = dice.Chance(0.85) ? Number(step, decimals + 1) : "";
            var value = dice.Near(centre, step * 3);
            switch (dice.Whole(0, 9))
            {
                case 0: Row("both", quantity, Number(value, decimals), unit, uncertainty); break;
                case 1: Row(dice.Of("A", "B"), quantity, Number(value, decimals), unit, uncertainty); break;
                case 2:
                    Row("A", quantity, Number(value, decimals), unit, uncertainty);
                    Row("A", quantity, Number(value + step, decimals), unit, uncertainty);
                    Row("B", quantity, Number(value + (apart * step), decimals), unit, uncertainty);
                    break;
                case 3:
                    Row("A", quantity, Number(value + (8 * step), decimals), unit, uncertainty);
                    Row("A", quantity, Number(value, decimals), unit, uncertainty, supersedes: id);
                    Row("B", quantity, Number(value + (apart * step), decimals), unit, dice.Chance(0.8) ? uncertainty : "");
                    break;
                default:
                    Row("A", quantity, Number(value, decimals), unit, uncertainty);
                    Row("B", quantity, Number(value + (apart * step), decimals), unit, uncertainty);
                    break;
            }
        }

        foreach (var (quantity, texts) in Noted)
        {
            if (!dice.Chance(quantity == "yeast strain" ? 0.1 : thorough)) continue;
            if (dice.Chance(0.3)) Row("both", quantity, dice.Of(texts), "", "");
            else
            {
                Row("A", quantity, dice.Of(texts), "", "");
                if (dice.Chance(0.93)) Row("B", quantity, dice.Of(texts), "", "");
            }
        }

        return text.ToString();

        void Row(string beer, string quantity, string value, string unit, string uncertainty, int supersedes = 0) => text
            .Append(CultureInfo.InvariantCulture,
                $"{++id},2026-03-14,brewer,{beer},{quantity},{value},{unit},{uncertainty},,{(supersedes > 0 ? supersedes : "")},"
                    + $"{(supersedes > 0 ? "misread" : "")},\n");
    }

    private static void AddHops(Dice dice, JsonObject json, Dictionary<string, string> files)
    {
        if (dice.Chance(0.3)) json["hop variable"] = dice.Of("form", "crop year");
        var (boil, oneLot) = (dice.Of(60, 75, 90), dice.Chance(0.25));
        string[] lots = oneLot ? ["cones"] : ["cones", "pellets"];
        var hops =
            new StringBuilder("lot,form,alpha [%],alpha uncertainty [%],beta [%],crop year,assay date,storage [°C],packaging,HSI\n");
        foreach (var lot in lots)
        {
            var (form, year, day, store, pack, index) =
                (lot == "cones" || dice.Chance(0.2) ? "whole cones" : "pellets", dice.Of("2024", "2025", "2025", ""),
                    dice.Of("2025-10-20", "2025-10-20", "2025-11-02", "2025-12-24", ""),
                    dice.Of("4", "4", "5", "10", ""), dice.Of("barrier", "barrier", "open", ""), dice.Of("0.29", "0.30", "0.41", "", ""));
            hops.Append(CultureInfo.InvariantCulture,
                $"{lot},{form},{Number(dice.Near(7, 1), 1)},{dice.Of("0.3", "")},{dice.Of("4.5", "")},{year},{day},{store},{pack},"
                    + $"{index}\n");
        }

        files["hops.csv"] = hops.ToString();
        json["kettle"] = new JsonObject
        {
            ["volume [L]"] = 20,
            ["gravity [SG]"] = Math.Round(dice.Near(1.050, 0.003), 3),
            ["boil [min]"] = boil,
            ["evaporation per hour [L]"] = 3,
            ["altitude [m]"] = 100,
        };
        json["scale [g]"] = 0.5;
        if (dice.Chance(0.2)) return;
        var grams = dice.Near(40, 4);
        var charges = new StringBuilder("beer,lot,amount [g],stage,time [min]\n");
        charges.Append(CultureInfo.InvariantCulture, $"A,cones,{Number(grams, 1)},boil,{boil}\n");
        if (dice.Chance(0.9))
            charges.Append(CultureInfo.InvariantCulture, $"B,{lots[^1]},{Number(grams * dice.Of(0.93, 1, 1.4), 1)},boil,{boil}\n");
        if (dice.Chance(0.2)) charges.Append(CultureInfo.InvariantCulture, $"A,cones,{Number(grams / 2, 1)},boil,15\n");
        files["charges.csv"] = charges.ToString();
    }

    private static string Number(double value, int decimals) => Math.Round(value, decimals).ToString(CultureInfo.InvariantCulture);
}
