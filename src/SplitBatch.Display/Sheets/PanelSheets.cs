using SplitBatch.Panel;

namespace SplitBatch.Display.Sheets;

/// <summary>All the paper of a panel, ready for a home printer.</summary>
/// <param name="Briefing">For who leads the panel.</param>
/// <param name="Trays">For who serves; blind.</param>
/// <param name="Ballots">For the tasters; blind, two on a page.</param>
/// <param name="Labels">To cut and stick on the cups; blind.</param>
/// <param name="Pouring">For who pours; sealed from the others.</param>
/// <param name="Key">For the envelope.</param>
public sealed record PanelSheets(
    PrintableSheet Briefing, PrintableSheet Trays, PrintableSheet Ballots, PrintableSheet Labels, PrintableSheet Pouring, PrintableSheet Key)
{
    /// <summary>Every sheet, the sealed ones last.</summary>
    public IReadOnlyList<PrintableSheet> All => [Briefing, Trays, Ballots, Labels, Pouring, Key];

    /// <summary>The sheets of a poured plan.</summary>
    /// <param name="pour">The pour plan, which holds the serving plan.</param>
    /// <param name="paper">The paper in the printer.</param>
    public static PanelSheets For(PourPlan pour, PaperSize paper = PaperSize.A4)
    {
        ArgumentNullException.ThrowIfNull(pour);
        var plan = pour.Plan;
        return new(BriefingSheet.Make(plan, pour, paper), TraySheet.Make(plan, paper), BallotSheet.Make(plan, paper),
            LabelSheet.Make(plan, paper), PouringSheet.Make(plan, pour, paper), KeySheet.Make(plan, paper));
    }

    /// <summary>Writes every sheet into a folder; the pouring sheet and the key go into a folder of their own within it, named sealed.</summary>
    /// <returns>The paths of the files.</returns>
    public IReadOnlyList<string> SaveTo(string folder) => [.. All.Select(sheet => sheet.SaveTo(folder))];

    /// <summary>The sheets by name.</summary>
    public override string ToString() => string.Join("; ", All);
}
