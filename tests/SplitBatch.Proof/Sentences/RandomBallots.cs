using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using SplitBatch.Panel;
using SplitBatch.Panel.Protocols;
using SplitBatch.Panel.Serving;

namespace SplitBatch.Proof.Sentences;

/// <summary>
/// The ballots of one random panel as a file: answers of people who can tell or guess, and everything that goes wrong with ballots.
/// </summary>
internal sealed class RandomBallots
{
    private static readonly string[] Columns = ["taster", "session", "set", "answer", "when", "knew variable", "brewer", "late",
        "preferred"];

    private readonly Dice dice;
    private readonly ServingPlan key;
    private readonly Dictionary<string, (bool Able, bool Opposite)> people;
    private readonly RandomTruth truth;
    private readonly bool asksPreference, likesTheBeer;
    private readonly DateTime opens;

    public RandomBallots(Dice dice, ServingPlan key, RandomTruth truth, JsonObject plan)
    {
        (this.dice, this.key, this.truth) = (dice, key, truth);
        opens = new DateTime(2026, 5, 2, 19, 0, 0);
        likesTheBeer = (string?)plan["attribute"] is "preferred" or "liked better";
        asksPreference = key.Design.AnswersByCode && dice.Chance(0.2);
        people = key.Tasters.ToDictionary(taster => taster, _ => (Able: dice.Chance(truth.Able), Opposite: dice.Chance(truth.Opposite)));
        var trouble = dice.Of(0.0, 0.0, 0.02, 0.06, 0.15);
        var stopsAt = dice.Chance(0.08) ? dice.Whole(1, key.Sets.Count) : key.Sets.Count;
        var timed = dice.Chance(0.85);
        var text = new StringBuilder(string.Join(',', Columns)).Append('\n');
        foreach (var (i, set) in key.Sets.Index().Take(stopsAt))
        {
            var when = timed ? opens.AddMinutes(i).ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture) : "";
            if (dice.Chance(trouble)) Troubled(text, set, when);
            else Row(text, set, Answer(set), when);
        }

        Text = text.ToString();
    }

    /// <summary>The file.</summary>
    public string Text { get; }

    private void Troubled(StringBuilder text, ServedSet set, string when)
    {
        switch (dice.Whole(0, 8))
        {
            case 0 or 1: return; // Never handed in.
            case 2: Row(text, set, Answer(set), when, late: "yes"); break;
            case 3: Row(text, set, Answer(set), when, knew: "yes"); break;
            case 4: Row(text, set, Answer(set), when, brewer: "yes"); break;
            case 5: Row(text, set, "", when); break;
            case 6: Row(text, set, "999", when); break;
            case 7:
                Row(text, set, Answer(set), when);
                Row(text, set, Answer(set), when, late: dice.Of("", "yes"));
                break;
            default:
                var same = Answer(set);
                Row(text, set, same, when);
                Row(text, set, same, when);
                break;
        }
    }

    private void Row(StringBuilder text, ServedSet set, string answer, string when, string knew = "", string brewer = "",
        string late = "") =>
            text.AppendJoin(',', [set.Taster, $"{set.Session}", $"{set.Number}", answer, when, knew, brewer, late, Preferred(set)])
                .Append('\n');

    private string Answer(ServedSet set)
    {
        var (able, opposite) = people[set.Taster];
        var tells = able && dice.Chance(truth.Ability);
        var all = Possible(set).ToArray();
        if (likesTheBeer && key.Protocol.Sides == 2)
        {
            var forB = dice.Chance(truth.Preference);
            return all.First(one => one.Right == (forB == (key.Expected == Side.B))).Text;
        }

        var fitting = tells ? all.Where(one => one.Right != opposite).ToArray() : all;
        return dice.Of(fitting.Length > 0 ? fitting : all).Text;
    }

    /// <summary>Every answer that a set allows, and whether it is right.</summary>
    private IEnumerable<(string Text, bool Right)> Possible(ServedSet set)
    {
        var cups = set.CodedCups.ToArray();
        switch (key.Design.Answer)
        {
            case AnswerKind.OwnOrNot: return [("A", cups[0].Beer == Side.A), ("not A", cups[0].Beer == Side.B)];
            case AnswerKind.SameOrDifferent: return [("same", cups[0].Beer == cups[1].Beer), ("different", cups[0].Beer != cups[1].Beer)];
            case AnswerKind.Pair:
                var fewer = cups.Count(cup => cup.Beer == Side.A) < cups.Length - cups.Count(cup => cup.Beer == Side.A) ? Side.A : Side.B;
                return from i in Enumerable.Range(0, cups.Length) from j in Enumerable.Range(i + 1, cups.Length - i - 1)
                    select ($"{cups[i].Code} {cups[j].Code}", cups[i].Beer == cups[j].Beer && (cups.Length == 4 || cups[i].Beer == fewer));
            case AnswerKind.OddCup: return cups.Select(cup => (cup.Code, cups.Count(other => other.Beer == cup.Beer) == 1));
            case AnswerKind.MatchingCup: return cups.Select(cup => (cup.Code, cup.Beer == set.Cups[0].Beer));
            default: return cups.Select(cup => (cup.Code, cup.Beer == key.Expected));
        }
    }

    private string Preferred(ServedSet set)
    {
        if (!asksPreference || dice.Chance(0.1)) return "";
        if (dice.Chance(0.1)) return "none";
        var liked = dice.Chance(truth.Preference) ? Side.B : Side.A;
        var cups = set.CodedCups.ToArray();
        return (truth.Preference == 0.5 ? dice.Of(cups) : cups.FirstOrDefault(cup => cup.Beer == liked) ?? cups[0]).Code;
    }
}
