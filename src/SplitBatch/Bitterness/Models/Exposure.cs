using SplitBatch.Brewing;

namespace SplitBatch.Bitterness.Models;

/// <summary>What a charge meets in the kettle: all that a model needs to say how much of its alpha acid becomes bitterness.</summary>
public readonly record struct Exposure
{
    /// <summary>Minutes in the boil by the clock; the whole boil for first-wort hops, zero after flame-out.</summary>
    public double BoilMinutes { get; init; }

    /// <summary>Mean gravity over the boil, as a specific gravity.</summary>
    public double MeanGravity { get; init; }

    /// <summary>Temperature of the boil in °C.</summary>
    public double BoilCelsius { get; init; }

    /// <summary>What steeping before the boil does.</summary>
    public ThermalStep Before { get; init; }

    /// <summary>What the hot stand and the cooling do.</summary>
    public ThermalStep After { get; init; }

    /// <summary>How a minute's error in the charge's time compares with a minute of boil: 1 in the boil, less in cooler wort.</summary>
    public double TimeWeight { get; init; }

    /// <summary>
    /// Boil minutes, with time before and after the boil counted as the boil minutes in which as much alpha acid would isomerise
    /// (first-order rate k1 of <see cref="Isomerisation"/>). This is how formulas that know only the boil see a hot stand.
    /// </summary>
    public double EquivalentMinutes => Math.Max(0, BoilMinutes + (Before.Conversion + After.Conversion) / Isomerisation.K1(BoilCelsius));

    /// <summary>What a charge meets in a kettle.</summary>
    public static Exposure Of(Kettle kettle, HopCharge charge)
    {
        ArgumentNullException.ThrowIfNull(kettle);
        ArgumentNullException.ThrowIfNull(charge);
        var boiling = kettle.BoilingTemperature.DegreesCelsius;
        var (minutes, late) = charge.Stage switch
        {
            AdditionStage.FirstWort => (kettle.Boil.Minutes, 0.0),
            AdditionStage.Boil => (charge.Time.Minutes, 0.0),
            _ => (0.0, charge.Time.Minutes),
        };
        var profile = charge.Stage == AdditionStage.Fermenter ? null : kettle.AfterBoil;
        return new Exposure
        {
            BoilMinutes = minutes,
            MeanGravity = kettle.MeanGravity.Specific,
            BoilCelsius = boiling,
            Before = charge.Stage == AdditionStage.FirstWort
                ? Isomerisation.Hold(kettle.FirstWort.DegreesCelsius, charge.Time.Minutes)
                : ThermalStep.None,
            After = profile is null ? ThermalStep.None : Isomerisation.Over(profile, late),
            TimeWeight = profile is not null && charge.Stage is AdditionStage.Whirlpool or AdditionStage.Cooling
                ? Isomerisation.K1(profile!.CelsiusAt(late)) / Isomerisation.K1(boiling)
                : charge.Stage is AdditionStage.FirstWort or AdditionStage.Boil ? 1 : 0,
        };
    }
}
