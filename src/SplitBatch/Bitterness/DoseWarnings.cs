using SplitBatch.Brewing;

namespace SplitBatch.Bitterness;

/// <summary>Sentences about a dose that a reader of its estimate should know.</summary>
internal static class DoseWarnings
{
    internal static IEnumerable<string> Of(Dose dose)
    {
        var (range, kettle) = (dose.Model.Range, dose.Kettle);
        var gravity = kettle.MeanGravity.Specific;
        if (gravity < range.LowestGravity || gravity > range.HighestGravity)
        {
            yield return FormattableString.Invariant(
                $"The mean gravity of the boil, {gravity:0.000}, is outside what {dose.Model.Name} was made for ({range.LowestGravity:0.000} to {range.HighestGravity:0.000}).");
        }

        var rate = dose.Charges.Where(charge => charge.Stage != AdditionStage.Fermenter).Sum(charge => charge.Mass.Grams) / kettle.FinalVolume.Liters;
        if (rate > ValidRange.HighestRate)
        {
            yield return FormattableString.Invariant(
                $"{rate:0.0} g/L of hops is beyond the hop rates behind these formulas ({ValidRange.HighestRate:0} g/L, common practice, no source): the beer will be less bitter than estimated.");
        }

        if (kettle.AfterBoil is not null && dose.Model is not IsomerisationKinetics && dose.Charges.Any(charge => charge.Stage is AdditionStage.FirstWort or AdditionStage.Boil))
        {
            var stand = Isomerisation.Over(kettle.AfterBoil, 0).Conversion / Isomerisation.K1(kettle.BoilingTemperature.DegreesCelsius);
            if (stand >= 1)
            {
                yield return FormattableString.Invariant(
                    $"{dose.Model.Name} was made for wort cooled after the boil; the stand is counted as {stand:0.0} min more of boil for every charge, by the isomerisation rate.");
            }
        }

        for (var i = 0; i < dose.Charges.Length; i++)
        {
            var charge = dose.Charges[i];
            if (dose.IsModelled(i) && dose.Exposures[i].EquivalentMinutes > range.LongestMinutes)
            {
                yield return FormattableString.Invariant(
                    $"{charge.Lot.Name}: {dose.Exposures[i].EquivalentMinutes:0} min is longer than {dose.Model.Name} was made for ({range.LongestMinutes:0} min).");
            }

            if (charge.Stage is AdditionStage.Whirlpool or AdditionStage.Cooling && dose.IsModelled(i) && dose.Model is not IsomerisationKinetics)
            {
                yield return FormattableString.Invariant(
                    $"{charge.Lot.Name}: {dose.Model.Name} knows nothing of hops after flame-out; the stand is counted as {dose.Exposures[i].EquivalentMinutes:0.0} min of boil by the isomerisation rate.");
            }

            if (charge.Stage == AdditionStage.Fermenter && dose.IsModelled(i) is false && dose.Forms[charge.Lot.Form] is { DirectYield: null, Factor: > 0 })
            {
                yield return $"{charge.Lot.Name}: hops in the fermenter are counted as adding no bitterness; a laboratory's bitterness value may still rise.";
            }

            if (charge.Lot.Form == HopForm.Co2Extract && charge.Stage != AdditionStage.Boil && charge.Stage != AdditionStage.FirstWort)
            {
                yield return $"{charge.Lot.Name}: extract that has not been isomerised needs a full boil; little of it will bitter here.";
            }
        }
    }
}
