using System.Globalization;
using UnitsNet;

namespace SplitBatch.Brewing;

/// <summary>One weighed addition of hops.</summary>
/// <example><code>HopCharge.Boil(pellets, Mass.FromGrams(31), minutes: 60)</code></example>
public sealed record HopCharge
{
    /// <summary>A charge.</summary>
    /// <param name="lot">The lot it is weighed from.</param>
    /// <param name="mass">Its mass; zero or more.</param>
    /// <param name="stage">Where it goes in.</param>
    /// <param name="time">See <see cref="AdditionStage"/>: before flame-out in the boil, after it later, before the boil for first wort;
    /// zero or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The mass or the time is negative.</exception>
    public HopCharge(HopLot lot, Mass mass, AdditionStage stage, Duration time)
    {
        ArgumentNullException.ThrowIfNull(lot);
        Lot = lot;
        Mass = mass.Grams >= 0 && double.IsFinite(mass.Grams)
            ? mass
            : throw new ArgumentOutOfRangeException(nameof(mass),
                FormattableString.Invariant($"{lot.Name}: a charge of {Printed.Chosen(mass.Grams)} g; it must be zero or more."));
        Stage = Enum.IsDefined(stage)
            ? stage
            : throw new ArgumentOutOfRangeException(nameof(stage), $"{stage} is not a stage of the brew.");
        Time = time.Minutes >= 0 && double.IsFinite(time.Minutes)
            ? time
            : throw new ArgumentOutOfRangeException(nameof(time),
                FormattableString.Invariant($"{lot.Name}: a time of {Printed.Chosen(time.Minutes)} min; it must be zero or more."));
    }

    /// <summary>The lot it is weighed from.</summary>
    public HopLot Lot { get; init; }

    /// <summary>Its mass.</summary>
    public Mass Mass { get; init; }

    /// <summary>Where it goes in.</summary>
    public AdditionStage Stage { get; }

    /// <summary>When; see <see cref="AdditionStage"/>.</summary>
    public Duration Time { get; }

    /// <summary>Whether solving for a target leaves this charge's mass alone.</summary>
    public bool IsFixed { get; init; }

    /// <summary>Alpha acid in the charge.</summary>
    public Mass AlphaMass => Mass * Lot.Alpha.Fraction;

    /// <summary>Into the boil, with so many minutes left to flame-out.</summary>
    public static HopCharge Boil(HopLot lot, Mass mass, double minutes) =>
        new(lot, mass, AdditionStage.Boil, Duration.FromMinutes(minutes));

    /// <summary>Into the kettle as it fills, so many minutes before the boil starts.</summary>
    public static HopCharge FirstWort(HopLot lot, Mass mass, double minutesBeforeBoil = 0) =>
        new(lot, mass, AdditionStage.FirstWort, Duration.FromMinutes(minutesBeforeBoil));

    /// <summary>Into the hot stand, so many minutes after flame-out.</summary>
    public static HopCharge Whirlpool(HopLot lot, Mass mass, double minutesAfterFlameOut = 0) =>
        new(lot, mass, AdditionStage.Whirlpool, Duration.FromMinutes(minutesAfterFlameOut));

    /// <summary>Into the cooling wort, so many minutes after flame-out.</summary>
    public static HopCharge Cooling(HopLot lot, Mass mass, double minutesAfterFlameOut) =>
        new(lot, mass, AdditionStage.Cooling, Duration.FromMinutes(minutesAfterFlameOut));

    /// <summary>Into the fermenter or the finished beer.</summary>
    public static HopCharge Fermenter(HopLot lot, Mass mass) => new(lot, mass, AdditionStage.Fermenter, Duration.Zero);

    /// <summary>For example <c>31.0 g pellets, 60 min in the boil</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Spoken.Of(Mass)} {Lot.Name}, {When}");

    /// <summary>Stage and time in words, as <c>60 min in the boil</c>.</summary>
    public string When => string.Create(CultureInfo.InvariantCulture, $"{Stage switch
    {
        AdditionStage.FirstWort => $"first wort, {Printed.Chosen(Time.Minutes)} min before the boil",
        AdditionStage.Boil => $"{Printed.Chosen(Time.Minutes)} min in the boil",
        AdditionStage.Whirlpool => $"whirlpool, {Printed.Chosen(Time.Minutes)} min after flame-out",
        AdditionStage.Cooling => $"cooling, {Printed.Chosen(Time.Minutes)} min after flame-out",
        _ => "in the fermenter",
    }}");
}

/// <summary>Where in the brew a charge goes in, which settles what its time means.</summary>
public enum AdditionStage
{
    /// <summary>Into the kettle as the wort runs in. Time: minutes in the hot wort before the boil starts.</summary>
    FirstWort,

    /// <summary>Into the boil. Time: minutes left to flame-out.</summary>
    Boil,

    /// <summary>Into the hot stand after the boil. Time: minutes after flame-out.</summary>
    Whirlpool,

    /// <summary>While the wort is being cooled. Time: minutes after flame-out.</summary>
    Cooling,

    /// <summary>After the kettle: into the fermenter or the finished beer. Time is not used.</summary>
    Fermenter,
}
