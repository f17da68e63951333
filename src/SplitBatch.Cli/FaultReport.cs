using Spectre.Console;

namespace SplitBatch.Cli;

/// <summary>Faults and warnings for a person: in a terminal as blocks, in a file or pipe one on a line.</summary>
internal static class FaultReport
{
    public static void Write(IAnsiConsole console, string folder, IReadOnlyList<Fault> faults)
    {
        var ordered = faults.OrderByDescending(fault => fault.Severity).ToList();
        var wide = !console.Profile.Out.IsTerminal;
        foreach (var fault in ordered)
        {
            if (wide) console.WriteLine($"{Word(fault)}: {fault}");
            else Block(console, fault);
        }

        var (errors, warnings) =
            (ordered.Count(fault => fault.Severity == Severity.Error), ordered.Count(fault => fault.Severity == Severity.Warning));
        console.WriteLine((errors, warnings) switch
        {
            (0, 0) => $"{folder}: nothing wrong and nothing doubtful.",
            (0, _) => $"{folder}: no fault, {Count(warnings, "warning")}. The trial can be used as it stands.",
            (_, 0) => $"{folder}: {Count(errors, "fault")}.",
            _ => $"{folder}: {Count(errors, "fault")}, {Count(warnings, "warning")}.",
        } + (errors > 0 ? " The notebooks will not open it until the faults are mended; some checks only run then." : ""));
    }

    private static void Block(IAnsiConsole console, Fault fault)
    {
        var place = fault.File + (fault.Row is { } row ? $", row {row}" : "") + (fault.Column is { } column ? $", {column}" : "");
        console.MarkupLine($"{(fault.Severity == Severity.Error ? "[red]fault[/]" : "[yellow]warning[/]")}  "
            + $"[bold]{place.EscapeMarkup()}[/]");
        var grid = new Grid().AddColumn(new GridColumn().NoWrap().Padding(2, 0, 2, 0)).AddColumn();
        if (fault.Value is { } value) grid.AddRow(new Text("found"), new Text(value));
        grid.AddRow(new Text("problem"), new Text(fault.Problem));
        if (fault.Accepted is { } accepted) grid.AddRow(new Text("accepted"), new Text(accepted));
        if (fault.Suggestion is { } suggestion) grid.AddRow(new Text("try"), new Text(suggestion));
        console.Write(grid);
        console.WriteLine();
    }

    private static string Word(Fault fault) => fault.Severity == Severity.Error ? "fault" : "warning";

    private static string Count(int number, string what) => number == 1 ? $"1 {what}" : $"{number} {what}s";
}
