using SplitBatch.Panel.Planning;
using SplitBatch.Trials.Files;

namespace SplitBatch.Trials.Seals;

/// <summary>
/// Reads how a plan wants doubtful ballots counted: <c>"rules": { "late": "count", "missing": "count as wrong", "brewers": ["T03"] }</c>.
/// </summary>
internal static class BallotRulesReader
{
    private static readonly Dictionary<string, BallotRule> Counted = new()
    {
        ["exclude"] = BallotRule.Exclude,
        ["count"] = BallotRule.Count,
        ["count as wrong"] = BallotRule.CountAsWrong,
    };

    private static readonly Dictionary<string, BallotRule> NotAsItStands = new()
    {
        ["exclude"] = BallotRule.Exclude,
        ["count as wrong"] = BallotRule.CountAsWrong,
    };

    private static readonly Dictionary<string, DuplicateRule> Duplicates = new()
    {
        ["first"] = DuplicateRule.First,
        ["last"] = DuplicateRule.Last,
        ["first if equal"] = DuplicateRule.FirstIfEqual,
    };

    /// <summary>The rules, with the default for each that is not stated.</summary>
    public static BallotRules Read(JsonSection json)
    {
        var usual = BallotRules.Default;
        var closes = json.OptionalText("closes");
        DateTimeOffset? at = null;
        if (closes is not null && !TimeText.TryRead(closes, out at))
            json.Refuse("closes", "The time cannot be read.", "year-month-day hour:minute, as \"2026-03-14 22:00\"", closes);
        return new BallotRules
        {
            Duplicates = json.OptionalOneOf("duplicates", Duplicates) ?? usual.Duplicates,
            KnewVariable = json.OptionalOneOf("knew variable", Counted) ?? usual.KnewVariable,
            Brewer = json.OptionalOneOf("brewer", Counted) ?? usual.Brewer,
            Late = json.OptionalOneOf("late", Counted) ?? usual.Late,
            NoUsableAnswer = json.OptionalOneOf("no usable answer", NotAsItStands) ?? usual.NoUsableAnswer,
            Missing = json.OptionalOneOf("missing", NotAsItStands) ?? usual.Missing,
            Closes = at,
            Brewers = json.Texts("brewers"),
            TastersWhoKnew = json.Texts("tasters who knew"),
        };
    }
}
