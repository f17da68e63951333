using System.Globalization;
using UnitsNet;

namespace SplitBatch.Brewing;

/// <summary>One half's wort and boil: volumes, gravity, evaporation, altitude, and what happens after flame-out.</summary>
/// <remarks>
/// Volumes are those at 20 °C unless a name says hot. Extract neither boils off nor settles, so gravity points times volume stay the
/// same through the boil (common practice; exact within 0.3 points).
/// </remarks>
/// <example><code>Kettle.Metric(liters: 20, gravity: 1.050, boilMinutes: 60, evaporationLitersPerHour: 3)</code></example>
public sealed record Kettle
{
    /// <summary>A kettle known by what is in it at flame-out.</summary>
    /// <param name="volume">Wort at the end of the boil, as it measures at 20 °C; in (0, 100000] L.</param>
    /// <param name="gravity">Its gravity then.</param>
    /// <exception cref="ArgumentOutOfRangeException">The volume is zero, negative or beyond any brewery's kettle.</exception>
    public Kettle(Volume volume, Gravity gravity)
    {
        Volume = volume.Liters is > 0 and <= 100_000
            ? volume
            : throw new ArgumentOutOfRangeException(nameof(volume), FormattableString.Invariant(
                $"A kettle of {Printed.Chosen(volume.Liters)} L cannot be brewed with; the volume must be above zero and at most ")
                    + FormattableString.Invariant($"100000 L."));
        Gravity = gravity;
    }

    /// <summary>Wort at the end of the boil, before any top-up, as it measures at 20 °C.</summary>
    public Volume Volume { get; init; }

    /// <summary>Gravity at the end of the boil, before any top-up.</summary>
    public Gravity Gravity { get; init; }

    /// <summary>Length of the boil, in (0, 300] min; 60 unless stated.</summary>
    public Duration Boil
    {
        get;
        init => field = value.Minutes is > 0 and <= 300
            ? value
            : throw new ArgumentOutOfRangeException(nameof(Boil), FormattableString.Invariant(
                $"A boil of {Printed.Chosen(value.Minutes)} min is outside (0, 300] min; were hours given as minutes, or the reverse?"));
    } = Duration.FromMinutes(60);

    /// <summary>Wort boiled off in an hour, as it would measure at 20 °C; none unless stated.</summary>
    public VolumeFlow Evaporation { get; init => field = NotNegative(value, nameof(Evaporation)); }

    /// <summary>Height above the sea, which lowers the boiling point.</summary>
    public Length Altitude
    {
        get;
        init
        {
            _ = BoilingPoint.At(value);
            field = value;
        }
    }

    /// <summary>Water added after the boil, at 20 °C.</summary>
    public Volume TopUp { get; init => field = NotNegative(value, nameof(TopUp)); }

    /// <summary>Wort left behind with the trub, apart from what the hops hold, at 20 °C.</summary>
    public Volume TrubLoss { get; init => field = NotNegative(value, nameof(TrubLoss)); }

    /// <summary>Temperature after flame-out; null for wort cooled at once.</summary>
    public TemperatureProfile? AfterBoil { get; init; }

    /// <summary>Temperature at which first-wort hops steep before the boil; 75 °C unless stated.</summary>
    public Temperature FirstWort { get; init; } = Temperature.FromDegreesCelsius(75);

    /// <summary>Temperature of the boil, from the altitude.</summary>
    public Temperature BoilingTemperature => BoilingPoint.At(Altitude);

    /// <summary>Wort when the boil starts, as it would measure at 20 °C.</summary>
    public Volume VolumeAtStart => VolumeAt(Boil);

    /// <summary>Gravity when the boil starts.</summary>
    public Gravity GravityAtStart => GravityAt(Boil);

    /// <summary>Wort when the boil starts, as it measures hot in the kettle.</summary>
    public Volume HotVolumeAtStart => WaterDensity.Hot(VolumeAtStart, BoilingTemperature);

    /// <summary>Wort at flame-out, as it measures hot in the kettle.</summary>
    public Volume HotVolume => WaterDensity.Hot(Volume, BoilingTemperature);

    /// <summary>Cold wort that the kettle gave, top-up included: the volume over which bitterness is spread.</summary>
    public Volume FinalVolume => Volume + TopUp;

    /// <summary>Gravity of the wort with the top-up in it.</summary>
    public Gravity FinalGravity => Gravity.FromSpecific(1 + (Gravity.Specific - 1) * (Volume / FinalVolume));

    /// <summary>Volume in the middle of the boil: the mean over the boil.</summary>
    public Volume MeanVolume => (VolumeAtStart + Volume) / 2;

    /// <summary>Mean of the gravities at the start and the end of the boil.</summary>
    public Gravity MeanGravity => Gravity.FromSpecific((GravityAtStart.Specific + Gravity.Specific) / 2);

    /// <summary>The wort's volume, as at 20 °C, with so many minutes of the boil left.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The time is negative or longer than the boil.</exception>
    public Volume VolumeAt(Duration left) => Volume + Evaporation * InBoil(left);

