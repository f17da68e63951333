using System.ComponentModel;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;
using static System.FormattableString;

namespace SplitBatch.Display.Tables;

/// <summary>Tables for planning a panel.</summary>
[EditorBrowsable(EditorBrowsableState.Never)]
public static class PlanTables
{
    /// <summary>The protocols set against one another: what each asks, and what it takes for one and the same difference.</summary>
    /// <param name="rows">The comparison, as <see cref="ProtocolComparison.At"/> gives it.</param>
    public static Table Table(this IReadOnlyList<ProtocolRow> rows)
    {
        ArgumentNullException.ThrowIfNull(rows);
        var difference = rows.Count == 0 ? "" : Invariant($" for a difference of d-prime {Printed.Chosen(rows[0].DPrime)}");
        return TableOf.Each(rows, $"Which protocol?{(difference.Length > 0 ? " What each takes" + difference : "")}")
            .Text("protocol", r => r.Protocol.Name)
            .Text("asks", r => Asks(r.Protocol))
            .Percent("by luck", r => r.Protocol.HasKnownChance ? r.Protocol.Chance : null)
            .Percent("can tell", r => r.Discriminators)
            .Number("tasters", r => r.First, decimals: 0)
            .Number("always from", r => r.Always, decimals: 0)
            .Number("cups each", r => r.Protocol.Pours, decimals: 0)
            .Number("cups", r => r.Cups, decimals: 0)
            .Number("beer", r => r.Beer.Liters, "L")
            .Note("By luck: right by guessing alone. Can tell: the share of discriminators that this difference makes. Tasters: the first "
                + "number that reaches the power; always from: power rises in a saw-tooth, and from this number on it is always reached. "
                + "One set for each taster. Beer of both halves together, without spare. A d-prime of 1 is a difference as large as the "
                + "noise of one tasting. For A-not-A and same-different half of the sets hold no difference, and only the first number is "
                + "searched; the cup by which A is learnt comes on top.")
            .ToTable();
    }

    private static string Asks(Protocol protocol) => protocol switch
    {
        { HasKnownChance: false } => ReferenceEquals(protocol, Protocol.ANotA) ? "is this the known beer?" : "same or different?",
        { NamesTheProperty: true, Sides: 2 } => "which has more of a property?",
        { NamesTheProperty: true } => "has the expected one more of it?",
        _ when protocol.Name.StartsWith("duo", StringComparison.Ordinal) => "which matches the reference?",
        _ => "any difference at all?",
    };

    /// <summary>
    /// Tasters needed for shares of discriminators: the first panel that is enough, and the size from which every panel is.
    /// </summary>
    /// <param name="table">The table, as <see cref="TastersTable.Of"/> gives it.</param>
    public static Table Table(this TastersTable table)
    {
        ArgumentNullException.ThrowIfNull(table);
        return TableOf.Each(table.Cells, $"Tasters needed by the {table.Protocol.Name} protocol")
            .Percent("can tell apart", c => c.Discriminators)
            .Percent("error", c => c.Alpha, decimals: 1)
            .Percent("power", c => c.Power)
            .Number("first number that reaches it", c => c.First, decimals: 0)
            .Number("from this number on always", c => c.Always, decimals: 0)
            .Note("Power rises in a saw-tooth, because the count of right answers is a whole number: a panel between the two sizes may do "
                + "worse than a smaller one.")
            .ToTable();
    }

    /// <summary>What a sequential plan truly does at several shares of discriminators.</summary>
    /// <param name="plan">The plan.</param>
    public static Table Table(this WaldPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        double[] shares = [.. new[] { plan.None, plan.Margin / 2, plan.Margin, Math.Min(1, 1.5 * plan.Margin) }.Distinct()];
        return TableOf.Each(shares.Select(plan.At),
            Invariant($"What the sequential plan does, {plan.Protocol.Name}, at most {plan.LastTaster} tasters"))
            .Percent("can tell apart", c => c.Discriminators)
            .Percent("ends with a difference shown", c => c.Different, decimals: 1)
            .Percent("ends with the margin ruled out", c => c.Similar, decimals: 1)
            .Percent("undecided at the last taster", c => c.Undecided, decimals: 1)
            .Number("tasters on average", c => c.Tasters)
            .Note("Exact rates, computed over every possible course; the rates that the lines promise are approximate.")
            .ToTable();
    }
}
