using SplitBatch.Evidence.Findings;

namespace SplitBatch.Evidence.Phrases;

/// <summary>The two hop doses: weights, estimates, and what else comes with them.</summary>
internal static class DosePhrases
{
    public static Sentence Of(DosesFound finding)
    {
        var (a, b, units) = (finding.Doses.A, finding.Doses.B, finding.Units);
        var (nameA, nameB) = (new Name(finding.NameA), new Name(finding.NameB));
        return finding.Kind switch
        {
            DosesFoundKind.Mass =>
                Sentence.Of($"Half A ({nameA}) was hopped with {Printed.Mass(a.HopMass, units)} holding "
                    + $"{Printed.AlphaMass(a.AlphaMass, units)} of alpha acid, half B ({nameB}) with {Printed.Mass(b.HopMass, units)} "
                    + $"holding {Printed.AlphaMass(b.AlphaMass, units)}."),
            DosesFoundKind.Estimate =>
                Sentence.Of($"By {new Name(a.Estimate.Model.Name)}'s formula the dose of half A is worth "
                    + $"{Printed.Bitterness(a.Bitterness.Value, "IBU")} and that of half B "
                    + $"{Printed.Bitterness(b.Bitterness.Value, "IBU")}."),
            _ => Sentence.Of($"By the form of the hops, half A took {Printed.RoughMass(a.PlantMatter, units)} of plant matter into the "
                + $"kettle and half B {Printed.RoughMass(b.PlantMatter, units)}, and their hops kept back about "
                + $"{Printed.WortHeld(a.WortHeld, units)} and {Printed.WortHeld(b.WortHeld, units)} of wort."),
        };
    }
}
