using SplitBatch.Panel.Planning;
using SplitBatch.Trials.Files;
using SplitBatch.Trials.Reading;
using SplitBatch.Trials.Seals;

namespace SplitBatch.Trials;

/// <content>Declaring: the plan is shown, sealed, and amended on record.</content>
public sealed partial class Trial
{
    /// <summary>How the plan stands: its seals, what happened to its panels, what trial.json says now.</summary>
    public PlanState Plan => content.State;

    /// <summary>The newest seal; null where the plan is not sealed.</summary>
    public Seal? LatestSeal => Plan.Chain.Latest;

    /// <summary>
    /// The plan of trial.json in plain words: what it can find out and what it cannot, and what it costs. Nothing is written.
    /// </summary>
    /// <exception cref="TrialIncompleteException">trial.json plans no panel yet.</exception>
    /// <example><code>trial.Declare()</code></example>
    public Declaration Declare() => Declaration.Of(Planned(), Description.Units);

    /// <summary>
    /// Seals the plan of trial.json and returns the trial with it. Doing it again is harmless while the plan stays as it is.
    /// </summary>
    /// <param name="clock">The clock; the machine's own unless a test gives another.</param>
    /// <exception cref="TrialIncompleteException">trial.json plans no panel yet.</exception>
    /// <exception cref="InvalidOperationException">Another plan is sealed already, or the folder is an example and not a working
    /// copy.</exception>
    /// <exception cref="LogException">The folder cannot be written to.</exception>
    /// <example><code>trial = trial.Seal();</code></example>
    public Trial Seal(TimeProvider? clock = null) => AddSeal(null, clock);

    /// <summary>
    /// Seals the plan as trial.json has it now in place of the one sealed before, and says why. Before the first ballot that is an
    /// amendment;
    /// after it a departure, which leads whatever is said of the result. Returns the trial with it.
    /// </summary>
    /// <param name="because">Why, for whoever reads the write-up.</param>
    /// <param name="clock">The clock; the machine's own unless a test gives another.</param>
    /// <exception cref="ArgumentException">No reason is given.</exception>
    /// <exception cref="InvalidOperationException">The plan is not sealed yet, or the folder is an example and not a working
    /// copy.</exception>
    /// <exception cref="LogException">The folder cannot be written to.</exception>
    /// <example><code>trial = trial.Amend("two tasters are ill; 34 instead of 36");</code></example>
    public Trial Amend(string because, TimeProvider? clock = null) => AddSeal(Guard.NotBlank(because).Trim(), clock);

    private Trial AddSeal(string? because, TimeProvider? clock)
    {
        GuardExample();
        _ = new SealDesk(Folder, clock ?? TimeProvider.System).Add(Title, Planned(), BallotsIn, because);
        return Open(Folder.Path);
    }

    private TrialPlan Planned() => Plan.Now.Panels.Count > 0 ? Plan.Now
        : throw new TrialIncompleteException("planned panel", $"describe one under \"panels\" in {TrialFolder.DescriptionFile}",
            "1-design");

    /// <summary>How many ballots of each panel the files hold now.</summary>
    private Dictionary<string, int> BallotsIn() => Panels.ToDictionary(
        panel => panel.Name,
        panel => PanelBallots.Read(Folder, panel.Name, panel.Import, [], name =>
            Folder.Holds(name) && Folder.ReadText(name, []) is { Length: > 0 } text
                ? CsvTable.Read(name, new StringReader(text), [], Description.Decimals)
                : null).Ballots.Count);
}
