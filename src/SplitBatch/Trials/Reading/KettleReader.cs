using SplitBatch.Brewing;
using SplitBatch.Trials.Files;
using UnitsNet;

namespace SplitBatch.Trials.Reading;

/// <summary>Reads the kettle of trial.json.</summary>
internal static class KettleReader
{
    /// <summary>The kettle, or null when a needed part is missing or wrong, and each such part is a fault.</summary>
    public static Kettle? Read(JsonSection json)
    {
        var volume = json.OptionalVolume("volume");
        var gravity = ReadGravity(json);
        var boil = json.OptionalDuration("boil");
        var evaporation = json.OptionalVolume("evaporation per hour");
        var altitude = json.OptionalLength("altitude");
        var topUp = json.OptionalVolume("top-up");
        var trub = json.OptionalVolume("trub loss");
        var profile = ReadProfile(json);
        if (volume is null && !json.Names.Any(name => name.StartsWith("volume", StringComparison.Ordinal)))
        {
            json.Missing("volume [L]", "the wort at the end of the boil, measured cool, as \"volume [L]\": 20");
        }

        if (volume is null || gravity is null) return null;
        return json.Make("volume [L]", () => new Kettle(volume.Value, gravity.Value)
        {
            Boil = boil ?? Duration.FromMinutes(60),
            Evaporation = VolumeFlow.FromLitersPerHour(evaporation?.Liters ?? 0),
            Altitude = altitude ?? Length.Zero,
            TopUp = topUp ?? Volume.Zero,
            TrubLoss = trub ?? Volume.Zero,
            AfterBoil = profile,
        });
    }

    private static Gravity? ReadGravity(JsonSection json)
    {
        const string Specific = "gravity [SG]";
        const string Plato = "gravity [°P]";
        var specific = json.OptionalNumber(Specific);
        var plato = json.OptionalNumber(Plato);
        if (specific is { } sg) return json.Make<Gravity?>(Specific, () => Gravity.FromSpecific(sg));
        if (plato is { } degrees) return json.Make<Gravity?>(Plato, () => Gravity.FromPlato(degrees));
        if (!json.Names.Any(name => name is Specific or Plato))
        {
            json.Missing(Specific, $"the gravity at the end of the boil, as \"{Specific}\": 1.050 or \"{Plato}\": 12.4");
        }

        return null;
    }

    private static TemperatureProfile? ReadProfile(JsonSection json)
    {
        const string Name = "after flame-out";
        var points = json.Sections(Name);
        var readings = new List<(Duration, Temperature)>();
        foreach (var point in points)
        {
            if (point.OptionalDuration("time") is { } time && point.OptionalTemperature("temperature") is { } temperature)
                readings.Add((time, temperature));
        }

        return readings.Count == 0 ? null : json.Make(Name, () => TemperatureProfile.FromReadings(readings));
    }
}
