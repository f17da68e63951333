using SplitBatch.Bitterness;
using SplitBatch.Brewing;
using SplitBatch.Trials.Files;
using SplitBatch.Trials.Reading;
using UnitsNet;

namespace SplitBatch.Trials;

/// <summary>One split-batch trial, read from its folder as a whole.</summary>
/// <example><code>var trial = Trial.Open("my-trial");</code></example>
public sealed partial class Trial
{
    private readonly TrialContent content;
    private readonly Lazy<IReadOnlyList<StorageLoss>> lotsOnBrewDay;
    private readonly Lazy<IReadOnlyDictionary<Side, IReadOnlyList<HopCharge>>> charges;
    private readonly Lazy<ChargeMatch?> doses;

    private Trial(TrialFolder folder, TrialContent content)
    {
        Folder = folder;
        this.content = content;
        lotsOnBrewDay = new(Aged);
        charges = new(ChargesOnBrewDay);
        doses = new(Dosed);
    }

    /// <summary>The folder on disk.</summary>
    public TrialFolder Folder { get; }

    /// <summary>What the trial asks and what it changes.</summary>
    public TrialDescription Description => content.Description;

    /// <summary>The trial's title.</summary>
    public string Title => Description.Title;

    /// <summary>The question, as one sentence.</summary>
    public string Question => Description.Question;

    /// <summary>The kettle of one half; both are alike unless the batch log says otherwise.</summary>
    /// <exception cref="TrialIncompleteException">trial.json describes no kettle yet.</exception>
    public Kettle Kettle => KettleInUnits
        ?? throw new TrialIncompleteException("kettle", "describe it in trial.json under \"kettle\"", "1-design");

    /// <summary>Whether trial.json describes the kettle.</summary>
    public bool HasKettle => content.Kettle is not null;

    /// <summary>The hop lots as assayed, in the file's order.</summary>
    public IReadOnlyList<HopLot> Lots => content.Lots;

    /// <summary>The day of the brew: from trial.json, or else the first day of the batch log; null before either is known.</summary>
    public DateOnly? BrewDay => Description.BrewDay ?? content.BatchLog?.Entries.Min(entry => (DateOnly?)entry.When);

    /// <summary>
    /// What each lot still held on brew day, in the file's order; a lot that cannot be aged stands as assayed and says why.
    /// </summary>
    /// <example><code>trial.LotsOnBrewDay.Table()</code></example>
    public IReadOnlyList<StorageLoss> LotsOnBrewDay => lotsOnBrewDay.Value;

    /// <summary>The hop charges of each half as weighed, their alpha acid as on brew day; empty until they are logged.</summary>
    public IReadOnlyDictionary<Side, IReadOnlyList<HopCharge>> Charges => charges.Value;

    /// <summary>What the scale can resolve; where trial.json does not say, 1 g or 0.05 oz.</summary>
    public Mass Scale => content.Scale is { } scale ? InUnits(scale) : IsUs ? Mass.FromOunces(0.05) : Mass.FromGrams(1);

    /// <summary>The estimated bitterness that both halves aim at, in IBU.</summary>
    /// <exception cref="TrialIncompleteException">trial.json sets no target yet.</exception>
    public double Target => Description.Target?.Value
        ?? throw new TrialIncompleteException("target", "set it in trial.json as \"target\": { \"bitterness [IBU]\": 30 }", "1-design");

    /// <summary>Warnings about what is legal but dubious in the folder.</summary>
    public IReadOnlyList<Fault> Warnings => content.Warnings;

    /// <summary>The lot of a name, as assayed.</summary>
    /// <exception cref="ArgumentException">No lot has that name; the message offers the nearest.</exception>
    public HopLot Lot(string name) =>
        Lots.FirstOrDefault(lot => string.Equals(lot.Name, name, StringComparison.OrdinalIgnoreCase))
        ?? throw Unknown("hop lot", name, Lots.Select(lot => lot.Name));

    /// <summary>
    /// The lot that bitters a half, as on brew day: the one of its first charge, or before any is weighed the first lot of hops.csv for A
    /// and the last for B.
    /// </summary>
    /// <exception cref="TrialIncompleteException">hops.csv holds no lot yet.</exception>
    public HopLot LotOf(Side side) =>
        Charges[side].Count > 0 ? Charges[side][0].Lot
        : Lots.Count > 0 ? LotsOnBrewDay[side == Side.A ? 0 : Lots.Count - 1].OnBrewDay
        : throw new TrialIncompleteException("hop lot", "list your lots in hops.csv", "1-design");

    /// <summary>In what the two bittering lots differ besides the variable; empty when both halves use one lot.</summary>
    public IReadOnlyList<HopConfound> HopConfounds =>
        Lots.Count == 0 || LotOf(Side.A) == LotOf(Side.B)
            ? []
            : HopConfound.Between(LotOf(Side.A), LotOf(Side.B), Description.HopVariable);

    /// <summary>
    /// The doses as weighed, compared, with alpha acid as on brew day; null until both halves have charges and the kettle is known.
    /// </summary>
    public ChargeMatch? Doses => doses.Value;

    /// <summary>The doses as weighed, compared, for a step that cannot do without them.</summary>
    /// <exception cref="TrialIncompleteException">A half has no charge yet, or the kettle is not described.</exception>
    public ChargeMatch WeighedDoses =>
        Doses ?? throw new TrialIncompleteException("hop charges of both halves", "write what was weighed into charges.csv",
            "2-hop-charges");

    /// <summary>For example <c>Amber ale: cones or pellets? (invented) A: whole cones. B: pellets.</c></summary>
    public override string ToString() =>
        $"{Title}{(Description.Invented ? " (invented)" : "")} A: {Description.Beers[Side.A]}. B: {Description.Beers[Side.B]}.";

    private static ArgumentException Unknown(string what, string name, IEnumerable<string> known)
    {
        var names = known.ToList();
        var offer = Nearest.Suggestion(name, names) is { } suggestion ? " " + suggestion : "";
        var list = names.Count == 0 ? "there is none yet" : "there are: " + string.Join(", ", names);
        return new ArgumentException($"This trial has no {what} \"{name}\"; {list}.{offer}", nameof(name));
    }
}
