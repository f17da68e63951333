using static System.FormattableString;

namespace SplitBatch.Panel.Protocols;

/// <summary>How evenly a plan uses its orders, its beers and its positions.</summary>
public sealed class ServingBalance
{
    private readonly IReadOnlyList<ServingOrder> orders;

    internal ServingBalance(IReadOnlyList<ServingOrder> orders, IReadOnlyList<ServingOrder> served)
    {
        this.orders = orders;
        Uses = orders.ToDictionary(order => order.Text, order => served.Count(other => other.Equals(order)));
        OddBeer = new(served.Count(order => order.OddBeer == Side.A), served.Count(order => order.OddBeer == Side.B));
        OddAt = [.. Enumerable.Range(1, orders[0].Beers.Count).Select(position => served.Count(order => order.OddPosition == position))];
        AtPosition = [.. Enumerable.Range(0, orders[0].Beers.Count).Select(i => new SideCount(
            served.Count(order => order.Beers[i] == Side.A), served.Count(order => order.Beers[i] == Side.B)))];
        Reference = new(served.Count(order => order.Reference == Side.A), served.Count(order => order.Reference == Side.B));
    }

    /// <summary>How often each order is used.</summary>
    public IReadOnlyDictionary<string, int> Uses { get; }

    /// <summary>How often each beer is the odd one.</summary>
    public SideCount OddBeer { get; }

    /// <summary>How often the single odd cup stands at each position, first position first; zeros where no cup stands alone.</summary>
    public IReadOnlyList<int> OddAt { get; }

    /// <summary>How often each beer stands at each position, first position first.</summary>
    public IReadOnlyList<SideCount> AtPosition { get; }

    /// <summary>How often each beer is the named reference.</summary>
    public SideCount Reference { get; }

    /// <summary>Whether no order is used more than once more often than another.</summary>
    public bool IsBalanced => Uses.Values.Max() - Uses.Values.Min() <= 1;

    /// <summary>
    /// Whether orders are so unevenly used that a liking for a position can pass for a difference: one more than twice as often as
    /// another.
    /// </summary>
    public bool IsLopsided => !IsBalanced && Uses.Values.Max() > 2 * Uses.Values.Min();

    /// <summary>The use of orders as a phrase, for example <c>each of 6 orders 4 times</c>.</summary>
    public string InWords
    {
        get
        {
            int least = Uses.Values.Min(), most = Uses.Values.Max();
            return least == most ? Invariant($"each of {orders.Count} orders {Times(least)}")
                : least == 0 && most == 1 ? Invariant($"each of {orders.Count} orders at most once")
                : IsBalanced ? Invariant($"each of {orders.Count} orders {least} or {Times(most)}")
                : $"not balanced: {string.Join(", ", orders.Select(order => Invariant($"{order} {Uses[order.Text]}")))}";
        }
    }

    /// <summary>The use of orders as a phrase.</summary>
    public override string ToString() => InWords;

    private static string Times(int n) => n == 1 ? "once" : Invariant($"{n} times");
}

/// <summary>How many times each beer occurs.</summary>
/// <param name="A">Times for A.</param>
/// <param name="B">Times for B.</param>
public readonly record struct SideCount(int A, int B)
{
    /// <summary>How far apart the two are.</summary>
    public int Gap => Math.Abs(A - B);

    /// <summary>For example <c>12 A, 12 B</c>.</summary>
    public override string ToString() => FormattableString.Invariant($"{A} A, {B} B");
}
