using System.Globalization;

namespace SplitBatch.Panel.Serving;

/// <summary>One taster at one set: where and by whom it is served, before orders and codes are drawn.</summary>
internal sealed record Seat(int Taster, string Name, int Session, int Replicate, int Server, string ServerName);

/// <summary>Shares tasters out over sessions and servers.</summary>
internal static class Seating
{
    internal const int MostTasters = 1000, MostReplicates = 20;

    internal static IReadOnlyList<Seat> Make(int tasters, ServingOptions options)
    {
        Guard.InRange(tasters, 1, MostTasters);
        int sessions = Guard.InRange(options.Sessions, 1, MostTasters), servers = Guard.InRange(options.Servers, 1, MostTasters);
        int replicates = Guard.InRange(options.Replicates, 1, MostReplicates);
        bool everyone = options.EveryoneEachSession;
        if (!everyone && sessions > tasters)
            throw new ArgumentException($"{sessions} sessions for {tasters} tasters leave a session empty.", nameof(options));
        if (everyone && sessions > replicates)
            throw new ArgumentException($"With everyone in each of {sessions} sessions, each taster needs at least {sessions} sets; "
                + $"replicates is {replicates}.", nameof(options));
        if (servers > (everyone ? tasters : tasters / sessions))
            throw new ArgumentException($"{servers} servers are more than the tasters of a session.", nameof(options));
        var names = Names(options.Tasters, tasters, "T", nameof(options.Tasters));
        var servedBy = Names(options.ServerNames, servers, "S", nameof(options.ServerNames));

        List<Seat> seats = [];
        for (int taster = 0; taster < tasters; taster++)
        {
            for (int replicate = 0; replicate < replicates; replicate++)
            {
                int session = everyone ? Share(replicate, replicates, sessions) : Share(taster, tasters, sessions);
                int first = everyone ? 0 : FirstOf(session, tasters, sessions);
                int size = everyone ? tasters : FirstOf(session + 1, tasters, sessions) - first;
                int server = Share(taster - first, size, servers);
                seats.Add(new Seat(taster, names[taster], session + 1, replicate + 1, server, servedBy[server]));
            }
        }
        return seats;
    }

    /// <summary>Which of the groups the item falls in when items are shared out in sequence, sizes differing by at most one.</summary>
    private static int Share(int item, int items, int groups) =>
        (int)(((long)item * groups + groups - 1) / items) is var group && FirstOf(group, items, groups) > item ? group - 1 : group;

    private static int FirstOf(int group, int items, int groups) => (int)((long)group * items / groups);

    private static IReadOnlyList<string> Names(IReadOnlyList<string>? given, int count, string letter, string what)
    {
        if (given is null)
            return [.. Enumerable.Range(1, count)
                .Select(i => letter + i.ToString(count > 99 ? "000" : count > 9 ? "00" : "0", CultureInfo.InvariantCulture))];
        if (given.Count != count) throw new ArgumentException($"{given.Count} names were given for {count}.", what);
        if (given.Any(string.IsNullOrWhiteSpace)) throw new ArgumentException("A name is blank.", what);
        var twice = given.GroupBy(name => name, StringComparer.OrdinalIgnoreCase).FirstOrDefault(group => group.Count() > 1);
        return twice is null ? given : throw new ArgumentException($"The name {twice.Key} stands twice.", what);
    }
}
