using SplitBatch.Panel.Ballots;
using SplitBatch.Trials.Files;

namespace SplitBatch.Trials.Reading;

/// <summary>All ballots of one panel, wherever they were written: in the panel's own file, in a web form's export, or in both.</summary>
/// <param name="Ballots">The ballots, in the files' order.</param>
/// <param name="Files">The files within the folder that they came from.</param>
internal sealed record PanelBallots(IReadOnlyList<Ballot> Ballots, IReadOnlyList<string> Files)
{
    /// <summary>Reads the files as they stand; one that is not there yet is no fault.</summary>
    /// <param name="folder">The trial folder.</param>
    /// <param name="panel">The panel's name.</param>
    /// <param name="import">How a web form's export is read; null where ballots are typed.</param>
    /// <param name="faults">Takes what is wrong.</param>
    /// <param name="table">Reads a CSV file by name; null where the folder does not hold it.</param>
    public static PanelBallots Read(TrialFolder folder, string panel, BallotImport? import, FaultList faults,
        Func<string, CsvTable?> table)
    {
        List<Ballot> ballots = [];
        List<string> files = [];
        if (table(BallotFile.NameOf(panel)) is { } typed)
        {
            ballots.AddRange(BallotFile.Read(typed));
            files.Add(typed.File);
        }

        if (import is not null && folder.Holds(import.File) && folder.ReadText(import.File, faults) is { } text)
        {
            ballots.AddRange(import.Read(text, faults));
            files.Add(import.File);
        }

        return new(ballots, files);
    }
}
