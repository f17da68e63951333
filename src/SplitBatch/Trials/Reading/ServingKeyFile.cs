using System.Globalization;
using System.Text;
using SplitBatch.Panel.Protocols;
using SplitBatch.Panel.Serving;
using SplitBatch.Trials.Files;

namespace SplitBatch.Trials.Reading;

/// <summary>The sealed key of a panel as a file, <c>serving-main.csv</c>: one row per cup.</summary>
public static class ServingKeyFile
{
    private static readonly string[] Columns = ["panel", "protocol", "session", "server", "taster", "replicate", "set", "position",
        "code", "beer"];

    /// <summary>The file of a panel's key.</summary>
    public static string NameOf(string panel) => $"serving-{Guard.NotBlank(panel)}.csv";

    /// <summary>
    /// The plan in a table, or null where the key cannot be used; every fault goes to the table's list, an unbalanced plan as a warning.
    /// </summary>
    /// <param name="table">The file.</param>
    /// <param name="seed">The seed that the plan was drawn with, if known.</param>
    /// <param name="declared">The beer that should show more of the named property, as the plan declares it, where the protocol fixes a
    /// direction; null to take the file's own word.</param>
    /// <param name="attribute">The property that tasters are asked about.</param>
    internal static ServingPlan? Read(CsvTable table, int? seed = null, Side? declared = null, string attribute = "bitter")
    {
        ArgumentNullException.ThrowIfNull(table);
        if (!table.Require("protocol", "taster", "set", "position", "code", "beer")) return null;
        List<(ServingKeyRow Row, CsvRow Line)> rows = [];
        foreach (var line in table.Rows)
        {
            if (ReadRow(line) is { } row) rows.Add((row, line));
        }
        if (rows.Count < table.Rows.Count) return null;

        if (ReadExpected(table, declared) is not { } expected) return null;
        bool usable = true;
        foreach (var fault in ServingKey.Check([.. rows.Select(pair => pair.Row)], table.File, expected))
        {
            var at = fault.Column is { } column ? rows.FirstOrDefault(pair => pair.Line.Optional(column) == fault.Value).Line : null;
            table.Faults.Add(fault with { Row = at?.Line });
            usable &= fault.Severity != Severity.Error;
        }
        return usable ? ServingKey.ToPlan([.. rows.Select(pair => pair.Row)], seed, expected, attribute) : null;
    }

    /// <summary>The key as the text of a CSV file.</summary>
    /// <param name="plan">The key.</param>
    /// <param name="salt">Random digits, so that nobody who holds only the file's fingerprint can find the key by trying; null for
    /// none.</param>
    internal static string Write(ServingPlan plan, string? salt = null)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var text = new StringBuilder();
        if (plan.Seed is { } seed)
            text.Append(CultureInfo.InvariantCulture,
                $"# drawn with seed {seed}; do not change a code or a beer after this file was written\n");
        if (salt is not null) text.Append(CultureInfo.InvariantCulture, $"# salt of the fingerprint: {salt}\n");
        bool named = plan.Protocol.NamesTheProperty;
        text.AppendJoin(',', named ? [.. Columns, "expected"] : Columns).Append('\n');
        foreach (var row in plan.Key)
        {
            text.Append(CultureInfo.InvariantCulture,
                $"{CsvText.Cell(row.Panel)},{CsvText.Cell(row.Protocol)},{row.Session},{CsvText.Cell(row.Server)},"
                    + $"{CsvText.Cell(row.Taster)},{row.Replicate},{row.Set},{row.Position},{row.Code},{row.Beer}"
                    + $"{(named ? $",{plan.Expected}" : "")}\n");
        }
        return text.ToString();
    }

    /// <summary>The expected beer that the key was drawn with; null where the file contradicts itself or the plan.</summary>
    private static Side? ReadExpected(CsvTable table, Side? declared)
    {
        bool named = table.Rows.Select(row => row.Optional("protocol")).FirstOrDefault() is { } name
            && Protocol.TryParse(name, out var protocol, out _) && protocol.NamesTheProperty;
        if (!named) return declared ?? Side.B;
        if (table.Find("expected") is null)
        {
            table.Faults
                .Add(new Fault(table.File, "The key does not say which beer was expected to be the stronger; the plan's word is taken.")
                {
                    Column = "expected",
                    Accepted = "a column headed expected with A or B in every row",
                    Severity = Severity.Warning,
                });
            return declared ?? Side.B;
        }

        Side? found = null;
        foreach (var row in table.Rows)
        {
            if (row.OneOf("expected", Sides.ByLetter) is not { } side) return null;
            found ??= side;
            if (side == (declared ?? found)) continue;
            row.Refuse("expected", declared is { } plan
                ? $"The key was drawn with beer {side} expected to be the stronger, and the plan in {TrialFolder.DescriptionFile} expects "
                    + $"{plan}. An answer would be scored the wrong way round."
                : "The key expects both beers to be the stronger.", declared is { } one ? $"{one} throughout" : "one beer throughout");
            return null;
        }

        return found ?? declared ?? Side.B;
    }

    private static ServingKeyRow? ReadRow(CsvRow row)
    {
        string? protocol = row.Text("protocol"), taster = row.Text("taster"), code = row.Text("code");
        int? set = Whole("set", 1), position = Whole("position", 0), session = row.OptionalWhole("session", 1),
            replicate = row.OptionalWhole("replicate", 1);
        var beer = row.Beer();
        if (protocol is null || taster is null || code is null || set is null || position is null || beer is null) return null;
        return new ServingKeyRow(
            row.Optional("panel") ?? "main", protocol, session ?? 1, row.Optional("server") ?? "S1", taster, replicate ?? 1, set.Value,
            position.Value, code, beer.Value);

        int? Whole(string column, int low) => row.Text(column) is null ? null : row.OptionalWhole(column, low);
    }
}
