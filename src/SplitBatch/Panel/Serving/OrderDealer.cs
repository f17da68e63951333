namespace SplitBatch.Panel;

/// <summary>
/// Deals serving orders to sets. Hard rule: after every set, no order has been used more than once more often than another.
/// Within that rule each next order is the one that keeps, in this sequence, the whole panel, the taster, the session, the round and the
/// server best balanced in odd beer, odd position and beers per position; ties fall to the seed.
/// </summary>
internal static class OrderDealer
{
    internal static ServingOrder[] Deal(IReadOnlyList<ServingOrder> orders, IReadOnlyList<Seat> seats, ref SeededRandom random)
    {
        var whole = new Tally(orders);
        Dictionary<(char Group, int Number), Tally> groups = [];
        Tally Group(char group, int number) =>
            groups.TryGetValue((group, number), out var tally) ? tally : groups[(group, number)] = new Tally(orders);

        var dealt = new ServingOrder[seats.Count];
        List<int> best = [];
        Cost[] cost = new Cost[5], bestCost = new Cost[5];
        for (int i = 0; i < seats.Count; i++)
        {
            var seat = seats[i];
            Tally[] tallies = [whole, Group('t', seat.Taster), Group('s', seat.Session), Group('r', seat.Replicate), Group('v', seat.Server)];
            int least = whole.LeastUse;
            best.Clear();
            for (int k = 0; k < orders.Count; k++)
            {
                if (whole.Use(k) != least) continue;
                for (int g = 0; g < tallies.Length; g++) cost[g] = tallies[g].CostOf(k);
                int sign = best.Count == 0 ? -1 : Compare(cost, bestCost);
                if (sign < 0)
                {
                    best.Clear();
                    cost.CopyTo(bestCost, 0);
                }
                if (sign <= 0) best.Add(k);
            }
            int chosen = best[random.NextBelow(best.Count)];
            foreach (var tally in tallies) tally.Add(chosen);
            dealt[i] = orders[chosen];
        }
        return dealt;
    }

    private static int Compare(Cost[] one, Cost[] other)
    {
        for (int i = 0; i < one.Length; i++)
        {
            if (one[i].CompareTo(other[i]) is not 0 and var sign) return sign;
        }
        return 0;
    }

    /// <summary>How much one more order would unbalance a group, weightiest first.</summary>
    private readonly record struct Cost(long Beers, long OddPosition, long Position, int Repeats) : IComparable<Cost>
    {
        public int CompareTo(Cost other) =>
            (Beers, OddPosition, Position, Repeats).CompareTo((other.Beers, other.OddPosition, other.Position, other.Repeats));
    }

    /// <summary>What has been dealt to one group so far, and what one more order would cost it in balance.</summary>
    private sealed class Tally
    {
        private readonly IReadOnlyList<ServingOrder> orders;
        private readonly int[] uses, oddAt, position;
        private readonly bool someAreUnmixed;
        private int oddBeer, mixed, reference, matchFirst;

        internal Tally(IReadOnlyList<ServingOrder> all)
        {
            orders = all;
            uses = new int[orders.Count];
            oddAt = new int[orders[0].Beers.Count + 1];
            position = new int[orders[0].Beers.Count];
            someAreUnmixed = orders[0].Beers.Count == 2 && orders.Any(order => !order.IsMixed);
        }

        internal int LeastUse => uses.Min();

        internal int Use(int order) => uses[order];

        /// <summary>The growth of the summed squares of imbalance: beers first, then where the odd cup stands, then beers per position, then repeats.</summary>
        internal Cost CostOf(int k)
        {
            var order = orders[k];
            long beers = Growth(oddBeer, Sign(order.OddBeer)) + Growth(mixed, MixedSign(order)) + Growth(reference, Sign(order.Reference));
            long odd = (order.OddPosition is { } at ? 2 * oddAt[at] : 0) + Growth(matchFirst, MatchSign(order));
            long places = 0;
            for (int i = 0; i < position.Length; i++) places += Growth(position[i], Sign(order.Beers[i]));
            return new Cost(beers, odd, places, uses[k]);
        }

        internal void Add(int k)
        {
            var order = orders[k];
            uses[k]++;
            oddBeer += Sign(order.OddBeer);
            mixed += MixedSign(order);
            reference += Sign(order.Reference);
            matchFirst += MatchSign(order);
            if (order.OddPosition is { } at) oddAt[at]++;
            for (int i = 0; i < position.Length; i++) position[i] += Sign(order.Beers[i]);
        }

        private static int MatchSign(ServingOrder order) => order.Reference is { } side ? order.Beers[0] == side ? 1 : -1 : 0;

        private int MixedSign(ServingOrder order) => someAreUnmixed ? order.IsMixed ? 1 : -1 : 0;

        private static int Sign(Side? beer) => beer switch { null => 0, Side.A => 1, _ => -1 };

        private static long Growth(long sum, long step) => 2 * sum * step + step * step;
    }
}
