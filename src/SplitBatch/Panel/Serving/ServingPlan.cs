using System.Globalization;
using SplitBatch.Numbers;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Serving;

/// <summary>Who gets which cups in which order under which codes: the sealed side of a blind panel.</summary>
public sealed class ServingPlan
{
    private readonly string attribute;

    internal ServingPlan(string panel, Protocol protocol, Side expected, int? seed, IReadOnlyList<ServedSet> sets, string attribute)
    {
        (Panel, Protocol, Expected, Seed, Sets, this.attribute) = (panel, protocol, expected, seed, sets, attribute);
        Design = SetDesign.For(protocol, expected, attribute);
        Balance = new ServingBalance(Design.Orders, [.. sets.Select(set => set.Order)]);
    }

    /// <summary>The panel's name in the trial folder.</summary>
    public string Panel { get; }

    /// <summary>The protocol.</summary>
    public Protocol Protocol { get; }

    /// <summary>The beer that should show more of the named attribute, where the protocol fixes a direction.</summary>
    public Side Expected { get; }

    /// <summary>The seed that the plan was drawn with; null for a plan that was not drawn here.</summary>
    public int? Seed { get; }

    /// <summary>The sets in serving sequence.</summary>
    public IReadOnlyList<ServedSet> Sets { get; }

    /// <summary>How a set is poured and answered.</summary>
    public SetDesign Design { get; }

    /// <summary>How evenly orders, beers and positions are used.</summary>
    public ServingBalance Balance { get; }

    /// <summary>The tasters in seat order.</summary>
    public IReadOnlyList<string> Tasters => [.. Sets.Select(set => set.Taster).Distinct()];

    /// <summary>The sittings.</summary>
    public IReadOnlyList<int> Sessions => [.. Sets.Select(set => set.Session).Distinct().Order()];

    /// <summary>The sealed key: one row per cup, in serving sequence.</summary>
    public IReadOnlyList<ServingKeyRow> Key =>
        [.. from set in Sets
            from cup in set.Cups
            select new ServingKeyRow(Panel, Protocol.Name, set.Session, set.Server, set.Taster, set.Replicate, set.Number, cup.Position,
                cup.Code, cup.Beer)];

    /// <summary>
    /// A balanced plan: each serving order is used equally often, or one time more than another where the number of sets does not
    /// divide; each beer is the odd one equally often, or once more; odd cups are spread over the positions; the same holds as nearly as
    /// it can for each taster, session, round and server.
    /// </summary>
    /// <param name="protocol">The protocol.</param>
    /// <param name="tasters">How many people taste, in [1, 1000].</param>
    /// <param name="seed">The seed of orders and codes; the same seed gives the same plan.</param>
    /// <param name="sessions">How many sittings; tasters are shared out among them.</param>
    /// <param name="servers">How many servers carry trays in each sitting.</param>
    /// <param name="replicates">How many sets each taster gets, in [1, 20].</param>
    /// <param name="panel">The panel's name in the trial folder.</param>
    /// <exception cref="ArgumentException">A count is outside its range, or there are more sessions or servers than tasters.</exception>
    /// <example><code>ServingPlan.Balanced(Protocol.Triangle, tasters: 24, seed: 2026)</code></example>
    public static ServingPlan Balanced(
        Protocol protocol, int tasters, int seed, int sessions = 1, int servers = 1, int replicates = 1, string panel = "main") =>
        Balanced(protocol, tasters, seed,
            new ServingOptions { Sessions = sessions, Servers = servers, Replicates = replicates, Panel = panel });

    /// <summary>A balanced plan for a panel as it was declared.</summary>
    /// <param name="plan">What was declared; where it states no seed, the plan for seed 0 is shown, and the one that is served is drawn
    /// later.</param>
    /// <param name="options">Sessions, servers and taster names; the rest is the plan's. Null for its sessions and one server.</param>
    /// <example><code>ServingPlan.Balanced(trial.Panel("main").Plan)</code></example>
    public static ServingPlan Balanced(PanelPlan plan, ServingOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return Balanced(plan.Protocol, plan.Tasters, plan.Seed ?? 0, (options ?? new ServingOptions { Sessions = plan.Sessions ?? 1 }) with
        {
            Panel = plan.Name,
            Replicates = plan.Replicates,
            Expected = plan.Expected,
            Attribute = plan.Attribute,
        });
    }

    /// <inheritdoc cref="Balanced(Protocol, int, int, int, int, int, string)"/>
    /// <param name="protocol">The protocol.</param>
    /// <param name="tasters">How many people taste, in [1, 1000].</param>
    /// <param name="seed">The seed of orders and codes; the same seed gives the same plan.</param>
    /// <param name="options">How the panel is seated.</param>
    public static ServingPlan Balanced(Protocol protocol, int tasters, int seed, ServingOptions options)
    {
        ArgumentNullException.ThrowIfNull(protocol);
        ArgumentNullException.ThrowIfNull(options);
        var seating = Seating.Make(tasters, options);
        var design = SetDesign.For(protocol, options.Expected, options.Attribute);
        var random = new SeededRandom(seed);

        int[] sequence = [.. Enumerable.Range(0, tasters)];
        random.Shuffle(sequence.AsSpan());
        var dealt = seating.OrderBy(seat => seat.Session * (options.EveryoneEachSession ? 0 : 1)).ThenBy(seat => sequence[seat.Taster])
            .ThenBy(seat => seat.Replicate).ToArray();
        var orders = OrderDealer.Deal(design.Orders, dealt, ref random);
        var orderOf = dealt.Zip(orders).ToDictionary(pair => (pair.First.Taster, pair.First.Replicate), pair => pair.Second);

        var codes = new CodeDealer();
        List<ServedSet> sets = [];
        foreach (var seat in seating.OrderBy(seat => seat.Session).ThenBy(seat => seat.Replicate).ThenBy(seat => seat.Taster))
        {
            var order = orderOf[(seat.Taster, seat.Replicate)];
            string[] labels = codes.Deal(seat.Session, seat.Name, order.Beers, ref random);
            List<Cup> cups = order.Reference is { } beer ? [new Cup(0, Cup.ReferenceCode, beer)] : [];
            cups.AddRange(labels.Select((code, i) => new Cup(i + 1, code, order.Beers[i])));
            sets.Add(new ServedSet(sets.Count + 1, seat.Session, seat.ServerName, seat.Name, seat.Replicate, order, cups));
        }
        return new ServingPlan(Guard.NotBlank(options.Panel), protocol, options.Expected, seed, sets, options.Attribute);
    }

    /// <summary>The same plan with some of its sets left out.</summary>
    internal ServingPlan Only(Func<ServedSet, bool> isKept) => new(Panel, Protocol, Expected, Seed, [.. Sets.Where(isKept)], attribute);

    /// <summary>For example <c>24 tasters, triangle: 24 sets of 3 cups in 1 session, each of 6 orders 4 times (seed 2026)</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{Count(Tasters.Count, "taster")}, {Protocol.Name}: {Count(Sets.Count, "set")} of {Count(Design.Cups, "cup")} in "
            + $"{Count(Sessions.Count, "session")}, {Balance.InWords}{(Seed is { } seed ? $" (seed {seed})" : "")}");

    private static string Count(int n, string noun) => string.Create(CultureInfo.InvariantCulture, $"{n} {noun}{(n == 1 ? "" : "s")}");
}
