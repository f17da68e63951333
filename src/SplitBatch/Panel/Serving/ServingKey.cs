using SplitBatch.Panel.Protocols;
using static System.FormattableString;

namespace SplitBatch.Panel.Serving;

/// <summary>Rebuilds a plan from its sealed key, and checks a key that was written or changed by hand.</summary>
public static class ServingKey
{
    /// <summary>Everything wrong with the rows of a key.</summary>
    /// <param name="rows">One row per cup, in any sequence.</param>
    /// <param name="file">The file's name, for the messages.</param>
    /// <param name="expected">The beer that should show more of the named attribute, where the protocol fixes a direction.</param>
    /// <returns>Faults; an unbalanced plan, or a code that hints, is a warning.</returns>
    public static IReadOnlyList<Fault> Check(IReadOnlyList<ServingKeyRow> rows, string file = "serving key", Side expected = Side.B)
    {
        ArgumentNullException.ThrowIfNull(rows);
        List<Fault> faults = [];
        void Error(string problem, string? column = null, string? value = null, string? accepted = null) =>
            faults.Add(new Fault(file, problem) { Column = column, Value = value, Accepted = accepted });

        if (rows.Count == 0)
        {
            Error("The key is empty.", accepted: "one row for each cup");
            return faults;
        }
        if (!OnlyOne(rows.Select(row => row.Protocol), "protocol", Error) | !OnlyOne(rows.Select(row => row.Panel), "panel", Error))
            return faults;
        if (!Protocol.TryParse(rows[0].Protocol, out var protocol, out string? problem))
        {
            Error(problem, "protocol", rows[0].Protocol);
            return faults;
        }

        var design = SetDesign.For(protocol, expected);
        List<ServingOrder> served = [];
        foreach (var set in rows.GroupBy(row => row.Set).OrderBy(set => set.Key))
        {
            if (set.Select(row => (row.Taster, row.Session, row.Server, row.Replicate)).Distinct().Count() > 1)
                Error(Invariant($"Set {set.Key} is split between tasters, sessions, servers or replicates."), "set",
                    Invariant($"{set.Key}"), "one taster, session, server and replicate for each set");
            var order = OrderOf([.. set.OrderBy(row => row.Position)]);
            if (order is not null && design.Orders.Contains(order)) served.Add(order);
            else
            {
                Error(Invariant($"Set {set.Key} is poured {order?.Text ?? "with positions missing or twice"}, which is not a ")
                    + Invariant($"{protocol.Name} order."),
                    "set", Invariant($"{set.Key}"), string.Join(", ", design.Orders));
            }
            foreach (var twice in set.GroupBy(row => row.Code).Where(group => group.Count() > 1))
                Error(Invariant($"The code {twice.Key} stands on {twice.Count()} cups of set {set.Key}."), "code", twice.Key,
                    "each code once in a sitting");
        }
        foreach (var twice in rows.Where(row => row.Position > 0).GroupBy(row => (row.Session, row.Taster, row.Code))
            .Where(group => group.Select(row => row.Set).Distinct().Count() > 1))
            Error(Invariant($"{twice.Key.Taster} gets the code {twice.Key.Code} in more than one set of session {twice.Key.Session}."),
                "code", twice.Key.Code, "each code once in a sitting");
        foreach (string code in rows.Where(row => row.Position > 0).Select(row => row.Code).Distinct())
        {
            if (CodePool.Objection(code) is { } objection)
                faults.Add(new Fault(file, $"The code may hint: {objection}.")
                {
                    Column = "code",
                    Value = code,
                    Severity = Severity.Warning,
                });
        }
        if (served.Count > 0 && new ServingBalance(design.Orders, served) is { IsBalanced: false } balance)
        {
            faults.Add(
                new Fault(file, $"The serving orders are {balance.InWords}. A taster's liking for a position can then pass for a "
                    + $"difference between the beers.")
                {
                    Accepted = "each order equally often, or once more than another",
                    Severity = Severity.Warning,
                });
        }
        return faults;
    }

    /// <summary>The plan that a key describes. An unbalanced plan is accepted, and says so in <see cref="ServingPlan.Balance"/>.</summary>
    /// <param name="rows">One row per cup, in any sequence.</param>
    /// <param name="seed">The seed that the plan was drawn with, if known.</param>
    /// <param name="expected">The beer that should show more of the named attribute, where the protocol fixes a direction.</param>
    /// <param name="attribute">What "stronger" means, where the protocol names a property.</param>
    /// <exception cref="ArgumentException">The rows have a fault that is not a mere warning; the message gives the first, and how many
    /// there are.</exception>
    public static ServingPlan ToPlan(IReadOnlyList<ServingKeyRow> rows, int? seed = null, Side expected = Side.B,
        string attribute = "bitter")
    {
        var errors = Check(rows, expected: expected).Where(fault => fault.Severity == Severity.Error).ToArray();
        if (errors.Length > 0)
            throw new ArgumentException(Invariant($"{errors[0]}{(errors.Length > 1 ? Invariant($" ({errors.Length - 1} more)") : "")}"),
                nameof(rows));
        var sets = from row in rows
                   group row by row.Set into set
                   orderby set.Key
                   let cups = set.OrderBy(row => row.Position).ToArray()
                   select new ServedSet(set.Key, cups[0].Session, cups[0].Server, cups[0].Taster, cups[0].Replicate, OrderOf(cups)!,
                       [.. cups.Select(row => new Cup(row.Position, row.Code, row.Beer))]);
        return new ServingPlan(rows[0].Panel, Protocol.Parse(rows[0].Protocol), expected, seed, [.. sets], attribute);
    }

    private static bool OnlyOne(IEnumerable<string> values, string column, Action<string, string?, string?, string?> error)
    {
        string[] distinct = [.. values.Distinct(StringComparer.OrdinalIgnoreCase)];
        if (distinct.Length == 1) return true;
        error($"The key holds more than one {column}: {string.Join(", ", distinct)}.", column, distinct[1], $"one {column} in each file");
        return false;
    }

    private static ServingOrder? OrderOf(ServingKeyRow[] cups)
    {
        int first = cups[0].Position;
        if (first is not (0 or 1) || cups.Where((row, i) => row.Position != first + i).Any() || (first == 0 && cups.Length == 1))
            return null;
        string beers = string.Concat(cups.Select(row => row.Beer));
        return new ServingOrder(first == 0 ? $"{beers[0]}:{beers[1..]}" : beers);
    }
}

/// <summary>One cup of the sealed key, as a row of a file: with all rows the whole plan can be rebuilt.</summary>
/// <param name="Panel">The panel's name.</param>
/// <param name="Protocol">The protocol's name.</param>
/// <param name="Session">The sitting, from 1.</param>
/// <param name="Server">Who carries the tray.</param>
/// <param name="Taster">Who tastes.</param>
/// <param name="Replicate">Which of the taster's sets, from 1.</param>
/// <param name="Set">The set's number in the panel, from 1.</param>
/// <param name="Position">The place in the tasting order, from 1; 0 is a named reference.</param>
/// <param name="Code">The code on the cup.</param>
/// <param name="Beer">What is in it.</param>
public sealed record ServingKeyRow(
    string Panel, string Protocol, int Session, string Server, string Taster, int Replicate, int Set, int Position, string Code,
    Side Beer);
