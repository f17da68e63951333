using System.Globalization;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Planning;

/// <summary>What was done at the panel, for comparison with what was declared.</summary>
/// <param name="Protocol">The protocol that was served.</param>
/// <param name="Tasters">People whose answers are counted.</param>
/// <param name="Sets">Sets that are counted, all replicates together.</param>
public sealed record PanelPractice(Protocol Protocol, int Tasters, int Sets)
{
    /// <summary>The level used in the analysis; null where the declared one is used.</summary>
    public double? Alpha { get; init; }

    /// <summary>The margin used in the analysis; null where the declared one is used.</summary>
    public double? Margin { get; init; }

    /// <summary>The error used against the margin; null where the declared one is used.</summary>
    public double? Beta { get; init; }

    /// <summary>The seed of the serving plan; null where not known.</summary>
    public int? Seed { get; init; }

    /// <summary>How many sittings there were; null where not known.</summary>
    public int? Sessions { get; init; }

    /// <summary>How it was decided to stop; null where not known.</summary>
    public StoppingRule? Stopping { get; init; }

    /// <summary>How often the count was looked at before the end, with the choice to stop.</summary>
    public int EarlyLooks { get; init; }

    /// <summary>The day of serving; null where not known.</summary>
    public DateOnly? Served { get; init; }

    /// <summary>How the serving orders were used; null where not known.</summary>
    public ServingBalance? Orders { get; init; }
}

/// <summary>One point in which practice departed from the plan, and what it means for the conclusion.</summary>
/// <param name="What">The point: protocol, tasters, alpha ...</param>
/// <param name="Planned">What was declared.</param>
/// <param name="Done">What was done.</param>
/// <param name="Meaning">What it does to the conclusion.</param>
/// <param name="Severity">An error where the planned conclusion cannot be drawn any more.</param>
public sealed record Departure(string What, string Planned, string Done, string Meaning, Severity Severity)
{
    /// <summary>Which point it is.</summary>
    public required DepartureKind Kind { get; init; }

    /// <summary>When a sealed entry was changed, and why; empty for other departures.</summary>
    public string WhenAndWhy { get; init; } = "";

    /// <summary>
    /// How often stopping when one likes finds a difference that is not there; null where that is not the point, or not known.
    /// </summary>
    public double? FalselyShown { get; init; }

    /// <summary>Whether it departs from a sealed plan, so that it goes before the result in a headline.</summary>
    public bool IsOfASealedPlan => Kind >= DepartureKind.ChangedTooLate;

    internal static IReadOnlyList<Departure> Between(PanelPlan plan, PanelPractice practice)
    {
        ArgumentNullException.ThrowIfNull(practice);
        var found = new List<Departure>();
        if (plan.Declared is not { } declared)
        {
            found.Add(
                new("declared", "before serving", "not declared",
                    "Nothing was fixed beforehand, so the result is a lead to follow and not a test.", Severity.Error)
                    {
                        Kind = DepartureKind.NotDeclared,
                    });
        }
        else if (practice.Served < declared)
        {
            found.Add(
                new("declared", Day(declared), $"served {Day(practice.Served.Value)}",
                    "The plan was written after the panel was served, so the result is a lead to follow and not a test.", Severity.Error)
                    {
                        Kind = DepartureKind.DeclaredAfterServing,
                    });
        }

        if (!ReferenceEquals(plan.Protocol, practice.Protocol))
        {
            found.Add(new("protocol", plan.Protocol.Name, practice.Protocol.Name,
                "Another question was asked, with another guessing chance.", Severity.Error) { Kind = DepartureKind.Protocol });
        }

        if (plan.Stopping == StoppingRule.Fixed && practice.Tasters < plan.Tasters)
        {
            found.Add(
                new("tasters", Whole(plan.Tasters), Whole(practice.Tasters),
                    "Fewer tasters than planned: the panel can show and rule out less. If the count was known when it stopped, the error "
                        + "is larger than stated.", Severity.Warning) { Kind = DepartureKind.FewerTasters });
        }

        if (plan.Stopping == StoppingRule.Fixed && practice.Tasters > plan.Tasters)
        {
            found.Add(
                new("tasters", Whole(plan.Tasters), Whole(practice.Tasters),
                    "More tasters than planned: sound only if the count was not known when they were added.", Severity.Warning)
                    {
                        Kind = DepartureKind.MoreTasters,
                    });
        }

        if (practice.Sets != practice.Tasters * plan.Replicates)
        {
            found.Add(
                new("sets", $"{plan.Replicates} for each taster",
                    $"{practice.Sets} for {practice.Tasters} {(practice.Tasters == 1 ? "taster" : "tasters")}",
                    "Not every taster counts with as many sets as planned.", Severity.Warning) { Kind = DepartureKind.Sets });
        }

        Compare(found, "alpha", plan.Alpha, practice.Alpha);
        Compare(found, "margin", plan.Margin, practice.Margin);
        Compare(found, "beta", plan.Beta, practice.Beta);
        if ((practice.Sessions, plan.Sessions) is ({ } sat, { } stated) && sat != stated)
        {
            found.Add(
                new("sessions", Whole(stated), Whole(sat),
                    "Sittings differ in evening, glasses and company, so more or fewer of them make another panel.", Severity.Warning)
                    {
                        Kind = DepartureKind.Sessions,
                    });
        }

        if ((practice.Seed, plan.Seed) is ({ } seed, { } planned) && seed != planned)
        {
            found.Add(
                new("seed", Whole(planned), Whole(seed),
                    "The orders served are not the ones the plan would make; the key must be the one that was served.", Severity.Warning)
                    {
                        Kind = DepartureKind.Seed,
                    });
        }

        if (practice.Orders is { IsBalanced: false } orders)
        {
            found.Add(new("serving orders", "each equally often", orders.InWords, orders.IsLopsided
                ? "A liking for a position can pass for a difference between the beers, so the result is a lead to follow and not a test."
                : "A liking for a position weighs a little in the count.", orders.IsLopsided ? Severity.Error : Severity.Warning)
                {
                    Kind = DepartureKind.Orders,
                });
        }

        if (practice.Stopping is { } stopping && stopping != plan.Stopping)
        {
            found.Add(new("stopping", Rule(plan.Stopping), Rule(stopping), "The stated error rates belong to the declared rule.",
                Severity.Error) { Kind = DepartureKind.Stopping });
        }

        if (practice.EarlyLooks > 0 && plan.Stopping == StoppingRule.Fixed)
        {
            found.Add(
                new("looks", "none before the end", Whole(practice.EarlyLooks),
                    "Looking early with the choice to stop raises the chance of a false difference above alpha.", Severity.Error)
                    {
                        Kind = DepartureKind.Looks,
                    });
        }

        return found;
    }

