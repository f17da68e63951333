using System.Text.Json.Nodes;
using SplitBatch.Lab;
using SplitBatch.Trials.Files;

namespace SplitBatch.Trials.Reading;

/// <summary>The part of trial.json about the laboratory: the key of the samples and what is known of each method's precision.</summary>
/// <param name="Samples">Which half each sample is; empty while the samples are blind.</param>
/// <param name="Precision">What is known of the precision, by analyte.</param>
internal sealed record LabSection(IReadOnlyDictionary<string, Side> Samples, IReadOnlyDictionary<Analyte, MethodPrecision> Precision)
{
    private static readonly Dictionary<string, PrecisionKind> Kinds = new()
    {
        ["coefficient of variation"] = PrecisionKind.CoefficientOfVariation,
        ["CV"] = PrecisionKind.CoefficientOfVariation,
        ["standard deviation"] = PrecisionKind.StandardDeviation,
        ["SD"] = PrecisionKind.StandardDeviation,
        ["95 % limit"] = PrecisionKind.Limit95,
    };

    private static readonly Dictionary<string, PrecisionCondition> Conditions = new()
    {
        ["repeatability"] = PrecisionCondition.Repeatability,
        ["intermediate precision"] = PrecisionCondition.Intermediate,
        ["reproducibility"] = PrecisionCondition.Reproducibility,
    };

    /// <summary>
    /// The smallest difference in bitterness that people are said to notice, with its source; null where none is stated.
    /// </summary>
    public JustNoticeable? Noticeable { get; init; }

    /// <summary>How the laboratory's own files are read.</summary>
    public IReadOnlyList<LabImport> Imports { get; init; } = [];

    /// <summary>Nothing told.</summary>
    public static LabSection Empty { get; } = new(new Dictionary<string, Side>(), new Dictionary<Analyte, MethodPrecision>());

    /// <summary>
    /// Reads the section: <c>"samples": { "K7": "A" }</c> and <c>"precision"</c>, one object or a list, each with analyte, kind and
    /// condition (left out where not known), <c>value [unit]</c> or <c>value [%]</c>, <c>up to [...]</c> for a range, and source;
    /// <c>"just noticeable difference": { "low [BU]": 3, "high [BU]": 5, "source": "..." }</c>; and <c>"imports"</c>, for which see
    /// <see cref="LabImport"/>.
    /// </summary>
    /// <param name="json">The section, or null where trial.json has none.</param>
    public static LabSection Read(JsonSection? json)
    {
        if (json is null) return Empty;
        var samples = new Dictionary<string, Side>(StringComparer.OrdinalIgnoreCase);
        if (json.Section("samples") is { } section)
        {
            foreach (var name in section.Names.ToList())
            {
                if (section.OptionalOneOf(name, Sides.ByLetter) is { } side) samples[name] = side;
            }
        }

        var stated = new List<(Analyte Analyte, StatedPrecision Stated)>();
        foreach (var entry in json.OneOrMore("precision"))
        {
            if (ReadPrecision(entry) is { } pair) stated.Add(pair);
        }

        var noticeable = json.Section("just noticeable difference") is { } range ? ReadNoticeable(range) : null;
        var imports = json.OneOrMore("imports").Select(LabImport.FromJson).OfType<LabImport>().ToList();
        return new LabSection(samples,
            stated.GroupBy(pair => pair.Analyte).ToDictionary(group => group.Key, group => Join([.. group.Select(pair => pair.Stated)])))
            {
                Noticeable = noticeable,
                Imports = imports,
            };
    }

    /// <summary>
    /// This section with the precision and margins that were sealed, where any were; the key of the samples and the files stay
    /// trial.json's.
    /// </summary>
    internal LabSection AsSealed(JsonObject fixedBefore)
    {
        if (JsonSection.Read("seal", new StringReader(fixedBefore.ToJsonString()), []) is not { } json) return this;
        var before = Read(json);
        return this with
        {
            Precision = before.Precision.Count > 0 ? before.Precision : Precision,
            Noticeable = before.Noticeable ?? Noticeable,
        };
    }

    private static JustNoticeable? ReadNoticeable(JsonSection json)
    {
        var (low, high) = (json.Number("low [BU]", 0), json.Number("high [BU]", 0));
        var source = json.Text("source", "who says so");
        return low is { } least && high is { } most && source is not null
            ? json.Make("low [BU]", () => new JustNoticeable(least, most, source))
            : null;
    }

    private static MethodPrecision Join(StatedPrecision[] stated)
    {
        var known = stated.Select(MethodPrecision.Of).Select(method => method.Known).OfType<LabPrecision>().ToList();
        var r = known.Select(one => one.Repeatability).FirstOrDefault(one => one is not null);
        var big = known.Select(one => one.Reproducibility).FirstOrDefault(one => one is not null);
        var between = known.Select(one => one.Intermediate).FirstOrDefault(one => one is not null);
        return r is null && big is null && between is null
            ? MethodPrecision.Of(stated[0])
            : MethodPrecision.Of(new LabPrecision(r, big) { Intermediate = between });
    }

    private static (Analyte, StatedPrecision)? ReadPrecision(JsonSection json)
    {
        var name = json.OptionalText("analyte") ?? Analyte.Bitterness.Name;
        var kind = json.OptionalOneOf("kind", Kinds);
        var condition = json.OptionalOneOf("condition", Conditions);
        var source = json.OptionalText("source") ?? "";
        if (Analyte.Find(name) is not { } analyte)
        {
            json.Refuse("analyte", "The analyte is not known.", string.Join(", ", Analyte.Known.Select(known => known.Name)), name,
                Nearest.Suggestion(name, Analyte.Known.Select(known => known.Name)));
            return null;
        }

        var unit = json.Names.Select(key => CsvColumn.Parse(key, 0)).FirstOrDefault(column => column.Name == "value")?.Unit;
        if (unit is null)
        {
            json.Missing($"value [{analyte.Unit}]", $"\"value [{analyte.Unit}]\" or \"value [%]\" with a number");
            return null;
        }

        if (json.Number($"value [{unit}]", 0) is not { } low) return null;
        var high = json.OptionalNumber($"up to [{unit}]", 0);
        var made = json.Make($"value [{unit}]", () =>
        {
            var figure = unit == "%"
                ? StatedPrecision.Percent(low, high)
                : StatedPrecision.Absolute(low * analyte.Factor(unit), high * analyte.Factor(unit));
            figure = figure with { Kind = kind, Condition = condition, Source = source };
            _ = figure.Readings();
            return figure;
        });
        return made is null ? null : (analyte, made);
    }
}
