using SplitBatch.Bitterness;
using SplitBatch.Brewing;

namespace SplitBatch.Evidence;

/// <summary>What may be said of the two hop doses, each number in the ledger.</summary>
internal static class DoseClaims
{
    private static readonly string[] Sources = ["charges.csv", "hops.csv", "trial.json"];

    public static IEnumerable<Claim> Of(ChargeMatch doses, TrialEvidence evidence)
    {
        var (a, b) = (doses.A, doses.B);
        var model = a.Estimate.Model;
        yield return MassClaim(a, b, evidence);
        yield return new Claim(
            "dose.estimate",
            $"By {model.Name}'s formula the dose of half A is worth {a.Bitterness.Value:0.0} IBU and that of half B {b.Bitterness.Value:0.0} IBU.",
            model.Citation,
            Sources);
        yield return PlantClaim(a, b, evidence.Units);
    }

    private static Claim MassClaim(SideDose a, SideDose b, TrialEvidence evidence)
    {
        var method = $"sum of the charges; alpha acid {string.Join(", ", a.Charges.Concat(b.Charges).Select(charge => charge.Lot).Where(lot => lot.Alpha.Fraction > 0).DistinctBy(lot => lot.Name).Select(Basis))}";
        var (nameA, nameB) = (evidence.NameA, evidence.NameB);
        return evidence.Units == UnitSystem.Us
            ? new Claim(
                "dose.mass",
                $"Half A ({nameA}) was hopped with {a.HopMass.Ounces:0.00} oz holding {a.AlphaMass.Ounces:0.000} oz of alpha acid, half B ({nameB}) with {b.HopMass.Ounces:0.00} oz holding {b.AlphaMass.Ounces:0.000} oz.",
                method, Sources)
            : new Claim(
                "dose.mass",
                $"Half A ({nameA}) was hopped with {a.HopMass.Grams:0.#} g holding {a.AlphaMass.Grams:0.00} g of alpha acid, half B ({nameB}) with {b.HopMass.Grams:0.#} g holding {b.AlphaMass.Grams:0.00} g.",
                method, Sources);
    }

    private static string Basis(HopLot lot) => lot.AgedBy is { } model ? $"of {lot.Name} aged to brew day by {model}" : $"of {lot.Name} as assayed";

    private static Claim PlantClaim(SideDose a, SideDose b, UnitSystem units)
    {
        const string Method = "hop mass less alpha and beta acids; wort held by form, see the table of form factors";
        return units == UnitSystem.Us
            ? new Claim(
                "dose.plant",
                $"Half A carried {a.PlantMatter.Ounces:0.0} oz of plant matter into the kettle and half B {b.PlantMatter.Ounces:0.0} oz, and their hops kept back about {a.WortHeld.UsQuarts:0.0} and {b.WortHeld.UsQuarts:0.0} qt of wort.",
                Method, Sources)
            : new Claim(
                "dose.plant",
                $"Half A carried {a.PlantMatter.Grams:0} g of plant matter into the kettle and half B {b.PlantMatter.Grams:0} g, and their hops kept back about {a.WortHeld.Liters:0.0} and {b.WortHeld.Liters:0.0} L of wort.",
                Method, Sources);
    }
}
