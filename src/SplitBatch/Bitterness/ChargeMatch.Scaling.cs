using SplitBatch.Brewing;
using UnitsNet;

namespace SplitBatch.Bitterness;

public sealed partial record ChargeMatch
{
    /// <summary>The dose with the charges that are not fixed scaled by one factor, so that its bitterness is the target.</summary>
    private static Dose Scaled(Dose dose, double target)
    {
        var names = string.Join(", ", dose.Charges.Select(charge => charge.Lot.Name).Distinct());
        var (none, once) = (dose.Bitterness(0), dose.Bitterness());
        if (once - none <= 1e-12)
        {
            throw new ArgumentException($"No mass of {names} adds bitterness here: {Reason(dose)}");
        }

        if (none > target)
        {
            throw new ArgumentException(FormattableString.Invariant(
                $"The fixed charges of {names} give {Printed.Bitterness(none)} IBU, already above {Printed.Bitterness(target)} IBU."));
        }

        double low = 0, high = 1;
        while (dose.Bitterness(high) < target)
        {
            high *= 2;
            if (high > 1e9)
                throw new ArgumentException(FormattableString.Invariant($"No mass of {names} reaches {Printed.Bitterness(target)} IBU."));
        }

        for (var step = 0; step < 100 && high - low > 1e-14 * high; step++)
        {
            var middle = (low + high) / 2;
            if (dose.Bitterness(middle) < target) low = middle;
            else high = middle;
        }

        var scale = (low + high) / 2;
        return dose.With([.. dose.Charges.Select(charge => charge.IsFixed ? charge : charge with { Mass = charge.Mass * scale })]);
    }

    /// <summary>The dose as the scale will weigh it: each charge to the nearest step, none to nothing.</summary>
    private static Dose Round(Dose dose, Mass step) => dose.With([.. dose.Charges.Select(charge => charge.IsFixed || charge.Mass.Grams == 0
        ? charge
        : charge with { Mass = Math.Max(1, Math.Round(charge.Mass / step)) * step })]);

    private static string Reason(Dose dose) => dose.Charges switch
    {
        { Length: > 0 } charges when charges.All(charge => charge.IsFixed) => "all charges are fixed.",
        { } charges when charges.All(charge => charge.Lot.Form == HopForm.Oil) => "hop oil holds no alpha acid.",
        _ => "the charges are too late or too small; put one into the boil.",
    };
}
