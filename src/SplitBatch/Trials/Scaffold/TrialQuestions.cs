using System.Globalization;
using SplitBatch.Brewing;
using SplitBatch.Panel.Protocols;
using SplitBatch.Panel.Serving;
using SplitBatch.Trials.Files;
using UnitsNet;

namespace SplitBatch.Trials.Scaffold;

/// <summary>The questions that make a trial folder, in the order in which they are asked.</summary>
public static class TrialQuestions
{
    private static readonly Dictionary<string, UnitSystem> Systems = new(StringComparer.OrdinalIgnoreCase)
    {
        ["metric"] = UnitSystem.Metric,
        ["us"] = UnitSystem.Us,
    };
    private static readonly Dictionary<string, DecimalMark> Marks = new(StringComparer.OrdinalIgnoreCase)
    {
        ["point"] = DecimalMark.Point,
        ["comma"] = DecimalMark.Comma,
    };

    private const string Later = "later";

    /// <summary>Every question.</summary>
    public static IReadOnlyList<TrialQuestion> All { get; } =
    [
        new("title", "What is the trial called?", trial => trial.Title, (trial, text) => trial with { Title = text })
        {
            NeedsAnswer = true,
        },
        new("variable", "What is the one thing that differs between the halves?", trial => trial.Variable,
            (trial, text) => trial with { Variable = text }) { NeedsAnswer = true },
        new("half-a", "What is half A called, the one brewed as usual?", trial => trial.NameA,
            (trial, text) => trial with { NameA = text }) { NeedsAnswer = true },
        new("half-b", "What is half B called, the changed one?", trial => trial.NameB, (trial, text) => trial with { NameB = text })
        {
            NeedsAnswer = true,
        },
        new("question", "What is the question, as one sentence?", trial => trial.Question,
            (trial, text) => trial with { Question = text }),
        new("units", "Which units: metric or us?", trial => trial.Units == UnitSystem.Us ? "us" : "metric",
            (trial, text) => trial with { Units = OneOf(text, Systems, "units") }),
        new("decimals", "How does your spreadsheet write decimals: point (5.6) or comma (5,6)?",
            trial => trial.Decimals == DecimalMark.Comma ? "comma" : "point",
            (trial, text) => trial with { Decimals = OneOf(text, Marks, "decimals") }),
        new("volume", "How much wort does one half hold at the end of the boil, measured cool (L, or gal in us units)?",
            trial => Text(trial, VolumeOf(trial)), (trial, text) => trial with { Volume = ReadVolume(trial, text) }),
        new("gravity", "What is its gravity then (1.050, or 12.4 P for degrees Plato)?",
            trial => Text(trial, trial.Gravity.Specific, "0.000"), (trial, text) => trial with { Gravity = ReadGravity(text) }),
        new("target", "Which bitterness do both halves aim at, in IBU?", trial => Text(trial, trial.Target),
            (trial, text) => trial with { Target = Number(text, "The target") }),
        new("allergens", $"Which allergens are in the beers ({string.Join(", ", Allergens.Accepted)})? Put commas between them.",
            trial => trial.Allergens is { } known ? string.Join(", ", known.Words) : Later,
            (trial, text) => trial with { Allergens = text.Trim() == Later ? null : Allergens.Parse(text) }),
        new("protocol", "Which test will the panel do?", trial => trial.Protocol.Name,
            (trial, text) => trial with { Protocol = Protocol.Parse(text) }),
        new("margin", "How large a share of people who can tell would matter to you (0.30 is three in ten)?",
            trial => Text(trial, trial.Margin, "0.00"), (trial, text) => trial with { Margin = ReadShare(text) }),
        new("tasters", "How many people will taste?", trial => trial.Tasters.ToString(CultureInfo.InvariantCulture),
            (trial, text) => trial with { Tasters = Whole(text) }),
    ];

    private static T OneOf<T>(string text, Dictionary<string, T> words, string name) =>
        words.TryGetValue(text.Trim(), out var meaning) ? meaning
            : throw new ArgumentException($"\"{text}\" is not known for {name}; accepted: {string.Join(" or ", words.Keys)}.",
                nameof(text));

    private static double VolumeOf(NewTrial trial) => trial.Units == UnitSystem.Us ? trial.Volume.UsGallons : trial.Volume.Liters;

    private static Volume ReadVolume(NewTrial trial, string text)
    {
        var number = Guard.Positive(Number(text, "The volume"), "the volume");
        return trial.Units == UnitSystem.Us ? Volume.FromUsGallons(number) : Volume.FromLiters(number);
    }

    private static Gravity ReadGravity(string text)
    {
        var plain = text.Trim();
        return plain.EndsWith('P') || plain.EndsWith('p')
            ? Gravity.FromPlato(Number(plain[..^1].TrimEnd(' ', '°'), "The gravity"))
            : Gravity.FromSpecific(Number(plain, "The gravity"));
    }

    private static double ReadShare(string text)
    {
        var plain = text.Trim();
        return plain.EndsWith('%') ? Number(plain[..^1], "The margin") / 100 : Number(plain, "The margin");
    }

    private static int Whole(string text) =>
        Number(text, "The number of tasters") is var number && number == Math.Floor(number) && number is >= 1 and <= 100_000 ? (int)number
            : throw new ArgumentException($"\"{text}\" is not a number of tasters; accepted: a whole number from 1.", nameof(text));

    /// <summary>A number with a point or a comma before its decimals: in an answer of its own nothing else can be meant.</summary>
    private static double Number(string text, string what)
    {
        var mark = text.Contains(',', StringComparison.Ordinal) ? DecimalMark.Comma : DecimalMark.Point;
        return NumberText.TryRead(text, mark, out var number, out var problem) ? number
            : throw new ArgumentException($"{what} cannot be read. {problem}", nameof(text));
    }

    private static string Text(NewTrial trial, double number, string format = "0.###")
    {
        var text = number.ToString(format, CultureInfo.InvariantCulture);
        return trial.Decimals == DecimalMark.Comma ? text.Replace('.', ',') : text;
    }
}
