using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using SplitBatch.Trials.Files;

namespace SplitBatch.Trials.Seals;

/// <summary>A seal as the bytes of its file, and back. The layout is meant for a reader; the fingerprint is that of the bytes.</summary>
internal static class SealText
{
    private const string Utc = "yyyy-MM-ddTHH:mm:ssZ", Local = "yyyy-MM-dd HH:mm:ss zzz";

    private static readonly JsonSerializerOptions Layout = new()
    {
        WriteIndented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>The file of a seal.</summary>
    public static string NameOf(int number) => string.Create(CultureInfo.InvariantCulture, $"seal-{number}.json");

    /// <summary>The number in a seal's file name; null for another file.</summary>
    public static int? NumberOf(string file) =>
        file.StartsWith("seal-", StringComparison.OrdinalIgnoreCase) && file.EndsWith(".json", StringComparison.OrdinalIgnoreCase)
        && int.TryParse(file[5..^5], NumberStyles.None, CultureInfo.InvariantCulture, out var number)
        && string.Equals(NameOf(number), file, StringComparison.OrdinalIgnoreCase) ? number : null;

    /// <summary>A moment for a person: <c>2026-04-20 16:05 UTC</c>.</summary>
    public static string Moment(DateTimeOffset at) => at.UtcDateTime.ToString("yyyy-MM-dd HH:mm 'UTC'", CultureInfo.InvariantCulture);

    /// <summary>The file's bytes.</summary>
    public static byte[] Write(Seal seal)
    {
        var json = new JsonObject
        {
            ["seal"] = seal.Number,
            ["//"] = $"What was fixed before pouring. The fingerprint is the SHA-256 of this file, byte for byte: sha256sum {seal.File}",
            ["title"] = seal.Title,
            ["sealed"] = seal.At.UtcDateTime.ToString(Utc, CultureInfo.InvariantCulture),
            ["local time"] = seal.At.ToString(Local, CultureInfo.InvariantCulture),
            ["made by"] = seal.MadeBy,
        };
        if (seal.Before is { } before) json["seal before"] = before.Digits;
        if (seal.Because is { } because) json["because"] = because;
        json["ballots then"] = new JsonObject(seal.BallotsThen.Select(pair => KeyValuePair.Create(pair.Key, (JsonNode?)pair.Value)));
        json["salt"] = seal.Salt;
        json["plan"] = PlanText.Write(seal.Plan);
        return Encoding.UTF8.GetBytes(json.ToJsonString(Layout) + "\n");
    }

    /// <summary>Reads a seal; null where it cannot be used, and the reason is a fault.</summary>
    public static Seal? Read(string file, byte[] bytes, FaultList faults)
    {
        var text = Encoding.UTF8.GetString(bytes);
        if (JsonSection.Read(file, new StringReader(text), faults) is not { } json) return null;
        var number = json.Number("seal", 1, 9999);
        var (title, madeBy, salt) = (json.Text("title"), json.Text("made by"), json.Text("salt"));
        var at = ReadMoment(json);
        var before = json.OptionalText("seal before");
        var because = json.OptionalText("because");
        var ballots = json.Section("ballots then");
        var counts = ballots?.Names.ToList().ToDictionary(name => name, name => ballots.OptionalWhole(name) ?? 0);
        var section = json.Section("plan");
        if (section is null) json.Missing("plan", "what was sealed");
        var plan = section is null ? null : PlanText.Read(section);
        json.RefuseUnasked();
        if (before is not null && Fingerprint.Parse(before) is null)
            json.Refuse("seal before", "This is no fingerprint.", "64 digits of 0-9 and a-f", before);
        if (number is not null && NameOf((int)number) != file)
            json.Refuse("seal", "The number is not that of the file's name.", $"the file under its own name, {NameOf((int)number)}");
        if (number is null || title is null || madeBy is null || salt is null || at is null || plan is null) return null;
        return new Seal
        {
            Number = (int)number,
            Title = title,
            At = at.Value,
            MadeBy = madeBy,
            Before = Fingerprint.Parse(before),
            Because = because,
            BallotsThen = counts ?? [],
            Salt = salt,
            Plan = plan,
            Fingerprint = Fingerprint.Of(bytes),
        };
    }

    private static DateTimeOffset? ReadMoment(JsonSection json)
    {
        if (json.Text("sealed") is not { } utc || json.Text("local time") is not { } local) return null;
        if (!DateTimeOffset.TryParseExact(utc, Utc, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var instant))
            json.Refuse("sealed", "The moment cannot be read.", "as 2026-04-20T16:05:00Z", utc);
        else if (!DateTimeOffset.TryParseExact(local, Local, CultureInfo.InvariantCulture, DateTimeStyles.None, out var here))
            json.Refuse("local time", "The moment cannot be read.", "as 2026-04-20 18:05:00 +02:00", local);
        else if (here != instant)
            json.Refuse("local time", "This is another moment than the one under \"sealed\".", "one moment, told in two ways", local);
        else return here;
        return null;
    }
}
