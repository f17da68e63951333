using SplitBatch.Numbers;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Serving;

/// <summary>
/// Deals serving orders to sets. Hard rule: after every set, no order has been used more than once more often than another.
/// Within that rule each next order is the one that keeps, in this sequence, the whole panel, the taster, the session, the round and the
/// server best balanced in odd beer, odd position and beers per position; ties fall to the seed.
/// </summary>
internal static class OrderDealer
{
    internal static ServingOrder[] Deal(IReadOnlyList<ServingOrder> orders, IReadOnlyList<Seat> seats, ref SeededRandom random)
    {
        Features[] features = [.. orders.Select(order => new Features(order, orders))];
        var whole = new Tally(features);
        Dictionary<(char Group, int Number), Tally> groups = [];
        Tally Group(char group, int number) =>
            groups.TryGetValue((group, number), out var tally) ? tally : groups[(group, number)] = new Tally(features);

        var dealt = new ServingOrder[seats.Count];
        for (int i = 0; i < seats.Count; i++)
        {
            var seat = seats[i];
            Tally[] tallies = [whole, Group('t', seat.Taster), Group('s', seat.Session), Group('r', seat.Replicate),
                Group('v', seat.Server)];
            List<int> left = whole.LeastUsed();
            foreach (var tally in tallies)
            {
                if (left.Count == 1) break;
                left = tally.Cheapest(left);
            }
            int chosen = left[random.NextBelow(left.Count)];
            foreach (var tally in tallies) tally.Add(chosen);
            dealt[i] = orders[chosen];
        }
        return dealt;
    }

    /// <summary>What an order adds to each running sum that should stay near zero, and where its odd cup stands.</summary>
    private sealed class Features
    {
        internal Features(ServingOrder order, IReadOnlyList<ServingOrder> all)
        {
            bool someAreUnmixed = order.Beers.Count == 2 && all.Any(other => !other.IsMixed);
            Beers = [Sign(order.OddBeer), Sign(order.Reference), someAreUnmixed ? order.IsMixed ? 1 : -1 : 0];
            MatchFirst = order.Reference is { } reference ? order.Beers[0] == reference ? 1 : -1 : 0;
            OddAt = order.OddPosition ?? 0;
            Positions = [.. order.Beers.Select(beer => Sign(beer))];
        }

        internal int[] Beers { get; }

        internal int MatchFirst { get; }

        internal int OddAt { get; }

        internal int[] Positions { get; }

        private static int Sign(Side? beer) => beer switch { null => 0, Side.A => 1, _ => -1 };
    }

    /// <summary>What has been dealt to one group so far, and what one more order would cost it in balance.</summary>
    private sealed class Tally(Features[] features)
    {
        private readonly int[] uses = new int[features.Length], beers = new int[3];
        private readonly int[] oddAt = new int[features[0].Positions.Length + 1], positions = new int[features[0].Positions.Length];
        private int matchFirst;

        internal List<int> LeastUsed()
        {
            int least = uses.Min();
            return [.. Enumerable.Range(0, uses.Length).Where(k => uses[k] == least)];
        }

        internal List<int> Cheapest(List<int> orders)
        {
            List<int> best = [];
            Int128 bestCost = Int128.MaxValue;
            foreach (int k in orders)
            {
                Int128 cost = Cost(k);
                if (cost > bestCost) continue;
                if (cost < bestCost) best.Clear();
                bestCost = cost;
                best.Add(k);
            }
            return best;
        }

        internal void Add(int k)
        {
            var order = features[k];
            uses[k]++;
            for (int i = 0; i < beers.Length; i++) beers[i] += order.Beers[i];
            for (int i = 0; i < positions.Length; i++) positions[i] += order.Positions[i];
            matchFirst += order.MatchFirst;
            if (order.OddAt > 0) oddAt[order.OddAt]++;
        }

        /// <summary>
        /// The growth of the summed squares of imbalance, weightiest first: beers, then where the odd cup stands, then beers per position,
        /// then repeats. Each part of at most 20,000 sets stays far below 2^31, so the sum compares like the parts.
        /// </summary>
        private Int128 Cost(int k)
        {
            var order = features[k];
            long odd = order.OddAt > 0 ? 2 * oddAt[order.OddAt] : 0;
            return ((Int128)Growth(beers, order.Beers) << 96) + ((Int128)(odd + Growth(matchFirst, order.MatchFirst)) << 64)
                + ((Int128)Growth(positions, order.Positions) << 32) + uses[k];
        }

        private static long Growth(int[] sums, int[] steps)
        {
            long growth = 0;
            for (int i = 0; i < sums.Length; i++) growth += Growth(sums[i], steps[i]);
            return growth;
        }

        private static long Growth(long sum, long step) => (2 * sum * step) + (step * step);
    }
}
