namespace SplitBatch.Display.Sheets;

/// <summary>The sheets of a panel, written to files for the printer.</summary>
/// <param name="Folder">The folder they were written to, as a reader knows it.</param>
/// <param name="Sheets">The sheets, the sealed ones last.</param>
public sealed record SavedSheets(string Folder, PanelSheets Sheets)
{
    /// <summary>The sheets as a table: what each is for and who must not see it.</summary>
    public Table ToTable() => Table.Of(Sheets.All, "Sheets for the printer")
        .Text("file", sheet => $"{Folder}/{sheet.FileName}")
        .Text("what it is", sheet => sheet.Title)
        .Text("who may see it", sheet => sheet.IsSealed ? "who pours, and nobody else" : "who leads and serves")
        .Note("Open a file in a browser and print it. Those in the folder sealed tell which beer is which: keep them from servers and tasters until every ballot is in.")
        .ToTable();

    /// <summary>For example <c>6 sheets for the printer in sheets; those in the folder sealed tell which beer is which.</c></summary>
    public override string ToString() => Charts.Invariant($"{Sheets.All.Count} sheets for the printer are in {Folder}; those in the folder sealed tell which beer is which.");
}
