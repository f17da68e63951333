using SplitBatch.Evidence;
using SplitBatch.Panel.Ballots;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Serving;
using SplitBatch.Trials.Reading;
using SplitBatch.Trials.Seals;

namespace SplitBatch.Proof.Sealed;

/// <summary>
/// A sealed trial without a folder around it: the same seal, history, custody and count as a trial that is read from one.
/// </summary>
internal sealed class SealedPanel
{
    private static readonly DateTimeOffset Sealed = new(2026, 3, 1, 12, 0, 0, TimeSpan.Zero);
    private readonly SealChain chain;
    private readonly TrialPlan plan;

    public SealedPanel(params PanelPlan[] panels)
    {
        plan = PlanOf(panels);
        chain = new([Make(1, plan, null, 0)], []);
    }

    /// <summary>When the first ballot comes in.</summary>
    public static DateTimeOffset Evening { get; } = Sealed.AddDays(1);

    /// <summary>What may be said after the ballots are in, whatever was done to the plan meanwhile.</summary>
    /// <param name="now">The panels as trial.json has them at the end; the first decides.</param>
    /// <param name="onRecord">Whether the change was amended on record.</param>
    /// <param name="served">Each panel's key and ballots.</param>
    /// <param name="looks">How often the count of the first panel was looked at on record.</param>
    public Verdict Verdict(PanelPlan[] now, bool onRecord,
        IReadOnlyDictionary<string, (ServingPlan Key, IReadOnlyList<Ballot> Ballots)> served, int looks = 0)
    {
        var stands = PlanOf(now);
        var seals = onRecord
            ? new SealChain([.. chain.Seals,
                Make(2, stands, chain.Seals[0].Fingerprint, served.Values.Max(panel => panel.Ballots.Count))], [])
            : chain;
        var events = plan.Panels.SelectMany(panel => Events(panel.Name, served[panel.Name].Ballots.Count, looks)).ToList();
        var state = new PlanState(seals, events, stands);
        var records = plan.Panels.Select(panel => Record(panel.Name, state, served[panel.Name])).ToList();
        var evidence = EvidenceOf(records);
        if (records.All(record => record.Custody.Changes.Count == 0)) return Evidence.Verdict.Of(evidence);
        var changed = now.Select(panel => new PanelRecord(panel, InDirection(served[panel.Name].Key, panel), served[panel.Name].Ballots));
        return Evidence.Verdict.Of(evidence with { Changed = EvidenceOf([.. changed]) });
    }

    private static PanelRecord Record(string name, PlanState state, (ServingPlan Key, IReadOnlyList<Ballot> Ballots) served)
    {
        var history = PanelHistory.Of(state.Chain, name, served.Ballots, state.Now);
        var custody = state.CustodyOf(name, history, () => null);
        return new(history.InForce!.Plan.Panel(name)! with { Declared = custody.Day }, served.Key, served.Ballots) { Custody = custody };
    }

    private static ServingPlan InDirection(ServingPlan key, PanelPlan panel) =>
        key.Expected == panel.Expected ? key : ServingKey.ToPlan(key.Key, key.Seed, panel.Expected, panel.Attribute);

    private static IEnumerable<PanelEvent> Events(string panel, int ballots, int looks) =>
    [
        .. Enumerable.Range(1, looks)
            .Select(look => new PanelEvent($"looked-{look}", PanelEventKind.Looked, panel, Evening.AddMinutes(look))
            {
                Ballots = look,
                Because = "cannot wait",
            }),
        new PanelEvent("closed", PanelEventKind.Closed, panel, Evening.AddHours(5))
        {
            Day = DateOnly.FromDateTime(Evening.Date),
            Ballots = ballots,
        },
    ];

    // The checks for bias deal answers out at random and take long; they have no part in this.
    private static TrialEvidence EvidenceOf(IReadOnlyList<PanelRecord> records) => new()
    {
        Variable = "hop lot", NameA = "cones", NameB = "pellets",
        Panels = [.. records.Where(record => record.HasCount).Select(record => record.Finding with { BiasWhenAsked = null })],
    };

    private static Seal Make(int number, TrialPlan plan, Fingerprint? before, int ballots)
    {
        var seal = new Seal
        {
            Number = number, Title = "Cones or pellets?", At = Sealed.AddDays(2 * (number - 1)), MadeBy = "a proof", Before = before,
            Salt = "none",
            Because = number == 1 ? null : "it pleases", BallotsThen = plan.Panels.ToDictionary(panel => panel.Name, _ => ballots),
            Plan = plan,
        };
        return SealText.Read(seal.File, SealText.Write(seal), [])!;
    }

    private static TrialPlan PlanOf(PanelPlan[] panels) => new()
    {
        Question = "Can tasters tell?", Variable = "hop lot",
        Beers = new Dictionary<Side, string> { [Side.A] = "cones", [Side.B] = "pellets" }, Panels = panels, Deciding = panels[0].Name,
    };
}
