using System.Security.Cryptography;
using System.Text;
using SplitBatch.Panel.Serving;
using SplitBatch.Trials.Files;
using SplitBatch.Trials.Reading;
using SplitBatch.Trials.Seals;

namespace SplitBatch.Trials;

/// <content>A panel from its key to its close.</content>
public sealed partial class Trial
{
    /// <summary>
    /// Draws the serving plan of a sealed panel, writes its key, and returns the trial with it. A key that is there already is kept.
    /// </summary>
    /// <param name="name">The panel's name.</param>
    /// <param name="options">Sessions, servers and taster names, or null for the plan's sessions and one server.</param>
    /// <param name="keyFolder">Where the key is kept apart from the trial's folder, which then holds its fingerprint and the bare codes;
    /// null to keep it in the trial's folder.</param>
    /// <param name="clock">The clock; the machine's own unless a test gives another.</param>
    /// <exception cref="ArgumentException">No panel has that name.</exception>
    /// <exception cref="TrialIncompleteException">The panel's plan is not sealed yet, so the key would be drawn for a draft.</exception>
    /// <exception cref="InvalidOperationException">trial.json differs from the seal, the seed stands where the key must not, or the folder
    /// is an example and not a working copy.</exception>
    /// <exception cref="LogException">The folder cannot be written to.</exception>
    /// <example><code>trial = trial.Serve("main");</code></example>
    public Trial Serve(string name = "main", ServingOptions? options = null, string? keyFolder = null, TimeProvider? clock = null)
    {
        var panel = Panel(name);
        var served = Plan.Of(panel.Name, PanelEventKind.Served).Any();
        if (panel.Codes is not null && (served || !panel.Custody.IsSealed)) return this;
        GuardExample();
        GuardSealed(panel);
        var place = panel.Serving is null && keyFolder is not null ? new TrialFolder(keyFolder) : Folder;
        if (panel.Serving is null)
        {
            if (keyFolder is not null && panel.Plan.Seed is not null)
            {
                throw new InvalidOperationException($"The seed of panel {panel.Name} stands in trial.json, and whoever reads that can "
                    + $"draw the key from it. Take it out there and amend the plan; then a seed is drawn that only the key holds.");
            }

            var seed = panel.Plan.Seed ?? RandomNumberGenerator.GetInt32(int.MaxValue);
            var drawn = ServingPlan.Balanced(panel.Plan with { Seed = seed }, options);
            Directory.CreateDirectory(place.Path);
            var salt = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(16));
            Make(place, ServingKeyFile.NameOf(panel.Name), ServingKeyFile.Write(drawn, salt));
            if (keyFolder is not null) Make(Folder, CodeBook.NameOf(panel.Name), CodeBook.Write(KeyIn(place, panel)));
        }

