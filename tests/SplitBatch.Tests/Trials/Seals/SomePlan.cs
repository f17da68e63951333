using SplitBatch.Trials.Files;
using System.Text.Json.Nodes;
using SplitBatch.Panel.Ballots;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Trials.Seals;

/// <summary>An invented plan for tests, nothing in it as a default would have it.</summary>
internal static class SomePlan
{
    public static readonly DateTimeOffset Evening = new(2026, 4, 20, 18, 5, 0, TimeSpan.FromHours(2));

    public static TrialPlan Of(PanelPlan panel) => new()
    {
        Question = "Can tasters tell a pale ale fermented cool from one fermented warm?",
        Variable = "fermentation temperature",
        Beers = new Dictionary<Side, string> { [Side.A] = "cool", [Side.B] = "warm" },
        HopVariable = "form",
        WouldChangeMyMind = "a difference shown",
        HeldEqual = ["one mash", "yeast lot"],
        FollowsFromVariable = ["days to final gravity"],
        Panels = [panel, Evening2],
        Deciding = panel.Name,
        ReadTogether = true,
        Lab = new JsonObject { ["precision"] = new JsonArray(new JsonObject { ["analyte"] = "bitterness", ["value [BU]"] = 0.7 }) },
    };

    public static PanelPlan Main { get; } = new(Protocol.ThreeAfc, 36)
    {
        Name = "main",
        Alpha = 0.04,
        Power = 0.85,
        Margin = 0.25,
        Beta = 0.08,
        Replicates = 2,
        Sessions = 3,
        Seed = 12,
        Stopping = StoppingRule.Fixed,
        Expected = Side.A,
        Attribute = "fruity",
        PriorA = 2,
        PriorB = 5,
        AskedBeside = ["liking", "preferred"],
        Rules = new BallotRules
        {
            Duplicates = DuplicateRule.Last,
            KnewVariable = BallotRule.Count,
            Brewer = BallotRule.CountAsWrong,
            Late = BallotRule.Count,
            NoUsableAnswer = BallotRule.CountAsWrong,
            Missing = BallotRule.CountAsWrong,
            Closes = new DateTimeOffset(2026, 5, 2, 22, 0, 0, TimeSpan.Zero),
            Brewers = ["T03"],
            TastersWhoKnew = ["T07", "T08"],
        },
    };

    private static PanelPlan Evening2 { get; } = new(Protocol.Triangle, 24) { Name = "evening", Stopping = StoppingRule.Sequential };

    public static Seal Seal(int number = 1, TrialPlan? plan = null, Fingerprint? before = null, string? because = null,
        params (string Panel, int Ballots)[] ballots) => new()
        {
            Number = number,
            Title = "Cool or warm?",
            At = Evening.AddHours(number - 1),
            MadeBy = "SplitBatch 9.9.9",
            Before = before,
            Because = because,
            BallotsThen = ballots.ToDictionary(pair => pair.Panel, pair => pair.Ballots),
            Salt = "00112233445566778899aabbccddeeff",
            Plan = plan ?? Of(Main),
        };
}
