using SplitBatch.Bitterness;

namespace SplitBatch.Evidence;

/// <summary>What may be said of the two hop doses, each number in the ledger.</summary>
internal static class DoseClaims
{
    private static readonly string[] Sources = ["charges.csv", "hops.csv", "trial.json"];

    public static IEnumerable<Claim> Of(ChargeMatch doses, string nameA, string nameB)
    {
        var (a, b) = (doses.A, doses.B);
        var model = a.Estimate.Model;
        yield return new Claim(
            "dose.mass",
            $"Half A ({nameA}) was hopped with {a.HopMass.Grams:0.#} g holding {a.AlphaMass.Grams:0.00} g of alpha acid, half B ({nameB}) with {b.HopMass.Grams:0.#} g holding {b.AlphaMass.Grams:0.00} g.",
            "sum of the charges; alpha acid as assayed",
            Sources);
        yield return new Claim(
            "dose.estimate",
            $"By {model.Name}'s formula the two doses are worth {a.Bitterness.Value:0.0} and {b.Bitterness.Value:0.0} IBU.",
            model.Citation,
            Sources);
        yield return new Claim(
            "dose.plant",
            $"Half A carried {a.PlantMatter.Grams:0} g of plant matter into the kettle and half B {b.PlantMatter.Grams:0} g, and their hops kept back about {a.WortHeld.Liters:0.0} and {b.WortHeld.Liters:0.0} L of wort.",
            "hop mass less alpha and beta acids; wort held by form, see the table of form factors",
            Sources);
    }
}
