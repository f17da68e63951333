using System.Globalization;
using System.Text.Json.Nodes;
using UnitsNet;

namespace SplitBatch.Trials.Files;

/// <content>The values: texts, numbers, dates, words of a fixed set, and quantities with their units.</content>
internal sealed partial class JsonSection
{
    /// <summary>The text under a name, or null when there is none.</summary>
    public string? OptionalText(string name)
    {
        switch (Ask(name))
        {
            case null:
                return null;
            case JsonValue value when value.TryGetValue<string>(out var text):
                return string.IsNullOrWhiteSpace(text) ? null : text.Trim();
            case var other:
                Refuse(name, "The value is not text.", "text in quotation marks", Show(other));
                return null;
        }
    }

    /// <summary>The text under a name; its absence is a fault.</summary>
    public string? Text(string name, string accepted = "text in quotation marks")
    {
        if (OptionalText(name) is { } text) return text;
        if (Ask(name) is null || (Ask(name) is JsonValue value && value.TryGetValue<string>(out _))) Missing(name, accepted);
        return null;
    }

    /// <summary>The texts in a list; none when there is no list.</summary>
    public IReadOnlyList<string> Texts(string name)
    {
        if (Ask(name) is not { } found) return [];
        if (found is JsonArray array && array.All(item => item is JsonValue value && value.TryGetValue<string>(out _)))
        {
            return [.. array.Select(item => item!.GetValue<string>())];
        }

        Refuse(name, "The value is not a list of texts.", "[\"one\", \"two\"]", Show(found));
        return [];
    }

    /// <summary>A yes or no; <paramref name="otherwise"/> when there is none.</summary>
    public bool Flag(string name, bool otherwise = false)
    {
        switch (Ask(name))
        {
            case null:
                return otherwise;
            case JsonValue value when value.TryGetValue<bool>(out var flag):
                return flag;
            case var other:
                Refuse(name, "The value is neither true nor false.", "true or false, without quotation marks", Show(other));
                return otherwise;
        }
    }

    /// <summary>A number in [<paramref name="low"/>, <paramref name="high"/>], or null when there is none.</summary>
    public double? OptionalNumber(string name, double low = double.MinValue, double high = double.MaxValue)
    {
        if (Ask(name) is not { } found) return null;
        var accepted = string.Create(CultureInfo.InvariantCulture,
            $"a number between {low} and {high}, with a decimal point and without quotation marks");
        if (low == double.MinValue || high == double.MaxValue) accepted = "a number, with a decimal point and without quotation marks";
        if (found is not JsonValue value || !value.TryGetValue<double>(out var number) || !double.IsFinite(number))
        {
            Refuse(name, "The value is not a number.", accepted, Show(found));
            return null;
        }

        if (number >= low && number <= high) return number;
        Refuse(name, "The value is out of range.", accepted, Show(found));
        return null;
    }

    /// <summary>A number in [<paramref name="low"/>, <paramref name="high"/>]; its absence is a fault.</summary>
    public double? Number(string name, double low = double.MinValue, double high = double.MaxValue)
    {
        if (Ask(name) is null) Missing(name, "a number");
        return OptionalNumber(name, low, high);
    }

    /// <summary>A share in [0, 1], or null when there is none.</summary>
    public double? OptionalShare(string name) => OptionalNumber(name, 0, 1);

    /// <summary>A whole number in [<paramref name="low"/>, <paramref name="high"/>], or null when there is none.</summary>
    public int? OptionalWhole(string name, int low = 0, int high = int.MaxValue)
    {
        if (OptionalNumber(name, low, high) is not { } number) return null;
        if (number == Math.Floor(number)) return (int)number;
        Refuse(name, "The value is not a whole number.", "a whole number", Show(Ask(name)!));
        return null;
    }

    /// <summary>A date written as 2026-03-14, or null when there is none.</summary>
    public DateOnly? OptionalDate(string name)
    {
        if (OptionalText(name) is not { } text) return null;
        if (DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date)) return date;
        Refuse(name, "The date cannot be read.", "year-month-day, as \"2026-03-14\"", text);
        return null;
    }

    /// <summary>One of a fixed set of words, or null when there is none.</summary>
    public T? OptionalOneOf<T>(string name, IReadOnlyDictionary<string, T> words)
        where T : struct
    {
        ArgumentNullException.ThrowIfNull(words);
        if (OptionalText(name) is not { } text) return null;
        foreach (var (word, meaning) in words)
        {
            if (string.Equals(word, text, StringComparison.OrdinalIgnoreCase)) return meaning;
        }

        Refuse(name, "The word is not known here.", string.Join(", ", words.Keys), text, Nearest.Suggestion(text, words.Keys));
        return null;
    }

    /// <summary>A volume, with its unit in the name, or null when there is none.</summary>
    public Volume? OptionalVolume(string name) => Quantity(name, UnitText.Volume, UnitText.VolumeUnits);

    /// <summary>A mass, with its unit in the name, or null when there is none.</summary>
    public Mass? OptionalMass(string name) => Quantity(name, UnitText.Mass, UnitText.MassUnits);

    /// <summary>A duration, with its unit in the name, or null when there is none.</summary>
    public Duration? OptionalDuration(string name) => Quantity(name, UnitText.Duration, UnitText.DurationUnits);

    /// <summary>A length, with its unit in the name, or null when there is none.</summary>
    public Length? OptionalLength(string name) => Quantity(name, UnitText.Length, UnitText.LengthUnits, -500);

    /// <summary>A temperature, with its unit in the name, or null when there is none.</summary>
    public Temperature? OptionalTemperature(string name) =>
        Quantity(name, UnitText.Temperature, UnitText.TemperatureUnits, double.MinValue);

    private T? Quantity<T>(string name, Func<double, string?, T?> make, string units, double low = 0)
        where T : struct
    {
        var key = Names.FirstOrDefault(candidate => CsvColumn.Parse(candidate, 0) is { Unit: not null } parsed && parsed.Name == name);
        if (key is null)
        {
            asked.Add($"{name} [unit]");
            if (Ask(name) is { } bare) Refuse(name, "The unit is missing.", $"\"{name} [unit]\", with one of {units}", Show(bare));
            return null;
        }

        if (OptionalNumber(key, low, 1e9) is not { } number) return null;
        var unit = CsvColumn.Parse(key, 0).Unit;
        if (make(number, unit) is { } quantity) return quantity;
        Refuse(key, $"The unit \"{unit}\" is not one for this value.", $"\"{name} [unit]\", with one of {units}", Show(Ask(key)!));
        return null;
    }
}
