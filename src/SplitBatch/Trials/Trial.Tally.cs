using SplitBatch.Panel.Ballots;
using SplitBatch.Trials.Files;
using SplitBatch.Trials.Reading;
using SplitBatch.Trials.Seals;

namespace SplitBatch.Trials;

/// <content>Counting while the ballots come in.</content>
public sealed partial class Trial
{
    /// <summary>
    /// Reads a panel's ballots as they stand in the files now, and says who has answered, not how. Waits while somebody is adding one.
    /// </summary>
    /// <param name="panel">The panel's name.</param>
    /// <exception cref="ArgumentException">No panel has that name.</exception>
    /// <exception cref="TrialIncompleteException">There is no serving key yet.</exception>
    /// <exception cref="LogException">Somebody keeps the file for too long.</exception>
    public LiveTally Tally(string panel = "main")
    {
        var record = Panel(panel);
        if (record.Codes is null) _ = record.Key;
        var faults = new FaultList();
        var ballots = PanelBallots.Read(Folder, record.Name, record.Import, faults, name =>
            Folder.Holds(name) && Folder.ReadText(name, faults) is { Length: > 0 } text
                ? CsvTable.Read(name, new StringReader(text), faults, Description.Decimals)
                : null);
        return new LiveTally(new PanelRecord(record.Plan, record.Serving, ballots.Ballots)
        {
            BallotFiles = ballots.Files,
            Import = record.Import,
            Custody = record.Custody,
            Codes = record.Codes,
        }, faults);
    }

    /// <summary>Adds one ballot, and says who has answered. Several people may do so at once, each in a notebook of their own.</summary>
    /// <param name="taster">Who tasted, by code and not by name.</param>
    /// <param name="answer">What the taster wrote; blank where nothing was.</param>
    /// <param name="panel">The panel's name.</param>
    /// <exception cref="ArgumentException">No panel has that name, the key has no such taster, or the answer is none that this taster
    /// could give; nothing is written.</exception>
    /// <exception cref="TrialIncompleteException">There is no serving key yet.</exception>
    /// <exception cref="InvalidOperationException">The folder is an example and not a working copy.</exception>
    public LiveTally Enter(string taster, string answer, string panel = "main")
    {
        Append(Panel(panel), taster, answer);
        var tally = Tally(panel);
        CloseAtTheLast(tally);
        return tally;
    }

    /// <summary>Adds one ballot to a panel, and returns the trial with it, for a verdict. Several people may do so at once.</summary>
    /// <inheritdoc cref="Enter"/>
    public Trial AddBallot(string panel, string taster, string answer)
    {
        Append(Panel(panel), taster, answer);
        CloseAtTheLast(Tally(panel));
        return Open(Folder.Path);
    }

    /// <summary>
    /// With the last ballot a sealed panel is over, and what comes in later does not count: so the close is put on record.
    /// </summary>
    private void CloseAtTheLast(LiveTally tally)
    {
        var panel = tally.Panel;
        if (!panel.Custody.IsSealed || panel.Custody.Closed is not null || !(tally.IsComplete || tally.PourOn == false)) return;
        var at = Now(null);
        Record(new PanelEvent($"closed-{panel.Name}", PanelEventKind.Closed, panel.Name, at)
        {
            Day = DateOnly.FromDateTime(at.DateTime),
            Ballots = panel.Ballots.Count,
            Because = tally.IsComplete ? "the last ballot is in" : "the sequential plan has reached a line",
        });
    }

    private void Append(PanelRecord panel, string taster, string answer)
    {
        GuardExample();
        var ballot = new Ballot(Guard.NotBlank(taster).Trim(), (answer ?? "").Trim());
        if ((panel.Codes ?? CodeBook.Of(panel.Key)).Refusal(ballot) is { } refusal)
        {
            throw new ArgumentException($"{ballot.Taster}: {refusal}. Nothing was written; ask the taster.");
        }

        BallotFile.Append(Folder, panel.Name, ballot);
    }
}
