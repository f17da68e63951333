using UnitsNet.Units;

namespace SplitBatch.Brewing;

/// <summary>Whether a charge makes sense in a kettle. The mistakes named here are the usual ones.</summary>
internal static class ChargeChecks
{
    /// <summary>
    /// Grams per litre above which a kettle charge is taken for a mistake of units; heavy modern whirlpools reach about 15 (common
    /// practice, no source).
    /// </summary>
    internal const double ImpossibleRate = 20;

    internal static void Check(Kettle kettle, HopCharge charge)
    {
        CheckRate(kettle, charge);
        CheckTime(kettle, charge);
    }

    /// <summary>Whether the time lies within the stage's.</summary>
    internal static void CheckTime(Kettle kettle, HopCharge charge)
    {
        var minutes = charge.Time.Minutes;
        if (charge.Stage == AdditionStage.Boil && minutes > kettle.Boil.Minutes)
        {
            throw new ArgumentException(FormattableString.Invariant(
                $"{charge.Lot.Name}: {Printed.Chosen(minutes)} min in the boil, but the boil lasts {Printed.Chosen(kettle.Boil.Minutes)} ")
                    + FormattableString.Invariant($"min; accepted: 0 to {Printed.Chosen(kettle.Boil.Minutes)} min, or stage first wort."));
        }

        if (charge.Stage is AdditionStage.Whirlpool or AdditionStage.Cooling)
        {
            if (kettle.AfterBoil is not { } profile)
            {
                if (minutes > 0)
                {
                    throw new ArgumentException(FormattableString.Invariant(
                        $"{charge.Lot.Name}: {Printed.Chosen(minutes)} min at stage {charge.Stage.InWords()} counts from flame-out, and ")
                            + FormattableString.Invariant($"this kettle has no temperature profile after flame-out. If ")
                            + FormattableString.Invariant($"{Printed.Chosen(minutes)} min in the boil are meant, use stage boil; ")
                            + FormattableString.Invariant($"otherwise give the kettle a profile."));
                }
            }
            else if (minutes > profile.LengthMinutes)
            {
                throw new ArgumentException(FormattableString.Invariant(
                    $"{charge.Lot.Name}: {Printed.Chosen(minutes)} min after flame-out is after the end of the temperature profile ")
                        + FormattableString.Invariant($"({Printed.Chosen(profile.LengthMinutes)} min). If {Printed.Chosen(minutes)} min ")
                        + FormattableString.Invariant($"in the boil are meant, use stage boil."));
            }
        }
    }

    /// <summary>Whether the amount can be meant for so much wort.</summary>
    internal static void CheckRate(Kettle kettle, HopCharge charge)
    {
        var rate = charge.Mass.Grams / kettle.FinalVolume.Liters;
        if (rate <= ImpossibleRate) return;
        var hint = charge.Mass.Unit switch
        {
            MassUnit.Pound => FormattableString.Invariant($" If ounces were meant, write {Printed.Chosen(charge.Mass.Value)} oz, in code ")
                + FormattableString.Invariant($"Mass.FromOunces({Printed.Chosen(charge.Mass.Value)})."),
            MassUnit.Kilogram => FormattableString.Invariant($" If grams were meant, write {Printed.Chosen(charge.Mass.Value)} g, in ")
                + FormattableString.Invariant($"code Mass.FromGrams({Printed.Chosen(charge.Mass.Value)})."),
            _ => " Were pounds given for ounces, or ounces for grams?",
        };
        var us = Spoken.IsUs(kettle.Volume);
        throw new ArgumentOutOfRangeException(nameof(charge), FormattableString.Invariant(
            $"{charge.Lot.Name}: {Spoken.Short(charge.Mass)} in {Spoken.Of(kettle.FinalVolume)} is {Spoken.Rate(rate, us)}; accepted: up ")
            + FormattableString.Invariant($"to {Spoken.Rate(ImpossibleRate, us)}.") + hint);
    }
}