    /// <summary>For example <c>tasters: planned 24, done 19. Fewer tasters than planned ...</c></summary>
    public override string ToString() => $"{What}: planned {Planned}, done {Done}. {Meaning}";

    private static void Compare(List<Departure> found, string what, double planned, double? done)
    {
        if (done is { } value && value != planned)
        {
            found.Add(new(what, Printed.ChosenPercent(planned), Printed.ChosenPercent(value),
                "A limit changed after it was declared; the declared one is the test.", Severity.Error) { Kind = DepartureKind.Limit });
        }
    }

    private static string Rule(StoppingRule rule) => rule == StoppingRule.Fixed ? "at the planned number" : "by the sequential rule";

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string Whole(int number) => number.ToString(CultureInfo.InvariantCulture);
}

/// <summary>The points in which practice can depart from a plan.</summary>
public enum DepartureKind
{
    /// <summary>Nobody wrote down on which day the plan was fixed.</summary>
    NotDeclared,

    /// <summary>The plan is dated after the first ballot.</summary>
    DeclaredAfterServing,

    /// <summary>Another protocol was served.</summary>
    Protocol,

    /// <summary>Fewer people tasted than planned.</summary>
    FewerTasters,

    /// <summary>More people tasted than planned.</summary>
    MoreTasters,

    /// <summary>Tasters had unlike numbers of sets.</summary>
    Sets,

    /// <summary>There were more or fewer sittings than planned.</summary>
    Sessions,

    /// <summary>The serving orders are not the ones that the plan would make.</summary>
    Seed,

    /// <summary>The serving orders are not balanced.</summary>
    Orders,

    /// <summary>A limit was changed after it was declared.</summary>
    Limit,

    /// <summary>The panel stopped by another rule.</summary>
    Stopping,

    /// <summary>The count was looked at before its end.</summary>
    Looks,

    /// <summary>A sealed entry was changed after the first ballot.</summary>
    ChangedTooLate,

    /// <summary>Seal or key are not what they were.</summary>
    Broken,

    /// <summary>The count was looked at before the close.</summary>
    LookedAt,

    /// <summary>The panel ended before all sealed ballots were in.</summary>
    EndedEarly,

    /// <summary>Fewer ballots came in than were sealed, and none of those missing could have changed the answer.</summary>
    FewerBallots,

    /// <summary>More ballots came in than were sealed.</summary>
    TooMany,

    /// <summary>Ballots came in after the close.</summary>
    AfterTheClose,

    /// <summary>The panel that was sealed to decide is not counted.</summary>
    AnotherPanel,
}
