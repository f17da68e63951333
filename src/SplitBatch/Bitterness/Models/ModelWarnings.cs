using SplitBatch.Brewing;

namespace SplitBatch.Bitterness.Models;

/// <summary>What follows from a model's <see cref="ValidRange"/> for a dose: the sentences that every model shares.</summary>
public static class ModelWarnings
{
    /// <summary>Gravity, altitude and minutes outside the range, and time after flame-out that the formula does not cover.</summary>
    /// <param name="model">The model.</param>
    /// <param name="kettle">The kettle.</param>
    /// <param name="charges">The charges whose bitterness is the model's to say.</param>
    public static IEnumerable<string> OfRange(IBitternessModel model, Kettle kettle, IReadOnlyList<HopCharge> charges)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(kettle);
        ArgumentNullException.ThrowIfNull(charges);
        var (range, boil) = (model.Range, kettle.BoilingTemperature);
        if (!range.Holds(kettle.MeanGravity))
        {
            yield return FormattableString.Invariant(
                $"The mean gravity of the boil, {Printed.Gravity(kettle.MeanGravity.Specific)}, is outside what {model.Name} was made ")
                    + FormattableString.Invariant($"for ({Printed.Gravity(range.LowestGravity)} to ")
                    + FormattableString.Invariant($"{Printed.Gravity(range.HighestGravity)}).");
        }

        if (!range.Holds(boil) && charges.Count > 0)
        {
            var slower = 1 - Isomerisation.K1(boil.DegreesCelsius) / Isomerisation.K1(100);
            yield return FormattableString.Invariant(
                $"At {Spoken.Of(kettle.Altitude)} the wort boils at about {Boils(kettle)}, where alpha acid isomerises ")
                    + FormattableString.Invariant($"{Printed.Percent(slower)} more slowly than at ")
                    + FormattableString.Invariant($"{(Spoken.IsUs(kettle.Altitude) ? "212 °F" : "100 °C")}; {model.Name} was made near ")
                    + FormattableString.Invariant($"sea level and does not count that, so the beer will be less bitter than estimated.");
        }

        if (!range.CoversStand)
        {
            foreach (var text in OfStand(model, kettle, charges)) yield return text;
        }

        foreach (var charge in charges)
        {
            var minutes = Exposure.Of(kettle, charge).EquivalentMinutes;
            if (minutes > range.LongestMinutes)
            {
                yield return FormattableString.Invariant($"{charge.Lot.Name}: {Printed.Chosen(minutes)} min is longer than {model.Name} ")
                    + FormattableString.Invariant($"was made for ({Printed.Chosen(range.LongestMinutes)} min).");
            }

            if (!range.CoversStand && charge.Stage is AdditionStage.Whirlpool or AdditionStage.Cooling)
            {
                yield return FormattableString.Invariant(
                    $"{charge.Lot.Name}: {model.Name} knows nothing of hops after flame-out; the stand is counted as ")
                        + FormattableString.Invariant($"{Printed.Minutes(minutes)} of boil by the isomerisation rate.");
            }
        }
    }

    private static IEnumerable<string> OfStand(IBitternessModel model, Kettle kettle, IReadOnlyList<HopCharge> charges)
    {
        if (kettle.AfterBoil is not { } profile || !charges.Any(charge => charge.Stage is AdditionStage.FirstWort or AdditionStage.Boil))
            yield break;
        var stand = Isomerisation.Over(profile, 0).Conversion / Isomerisation.K1(kettle.BoilingTemperature.DegreesCelsius);
        if (stand >= 1)
        {
            yield return FormattableString.Invariant(
                $"{model.Name} was made for wort cooled after the boil; the stand is counted as {Printed.Minutes(stand)} more of boil ")
                    + FormattableString.Invariant($"for every charge, by the isomerisation rate.");
        }
    }

    private static string Boils(Kettle kettle) =>
        Printed.Temperature(Spoken.IsUs(kettle.Altitude)
            ? kettle.BoilingTemperature.ToUnit(UnitsNet.Units.TemperatureUnit.DegreeFahrenheit)
            : kettle.BoilingTemperature);
}
