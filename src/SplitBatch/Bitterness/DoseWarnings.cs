using SplitBatch.Bitterness.Models;
using SplitBatch.Brewing;

namespace SplitBatch.Bitterness;

/// <summary>Sentences about a dose that a reader of its estimate should know: the model's own, and those that hold by any model.</summary>
internal static class DoseWarnings
{
    internal static IEnumerable<string> Of(Dose dose)
    {
        var kettle = dose.Kettle;
        foreach (var text in dose.Model.Warnings(kettle, dose.Modelled)) yield return text;

        var rate = dose.Charges.Where(charge => charge.Stage != AdditionStage.Fermenter)
            .Sum(charge => charge.Mass.Grams) / kettle.FinalVolume.Liters;
        if (rate > ValidRange.HighestRate)
        {
            var us = Spoken.IsUs(kettle.Volume);
            yield return $"{Spoken.Rate(rate, us)} of hops is beyond the hop rates behind these formulas "
                + $"({Spoken.Rate(ValidRange.HighestRate, us)}, common practice, no source): the beer will be less bitter than estimated.";
        }

        for (var i = 0; i < dose.Charges.Length; i++)
        {
            var charge = dose.Charges[i];
            if (charge.Stage == AdditionStage.Fermenter && dose.IsModelled(i) is false
                && dose.Forms[charge.Lot.Form] is { DirectYield: null, Factor: > 0 })
            {
                yield return $"{charge.Lot.Name}: hops in the fermenter are counted as adding no bitterness; a laboratory's bitterness "
                    + $"value may still rise.";
            }

            if (charge.Lot.Form == HopForm.Co2Extract && charge.Stage != AdditionStage.Boil && charge.Stage != AdditionStage.FirstWort)
            {
                yield return $"{charge.Lot.Name}: extract that has not been isomerised needs a full boil; little of it will bitter here.";
            }
        }
    }
}