    /// <summary>The wort's gravity with so many minutes of the boil left.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The time is negative or longer than the boil.</exception>
    public Gravity GravityAt(Duration left) => Gravity.FromSpecific(1 + (Gravity.Specific - 1) * (Volume / VolumeAt(left)));

    /// <summary>A kettle in litres.</summary>
    /// <param name="liters">Wort at the end of the boil, at 20 °C, in litres.</param>
    /// <param name="gravity">Specific gravity at the end of the boil, as 1.050.</param>
    /// <param name="boilMinutes">Length of the boil.</param>
    /// <param name="evaporationLitersPerHour">Litres boiled off in an hour.</param>
    /// <param name="altitudeMeters">Metres above the sea.</param>
    /// <param name="trubLiters">Litres left behind with the trub.</param>
    public static Kettle Metric(double liters, double gravity, double boilMinutes = 60, double evaporationLitersPerHour = 0,
        double altitudeMeters = 0, double trubLiters = 0) =>
            new(Volume.FromLiters(Guard.Positive(liters)), Gravity.FromSpecific(gravity))
            {
                Boil = Duration.FromMinutes(boilMinutes),
                Evaporation = VolumeFlow.FromLitersPerHour(evaporationLitersPerHour),
                Altitude = Length.FromMeters(altitudeMeters),
                TrubLoss = Volume.FromLiters(trubLiters),
            };

    /// <summary>A kettle in US gallons.</summary>
    /// <param name="gallons">Wort at the end of the boil, at 20 °C (68 °F), in US gallons.</param>
    /// <param name="gravity">Specific gravity at the end of the boil, as 1.050.</param>
    /// <param name="boilMinutes">Length of the boil.</param>
    /// <param name="evaporationGallonsPerHour">US gallons boiled off in an hour.</param>
    /// <param name="altitudeFeet">Feet above the sea.</param>
    /// <param name="trubQuarts">US quarts left behind with the trub.</param>
    public static Kettle Us(double gallons, double gravity, double boilMinutes = 60, double evaporationGallonsPerHour = 0,
        double altitudeFeet = 0, double trubQuarts = 0) =>
            new(Volume.FromUsGallons(Guard.Positive(gallons)), Gravity.FromSpecific(gravity))
            {
                Boil = Duration.FromMinutes(boilMinutes),
                Evaporation = VolumeFlow.FromUsGallonsPerHour(evaporationGallonsPerHour),
                Altitude = Length.FromFeet(altitudeFeet),
                TrubLoss = Volume.FromUsQuarts(trubQuarts),
            };

    /// <summary>A kettle known by its wort before the boil, measured hot.</summary>
    /// <param name="hot">Wort in the kettle when the boil starts, as it measures hot.</param>
    /// <param name="temperature">Its temperature when measured.</param>
    /// <param name="gravity">Its gravity, measured cooled.</param>
    /// <param name="boil">Length of the boil.</param>
    /// <param name="evaporation">Wort boiled off in an hour, as it would measure at 20 °C.</param>
    /// <exception cref="ArgumentOutOfRangeException">Nothing would be left at the end of the boil, or a value lies outside its
    /// range.</exception>
    public static Kettle FromStart(Volume hot, Temperature temperature, Gravity gravity, Duration boil, VolumeFlow evaporation)
    {
        var start = WaterDensity.Cold(hot, temperature);
        var end = start - evaporation * boil;
        if (end.Liters <= 0)
        {
            throw new ArgumentOutOfRangeException(nameof(evaporation), FormattableString.Invariant(
                $"{Printed.Chosen(evaporation.LitersPerHour)} L/h for {Printed.Chosen(boil.Minutes)} min would boil away all of ")
                    + FormattableString.Invariant($"{Printed.Chosen(start.Liters)} L."));
        }

        return new(end, Gravity.FromSpecific(1 + (gravity.Specific - 1) * (start / end))) { Boil = boil, Evaporation = evaporation };
    }

    /// <summary>For example <c>20.0 L of 1.050 (12.4 °P) at the end of a 60 min boil</c>.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture, $"{Spoken.Of(Volume)} of {Gravity} at the end of a {Printed.Chosen(Boil.Minutes)} min boil");

    private Duration InBoil(Duration left) => left.Minutes >= 0 && left.Minutes <= Boil.Minutes
        ? left
        : throw new ArgumentOutOfRangeException(nameof(left), FormattableString.Invariant(
            $"{Printed.Chosen(left.Minutes)} min before flame-out is not within a boil of {Printed.Chosen(Boil.Minutes)} min."));

    private static Volume NotNegative(Volume value, string name) => value.Liters >= 0
        ? value
        : throw new ArgumentOutOfRangeException(name,
            FormattableString.Invariant($"{name} is {Printed.Chosen(value.Liters)} L; it must be zero or more."));

    private static VolumeFlow NotNegative(VolumeFlow value, string name) => value.LitersPerHour >= 0
        ? value
        : throw new ArgumentOutOfRangeException(name,
            FormattableString.Invariant($"{name} is {Printed.Chosen(value.LitersPerHour)} L/h; it must be zero or more."));
}