        var key = Fingerprint.Of(File.ReadAllBytes(place.PathOf(ServingKeyFile.NameOf(panel.Name))));
        Record(new PanelEvent($"served-{panel.Name}", PanelEventKind.Served, panel.Name, Now(clock))
        {
            Key = key,
            Seal = LatestSeal!.Fingerprint,
        });
        return Open(Folder.Path);
    }

    /// <summary>
    /// Closes a panel: no ballot is waited for any more, and its count may be known. Returns the trial with it. Doing it again is
    /// harmless.
    /// </summary>
    /// <param name="name">The panel's name.</param>
    /// <param name="day">The day of the close; today when left out.</param>
    /// <param name="keyFolder">Where the key was kept apart; it is compared with its fingerprint and put into the trial's folder. Null
    /// where it lies there.</param>
    /// <param name="who">Who closes it, as the user likes to say.</param>
    /// <param name="clock">The clock; the machine's own unless a test gives another.</param>
    /// <exception cref="ArgumentException">No panel has that name.</exception>
    /// <exception cref="TrialIncompleteException">The panel was not served, has no ballot, or its key is not at hand.</exception>
    /// <exception cref="InvalidOperationException">The key is not the one that was drawn, or the folder is an example and not a working
    /// copy.</exception>
    /// <exception cref="LogException">The folder cannot be written to.</exception>
    /// <example><code>trial = trial.Close("main", new DateOnly(2026, 5, 2));</code></example>
    public Trial Close(string name = "main", DateOnly? day = null, string? keyFolder = null, string who = "", TimeProvider? clock = null)
    {
        var panel = Panel(name);
        GuardExample();
        if (panel.Codes is null) _ = panel.Key;
        var ballots = BallotsIn().GetValueOrDefault(panel.Name);
        if (ballots == 0)
            throw new TrialIncompleteException($"ballots for panel {panel.Name}", $"type them into {BallotFile.NameOf(panel.Name)}",
                "4-panel-statistics");
        if (panel.Serving is null) BringKey(panel, keyFolder);
        var at = Now(clock);
        if (!Plan.Of(panel.Name, PanelEventKind.Closed).Any())
        {
            Record(new PanelEvent($"closed-{panel.Name}", PanelEventKind.Closed, panel.Name, at)
            {
                Day = day ?? DateOnly.FromDateTime(at.DateTime),
                Ballots = ballots,
                Who = who,
            });
        }

        return Open(Folder.Path);
    }

    /// <summary>
    /// The count of a panel that is still open, for somebody who cannot wait. That it was looked at is kept, and goes before the result.
    /// </summary>
    /// <param name="name">The panel's name.</param>
    /// <param name="because">Why, for whoever reads the write-up.</param>
    /// <param name="who">Who looks, as the user likes to say.</param>
    /// <param name="clock">The clock; the machine's own unless a test gives another.</param>
    /// <exception cref="ArgumentException">No panel has that name, or no reason is given.</exception>
    /// <exception cref="TrialIncompleteException">There is no key at hand, or no ballot.</exception>
    /// <exception cref="InvalidOperationException">The folder is an example and not a working copy.</exception>
    /// <exception cref="LogException">The folder cannot be written to; then nothing is shown.</exception>
    /// <example><code>trial.LookEarly("main", because: "the room has to be left at ten")</code></example>
    public EarlyCount LookEarly(string name, string because, string who = "", TimeProvider? clock = null)
    {
        Guard.NotBlank(because);
        GuardExample();
        var panel = Panel(name);
        _ = panel.Key;
        var counted = panel.Counted;
        var number = Plan.Of(panel.Name, PanelEventKind.Looked).Count() + 1;
        if (panel.IsOpen)
            Record(new PanelEvent($"looked-{panel.Name}-{number}", PanelEventKind.Looked, panel.Name, Now(clock))
            {
                Ballots = counted.Returned,
                Because = because.Trim(),
                Who = who,
            });
        return new EarlyCount(panel.Name, counted.Counted, counted.Correct, panel.IsOpen);
    }

    /// <summary>The key of a panel where it is kept apart, for the sheets; it is compared with its fingerprint first.</summary>
    /// <param name="keyFolder">The folder that holds it.</param>
    /// <param name="name">The panel's name.</param>
    /// <exception cref="TrialIncompleteException">It is not there.</exception>
    /// <exception cref="InvalidOperationException">It is not the one that was drawn.</exception>
    public ServingPlan KeyKeptIn(string? keyFolder, string name = "main")
    {
        var panel = Panel(name);
        _ = KeyBytes(panel, keyFolder);
        return KeyIn(new TrialFolder(keyFolder!), panel);
    }

    private void BringKey(PanelRecord panel, string? keyFolder)
    {
        var file = ServingKeyFile.NameOf(panel.Name);
        if (!NewFile.TryMake(Folder.PathOf(file), KeyBytes(panel, keyFolder)))
            throw new InvalidOperationException($"{file} is in the trial's folder already; nothing was changed.");
    }

    private byte[] KeyBytes(PanelRecord panel, string? keyFolder)
    {
        var file = ServingKeyFile.NameOf(panel.Name);
        if (keyFolder is null || !File.Exists(Path.Combine(keyFolder, file)))
        {
            throw new TrialIncompleteException($"key of panel {panel.Name}",
                $"it was kept apart; say in which folder {file} lies (--key-folder, or keyFolder:)", "4-panel-statistics");
        }

        var bytes = File.ReadAllBytes(Path.Combine(keyFolder, file));
        var drawn = Plan.Of(panel.Name, PanelEventKind.Served).FirstOrDefault()?.Key;
        if (Fingerprint.Of(bytes) != drawn)
        {
            throw new InvalidOperationException(
                $"The key in the other folder is not the one that was drawn for panel {panel.Name}: its fingerprint is "
                    + $"{Fingerprint.Of(bytes)}, and {PanelEvent.Log.FileName} holds {drawn?.Spoken ?? "none"}. Nothing was counted.");
        }

        return bytes;
    }

    private void GuardSealed(PanelRecord panel)
    {
        if (LatestSeal is not { } seal)
        {
            throw new TrialIncompleteException($"sealed plan for panel {panel.Name}",
                "when the plan is final, seal it (splitbatch declare, or trial.Seal())", "1-design");
        }

        var open = Plan.Unrecorded.Where(difference => !difference.IsSaidLater).ToList();
        if (open.Count > 0)
        {
            throw new InvalidOperationException($"trial.json differs from {seal.File}: {string.Join("; ", open)}. Put it back, or amend "
                + $"the plan and say why (splitbatch amend, or trial.Amend) before anything is served.");
        }
    }

    private static ServingPlan KeyIn(TrialFolder place, PanelRecord panel)
    {
        var faults = new FaultList();
        var file = ServingKeyFile.NameOf(panel.Name);
        var plan = place.ReadText(file, faults) is { } text
            ? ServingKeyFile.Read(CsvTable.Read(file, new StringReader(text), faults), panel.Plan.Seed, panel.Plan.Expected,
                panel.Plan.Attribute)
            : null;
        return plan ?? throw new TrialFolderException(place.Name, faults);
    }

    private static void Make(TrialFolder place, string file, string text)
    {
        try
        {
            _ = NewFile.TryMake(place.PathOf(file), Encoding.UTF8.GetBytes(text));
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new LogException($"{file} cannot be written: {error.Message} Nothing was served.", error);
        }
    }

    private void Record(PanelEvent happened)
    {
        try
        {
            happened.Append(Folder);
        }
        catch (LogException error) when (error.Fault?.Column == "id")
        {
            // Somebody else did the same a moment ago; what they wrote stands.
        }
    }

    private static DateTimeOffset Now(TimeProvider? clock) => (clock ?? TimeProvider.System).GetLocalNow();
}
