using SplitBatch.Display.Tables;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Serving;
using SplitBatch.Trials.Reading;
using SplitBatch.Trials;
using static System.FormattableString;

namespace SplitBatch.Display.Sheets;

/// <summary>All the paper of a panel, ready for a home printer.</summary>
/// <param name="Briefing">For who leads the panel.</param>
/// <param name="Trays">For who serves; blind.</param>
/// <param name="Ballots">For the tasters; blind, two on a page.</param>
/// <param name="Labels">To cut and stick on the cups; blind.</param>
/// <param name="Pouring">For who pours; sealed from the others.</param>
/// <param name="Key">For the envelope.</param>
public sealed record PanelSheets(
    PrintableSheet Briefing, PrintableSheet Trays, PrintableSheet Ballots, PrintableSheet Labels, PrintableSheet Pouring,
    PrintableSheet Key)
{
    /// <summary>Every sheet, the sealed ones last.</summary>
    public IReadOnlyList<PrintableSheet> All => [Briefing, Trays, Ballots, Labels, Pouring, Key];

    /// <summary>The sheets of a poured plan.</summary>
    /// <param name="pour">The pour plan, which holds the serving plan and the allergens.</param>
    /// <param name="paper">The paper in the printer.</param>
    /// <param name="custody">How the panel's plan was kept; null for a plan that belongs to no trial.</param>
    /// <exception cref="ArgumentException">Nobody has said which allergens are in the beers.</exception>
    public static PanelSheets For(PourPlan pour, PaperSize paper = PaperSize.A4, PlanCustody? custody = null)
    {
        ArgumentNullException.ThrowIfNull(pour);
        var plan = pour.Plan;
        var allergens = pour.Options.Allergens
            ?? throw new ArgumentException("The sheets name the allergens in the beers, and nobody has said which there are: give "
                + "PourOptions its Allergens, as Allergens.Of(\"barley\", \"lactose\") or Allergens.Of(\"none but barley\").",
                nameof(pour));
        return new(BriefingSheet.Make(plan, pour, allergens, paper, custody), TraySheet.Make(plan, paper),
            BallotSheet.Make(plan, allergens, paper),
            LabelSheet.Make(plan, paper), PouringSheet.Make(plan, pour, paper), KeySheet.Make(plan, paper));
    }

    /// <summary>
    /// The sheets of a trial's panel, with the strength of the beers from the batch log and the paper that its units suggest.
    /// </summary>
    /// <param name="trial">The trial.</param>
    /// <param name="panel">The panel's name.</param>
    /// <param name="options">How it is poured; null for the defaults in the trial's units.</param>
    /// <param name="key">The key, where it is kept apart from the trial's folder.</param>
    /// <exception cref="TrialIncompleteException">The panel has no key yet, the batch log does not tell how strong the beers are, or
    /// nobody has said which allergens they contain.</exception>
    public static PanelSheets Of(Trial trial, string panel = "main", PourOptions? options = null, ServingPlan? key = null) =>
        PourOf(trial, panel, options, key) is { Options.Allergens: not null } pour
            ? For(pour, trial.Description.Units == UnitSystem.Us ? PaperSize.Letter : PaperSize.A4, trial.Panel(panel).Custody)
            : throw new TrialIncompleteException(
                "word on allergens", "write what is in the beers into trial.json, as \"allergens\": [\"barley\", \"lactose\"], or [\"none "
                    + "but barley\"]; no sheet is printed until then", "1-design");

    /// <summary>Writes the sheets of a trial's panel into the folder <c>sheets</c> of the trial.</summary>
    /// <param name="trial">The trial.</param>
    /// <param name="panel">The panel's name.</param>
    /// <exception cref="TrialIncompleteException">The panel has no key yet, the batch log does not tell how strong the beers are, or
    /// nobody has said which allergens they contain.</exception>
    /// <exception cref="InvalidOperationException">The folder is an example and not a working copy.</exception>
    /// <example><code>PanelSheets.Save(trial)</code></example>
    public static SavedSheets Save(Trial trial, string panel = "main")
    {
        ArgumentNullException.ThrowIfNull(trial);
        var sheets = Of(trial, panel);
        if (trial.Description.Invented && !trial.Folder.IsWorkingCopy)
            throw new InvalidOperationException(
                $"\"{trial.Folder.Name}\" is an example and stays as it came; open it with Trial.WorkOn to work on a copy.");
        var folder = Path.Combine(trial.Folder.Path, "sheets");
        sheets.SaveTo(folder);
        return new SavedSheets($"{trial.Folder.Name}/sheets", sheets);
    }

    /// <summary>The pour plan of a trial's panel, with the strength of the beers from the batch log.</summary>
    /// <param name="trial">The trial.</param>
    /// <param name="panel">The panel's name.</param>
    /// <param name="options">How it is poured; null for the defaults in the trial's units.</param>
    /// <param name="key">The key, where it is kept apart from the trial's folder.</param>
    /// <exception cref="TrialIncompleteException">The panel has no key yet, the batch log does not tell how strong the beers are, or
    /// nobody has said which allergens they contain.</exception>
    public static PourPlan PourOf(Trial trial, string panel = "main", PourOptions? options = null, ServingPlan? key = null)
    {
        ArgumentNullException.ThrowIfNull(trial);
        var plan = key ?? trial.Panel(panel).Key;
        var poured = options ?? PourOptions.For(trial.Description.Units);
        return trial.BatchLog.Strength(Side.A) is { } a && trial.BatchLog.Strength(Side.B) is { } b
            ? PourPlan.For(plan, a, b, poured with { Allergens = poured.Allergens ?? trial.Description.Allergens })
            : throw new TrialIncompleteException(
                "strength of the beers", "log original and final gravity of both halves, or their \"alcohol\" in % vol, as on a label",
                "1-design");
    }

    /// <summary>
    /// Writes every sheet into a folder; the pouring sheet and the key go into a folder of their own within it, named sealed.
    /// </summary>
    /// <param name="folder">The folder.</param>
    /// <param name="apart">Where that folder of their own lies instead, so that nobody who serves comes across it; null for within the
    /// first.</param>
    /// <returns>The paths of the files.</returns>
    public IReadOnlyList<string> SaveTo(string folder, string? apart = null) =>
        [.. All.Select(sheet => sheet.SaveTo(sheet.IsSealed ? apart ?? folder : folder))];

    /// <summary>The sheets by name.</summary>
    public override string ToString() => string.Join("; ", All);
}

/// <summary>The sheets of a panel, written to files for the printer.</summary>
/// <param name="Folder">The folder they were written to, as a reader knows it.</param>
/// <param name="Sheets">The sheets, the sealed ones last.</param>
public sealed record SavedSheets(string Folder, PanelSheets Sheets)
{
    /// <summary>The sheets as a table: what each is for and who must not see it.</summary>
    public Table ToTable() => TableOf.Each(Sheets.All, "Sheets for the printer")
        .Text("file", sheet => $"{Folder}/{sheet.FileName}")
        .Text("what it is", sheet => sheet.Title)
        .Text("who may see it", sheet => sheet.IsSealed ? "who pours, and nobody else" : "who leads and serves")
        .Note("Open a file in a browser and print it. Those in the folder sealed show which beer is which: keep them from servers and "
            + "tasters until every ballot is in.")
        .ToTable();

    /// <summary>For example <c>6 sheets for the printer in sheets; those in the folder sealed show which beer is which.</c></summary>
    public override string ToString() =>
        Invariant($"{Sheets.All.Count} sheets for the printer are in {Folder}; those in the folder sealed show which beer is which.");
}
