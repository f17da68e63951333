using System.Runtime.CompilerServices;
using System.Text;
using SplitBatch.BrewDay;
using SplitBatch.Brewing;
using SplitBatch.Evidence.Findings;
using SplitBatch.Lab;
using SplitBatch.Panel;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;
using SplitBatch.Panel.Liking;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Evidence;

/// <summary>
/// Whole sentences, for every outcome, protocol, number of panels, state of the lab and of the log. To take a change of wording over, run these
/// tests with SPLITBATCH_ACCEPT=1, and read the difference sentence by sentence before committing it.
/// </summary>
public class ApprovedSentencesTests
{
    private static readonly Protocol[] OneSided =
        [Protocol.Triangle, Protocol.DuoTrio, Protocol.DuoTrioConstantReference, Protocol.Tetrad, Protocol.TwoOutOfFive, Protocol.PairedDirectional, Protocol.ThreeAfc];

    [Fact]
    public void One_panel_by_outcome_and_protocol() => Approve("panels", text =>
    {
        foreach (var protocol in OneSided)
        {
            foreach (var (outcome, panel) in Outcomes(protocol)) Case(text, $"{protocol.Name}: {outcome}", panel);
        }

        foreach (var (name, panel) in Others()) Case(text, name, panel);
    });

    [Fact]
    public void Headlines_by_outcome_standing_and_what_else_could_explain_it() => Approve("headlines", text =>
    {
        foreach (var (outcome, panel) in MainPanels())
        {
            foreach (var lead in new[] { false, true })
            {
                foreach (var (state, change) in Otherwise())
                {
                    var evidence = change(SamplePanel.Trial(panel is null ? [] : [lead ? AsLead(panel) : panel]));
                    var headline = Verdict.Of(evidence).Headline;
                    Assert.True(headline.Split(' ').Length <= 60, headline);
                    text.Append($"{outcome}{(lead ? ", plan left" : "")}; {state}: {headline}\n");
                    if (panel is null) break;
                }
            }
        }
    });

    [Fact]
    public void The_lab_in_every_state() => Approve("lab", text =>
    {
        foreach (var (state, lab) in SampleLab.States)
        {
            foreach (var variable in new[] { "form of the bittering hop", "bitterness" })
            {
                var evidence = SamplePanel.Trial(SamplePanel.Single(Protocol.Triangle, 24, 11)) with { Bitterness = lab, Variable = variable };
                var verdict = Verdict.Of(evidence);
                text.Append($"## {state}{(variable == "bitterness" ? ", and bitterness is the variable" : "")}\n");
                Sentences(text, verdict.Findings.Where(finding => finding.About == Subject.Lab));
            }
        }
    });

    [Fact]
    public void The_halves_as_brewed() => Approve("batches", text =>
    {
        foreach (var (state, evidence) in Batches())
        {
            text.Append($"## {state}\n");
            Sentences(text, Verdict.Of(evidence).Findings.Where(finding => finding.About == Subject.Batches || finding.About == Subject.Doses));
        }
    });

    [Fact]
    public void Several_panels() => Approve("several", text =>
    {
        foreach (var (state, evidence) in Several())
        {
            var verdict = Verdict.Of(evidence);
            text.Append($"## {state}\n{verdict.Headline}\n");
            Sentences(text, verdict.Findings.Where(finding => finding.About == Subject.Panels || finding.About == Subject.Trial));
        }
    });

    /// <summary>One count for each answer that the protocol can give.</summary>
    private static IEnumerable<(string Outcome, CountedPanel Panel)> Outcomes(Protocol protocol)
    {
        var seen = new HashSet<string>();
        foreach (var (tasters, margin) in new[] { (4, 0.30), (12, 0.30), (24, 0.30), (60, 0.30), (96, 0.30), (240, 0.30), (400, 0.30) })
        {
            for (var right = 0; right <= tasters; right++)
            {
                var panel = SamplePanel.Single(protocol, tasters, right, margin);
                var margins = panel.Answer == PanelAnswer.Alarm ? "" : new MarginTested(panel.Planned, panel.Decision.Margin) { People = tasters, Sets = tasters, Right = right }.Outcome.ToString();
                var difference = panel.Answer == PanelAnswer.Alarm ? "" : new DifferenceTested(panel.Planned, panel.Decision.Difference).Outcome.ToString();
                var outcome = $"{panel.Answer} {difference} {margins}".TrimEnd();
                if (seen.Add(outcome)) yield return ($"{outcome}, {right} of {tasters}", panel);
            }
        }
    }

    private static IEnumerable<(string Name, CountedPanel Panel)> Others()
    {
        foreach (var (tasters, forB) in new[] { (4, 3), (24, 13), (60, 31), (60, 45), (400, 215) })
        {
            yield return ($"paired two-sided: {forB} of {tasters}", SamplePanel.Single(Protocol.PairedTwoSided, tasters, forB));
            var asked = SamplePanel.Plan(Protocol.PairedTwoSided, tasters) with { Attribute = "preferred" };
            yield return ($"preference: {forB} of {tasters}", SamplePanel.Of(asked, PanelResult.Of(tasters, forB)));
            yield return ($"preference, A expected: {forB} of {tasters}", SamplePanel.Of(asked with { Expected = Side.A }, PanelResult.Of(tasters, forB)));
        }

        foreach (var protocol in new[] { Protocol.ANotA, Protocol.SameDifferent })
        {
            yield return ($"{protocol.Name}: shown", SamplePanel.YesNo(protocol, 40, 50, 15, 50));
            yield return ($"{protocol.Name}: not shown", SamplePanel.YesNo(protocol, 22, 50, 19, 50));
            yield return ($"{protocol.Name}: far below", SamplePanel.YesNo(protocol, 8, 50, 35, 50));
            yield return ($"{protocol.Name}: too few", SamplePanel.YesNo(protocol, 1, 1, 0, 1));
        }

        foreach (var protocol in new[] { Protocol.Triangle, Protocol.ThreeAfc })
        {
            yield return ($"{protocol.Name}, sequential: shown", SamplePanel.Sequential(protocol, 60, _ => true));
            yield return ($"{protocol.Name}, sequential: ruled out", SamplePanel.Sequential(protocol, 60, i => i % 4 == 0));
            yield return ($"{protocol.Name}, sequential: undecided", SamplePanel.Sequential(protocol, 20, i => i % 7 is 0 or 2 or 4));
            yield return ($"{protocol.Name}, sequential: under way", SamplePanel.Sequential(protocol, 60, i => i % 7 is 0 or 2 or 4, upTo: 5));
        }

        yield return ("sequential, so few right that something must be wrong", SamplePanel.Sequential(Protocol.Triangle, 60, _ => false) is var none && none.Answer == PanelAnswer.Alarm ? none : SamplePanel.Single(Protocol.Triangle, 24, 1));
        yield return ("repeats, 4 people, 15 sets each, as guessing", SamplePanel.Repeats(Protocol.Triangle, [new(15, 5), new(15, 5), new(15, 5), new(15, 5)]));
        yield return ("repeats, 9 people, 6 sets each, ruled out", SamplePanel.Repeats(Protocol.Triangle, [.. Enumerable.Repeat(new TasterCount(6, 2), 9)]));
        yield return ("repeats, 9 people, 6 sets each, not ruled out", SamplePanel.Repeats(Protocol.Triangle, [.. Enumerable.Repeat(new TasterCount(6, 2), 8), new(6, 6)]));
        yield return ("repeats, one person", SamplePanel.Repeats(Protocol.Triangle, [new(30, 20)]));
        yield return ("repeats, shown", SamplePanel.Repeats(Protocol.Triangle, [.. Enumerable.Repeat(new TasterCount(4, 3), 10)]));
        yield return ("repeats of a two-sided pair, even", SamplePanel.Repeats(Protocol.PairedTwoSided, [.. Enumerable.Repeat(new TasterCount(4, 2), 30)]));
        yield return ("repeats of a two-sided pair, two camps", SamplePanel.Repeats(Protocol.PairedTwoSided, [.. Enumerable.Repeat(new TasterCount(4, 4), 15), .. Enumerable.Repeat(new TasterCount(4, 0), 15)]));
        yield return ("repeats of a two-sided pair, one leaning", SamplePanel.Repeats(Protocol.PairedTwoSided, [.. Enumerable.Repeat(new TasterCount(4, 3), 12)]));
        yield return ("repeats of a two-sided pair, too few people", SamplePanel.Repeats(Protocol.PairedTwoSided, [new(10, 10), new(10, 10)]));
        yield return ("preference with repeats", SamplePanel.Of(SamplePanel.Plan(Protocol.PairedTwoSided, 12) with { Attribute = "liked better", Replicates = 4 }, new([.. Enumerable.Repeat(new TasterCount(4, 3), 12)])));
        foreach (var standing in Enum.GetValues<PlanStanding>())
        {
            yield return ($"plan {standing}: shown", SamplePanel.Single(Protocol.Triangle, 24, 13) with { Standing = standing });
            yield return ($"plan {standing}: not shown", SamplePanel.Single(Protocol.Triangle, 24, 11) with { Standing = standing });
            yield return ($"plan {standing}: could not show", SamplePanel.Single(Protocol.Triangle, 2, 1) with { Standing = standing });
        }

        var looked = SamplePanel.Plan(Protocol.Triangle, 24);
        yield return ("looked early, shown all the same", SamplePanel.Of(looked, new(PanelResult.Of(24, 16).Tasters) { LookedEarly = true }));
        yield return ("looked early, shown only if read once", SamplePanel.Of(looked, new(PanelResult.Of(24, 13).Tasters) { LookedEarly = true }));
        yield return ("looked early, not shown", SamplePanel.Of(looked, new(PanelResult.Of(24, 9).Tasters) { LookedEarly = true }));
        yield return ("looked early, ruled out only if read once", SamplePanel.Of(SamplePanel.Plan(Protocol.Triangle, 60), new(PanelResult.Of(60, 22).Tasters) { LookedEarly = true }));
        yield return ("two planned looks, shown", SamplePanel.Of(looked, PanelResult.Of(24, 13), looks: [12, 24]));
        yield return ("two planned looks, not shown", SamplePanel.Of(looked, PanelResult.Of(24, 11), looks: [12, 24]));
        yield return ("control told, ruled out", SamplePanel.Of(SamplePanel.Plan(Protocol.Triangle, 60), new(PanelResult.Of(60, 20).Tasters) { Control = KnownControl.Of(Protocol.Triangle, 60, 40) }));
        yield return ("control not told", SamplePanel.Of(SamplePanel.Plan(Protocol.Triangle, 60), new(PanelResult.Of(60, 20).Tasters) { Control = KnownControl.Of(Protocol.Triangle, 60, 21) }));
        foreach (var (n, x, k) in new[] { (21, 13, 3), (22, 12, 2), (57, 20, 3), (54, 21, 6), (23, 12, 1), (50, 21, 30) })
        {
            yield return ($"{k} ballots missing beside {x} of {n}", SamplePanel.Single(Protocol.Triangle, n, x, missing: k));
        }

        yield return ("other rules give the same", SamplePanel.Of(looked, new(PanelResult.Of(24, 11).Tasters) { OtherCounts = [new("late ballots counted", PanelResult.Of(25, 11).Tasters)] }));
        yield return ("another rule gives another answer", SamplePanel.Of(looked, new(PanelResult.Of(24, 12).Tasters) { OtherCounts = [new("late ballots counted", PanelResult.Of(25, 13).Tasters), new("the last of double ballots counted", PanelResult.Of(24, 12).Tasters)] }));
        var prior = SamplePanel.Plan(Protocol.Triangle, 24) with { PriorA = 1, PriorB = 9 };
        yield return ("a prior of the plan's own", SamplePanel.Of(prior, PanelResult.Of(24, 11)) with { Bayes = BayesReading.Of(Protocol.Triangle, 24, 11, 0.3, 1, 9) });
        yield return ("questions beside", WithQuestions(RatingReport.Of(Ratings(), [.. Enumerable.Repeat(new Preference(Side.A, true), 6), .. Enumerable.Repeat(new Preference(Side.B, true), 15), new(null, false)])));
        yield return ("questions beside, a preference shown", WithQuestions(RatingReport.Of([], [.. Enumerable.Repeat(new Preference(Side.A, true), 2), .. Enumerable.Repeat(new Preference(Side.B, true), 20)])));
        yield return ("a preference among uneven cups, as choosing blindly", WithQuestions(RatingReport.Of([], [.. Enumerable.Repeat(new Preference(Side.B, true, 1.0 / 3), 8), .. Enumerable.Repeat(new Preference(Side.A, false, 1.0 / 3), 16)])));
        yield return ("a preference among uneven cups, shown", WithQuestions(RatingReport.Of([], [.. Enumerable.Repeat(new Preference(Side.B, true, 1.0 / 3), 12), .. Enumerable.Repeat(new Preference(Side.B, false, 2.0 / 3), 12)])));
        yield return ("words", SamplePanel.Single(Protocol.Triangle, 24, 11) with { Comments = CommentTally.Of([new("T1", Side.A, "malty"), new("T2", Side.B, "malty, bitter"), new("T3", Side.B, "bitter")]) });
        yield return ("words that set the halves apart", SamplePanel.Single(Protocol.Triangle, 24, 11) with { Comments = CommentTally.Of(Enumerable.Range(0, 14).Select(i => new Comment($"T{i}", Side.B, "harsh bitter"))) });
        yield return ("a bias", WithBias(right => right < 12));
        yield return ("no bias", WithBias(right => right % 2 == 0));
        yield return ("departures and remarks", SamplePanel.Single(Protocol.Triangle, 19, 11) with
        {
            Departures = SamplePanel.Plan(Protocol.Triangle, 24).Departures(new(Protocol.Triangle, 19, 19) { Seed = 3 }), Remarks = ["A ballot of T05 is not counted: the taster knew the variable."],
        });
    }

    private static CountedPanel WithQuestions(RatingReport report) => SamplePanel.Single(Protocol.Tetrad, 24, 11) with { Ratings = report };

    private static IEnumerable<Rating> Ratings() => Enumerable.Range(0, 8).SelectMany(i => new[] { new Rating($"T{i}", "bitterness", 4, 6 + (i % 2), i < 5), new Rating($"T{i}", "liking", 5, 5 + (i % 3) - 1, i < 5) })
        .Append(new("T9", "foam", 1, 2));

    private static CountedPanel WithBias(Func<int, bool> right)
    {
        var check = BiasCheck.OfRightAnswers("serving order", Enumerable.Range(0, 24).Select(i => (i < 12 ? "AAB" : "ABB", right(i))), seed: 7);
        return SamplePanel.Single(Protocol.Triangle, 24, 12) with { BiasWhenAsked = new(new BiasReport([check])) };
    }

    private static IEnumerable<(string Outcome, CountedPanel? Panel)> MainPanels()
    {
        yield return ("no panel", null);
        yield return ("under way", SamplePanel.Sequential(Protocol.Triangle, 60, i => i % 7 is 0 or 2 or 4, upTo: 5));
        yield return ("below chance", SamplePanel.Single(Protocol.PairedDirectional, 60, 15));
        yield return ("shown", SamplePanel.Single(Protocol.Triangle, 24, 15));
        yield return ("shown by a two-sided pair", SamplePanel.Single(Protocol.PairedTwoSided, 60, 15));
        yield return ("shown by A-not-A", SamplePanel.YesNo(Protocol.ANotA, 40, 50, 15, 50));
        yield return ("shown, small", SamplePanel.Single(Protocol.Triangle, 300, 118));
        yield return ("ruled out", SamplePanel.Single(Protocol.Tetrad, 60, 20));
        yield return ("ruled out by a directed sequential panel", SamplePanel.Sequential(Protocol.ThreeAfc, 60, i => i % 4 == 0));
        yield return ("open", SamplePanel.Single(Protocol.DuoTrio, 24, 13));
        yield return ("open, one set", SamplePanel.Single(Protocol.TwoOutOfFive, 1, 1));
        yield return ("preference shown", SamplePanel.Of(SamplePanel.Plan(Protocol.PairedTwoSided, 60) with { Attribute = "preferred" }, PanelResult.Of(60, 15)));
        yield return ("preference shown for B", SamplePanel.Of(SamplePanel.Plan(Protocol.PairedTwoSided, 60) with { Attribute = "preferred" }, PanelResult.Of(60, 45)));
        yield return ("preference not shown", SamplePanel.Of(SamplePanel.Plan(Protocol.PairedTwoSided, 24) with { Attribute = "preferred" }, PanelResult.Of(24, 12)));
    }

    private static IEnumerable<(string State, Func<TrialEvidence, TrialEvidence> Change)> Otherwise()
    {
        yield return ("nothing else known", e => e with { Parity = Log() });
        yield return ("no log", e => e);
        yield return ("lab gap", e => e with { Bitterness = SampleLab.Apart, Parity = Log() });
        yield return ("lab gap that is the variable", e => e with { Bitterness = SampleLab.Apart, Variable = "bitterness", Parity = Log() });
        yield return ("lab gap and long names", e => e with { Bitterness = SampleLab.Apart, NameA = "whole cones of the first harvest, kept cold", NameB = "pellets of the same harvest, kept cold", Parity = Log() });
        yield return ("logged inequality", e => e with { Parity = Log(BatchEntry.Measured("1", Side.A, "pH", 4.2, "pH", 0.05), BatchEntry.Measured("2", Side.B, "pH", 4.6, "pH", 0.05)) });
        yield return ("lots unlike", e => e with { HopConfounds = [new(HopDifference.CropYear, "2024", "2025", "Crops differ.")], Parity = Log() });
        yield return ("not measured", e => e with { Parity = new BatchLog([]).Parity() });
        yield return ("long names, nothing else known", e => e with { NameA = "whole cones of the first harvest, kept cold", NameB = "pellets of the same harvest, kept cold", Parity = Log() });
    }

    private static CountedPanel AsLead(CountedPanel panel) => panel with
    {
        Standing = PlanStanding.NotDeclared, Departures = (panel.Plan with { Declared = null }).Departures(new(panel.Plan.Protocol, panel.Plan.Tasters, panel.Plan.Sets)),
    };

    /// <summary>A log in which every expected quantity was the same in both halves, and what is added.</summary>
    private static ParityCheck Log(params BatchEntry[] more)
    {
        IEnumerable<BatchEntry> same = ParityCheck.Expected.Where(quantity => !more.Any(entry => entry.Quantity == quantity)).Select((quantity, i) => quantity switch
        {
            BatchLog.OriginalGravity => BatchEntry.Measured($"s{i}", null, quantity, 1.050, "SG", 0.001),
            BatchLog.FinalGravity => BatchEntry.Measured($"s{i}", null, quantity, 1.010, "SG", 0.001),
            "volume into fermenter" => BatchEntry.Measured($"s{i}", null, quantity, 20, "L", 0.2),
            "pitching temperature" or "fermentation temperature" => BatchEntry.Measured($"s{i}", null, quantity, 18, "°C", 0.3),
            "pH" => BatchEntry.Measured($"s{i}", null, quantity, 4.4, "pH", 0.05),
            "colour" => BatchEntry.Measured($"s{i}", null, quantity, 20, "EBC", 1),
            "carbonation" => BatchEntry.Measured($"s{i}", null, quantity, 2.4, "vol", 0.1),
            _ => BatchEntry.Noted($"s{i}", null, quantity, "alike"),
        });
        return new BatchLog([.. same, .. more]).Parity();
    }

    private static IEnumerable<(string State, TrialEvidence Evidence)> Batches()
    {
        var trial = SamplePanel.Trial();
        yield return ("no log", trial);
        yield return ("all alike", trial with { Parity = Log(), HeldEqual = ["yeast lot and pH"] });
        yield return ("nothing measured", trial with { Parity = new BatchLog([]).Parity() });
        yield return ("one quantity not measured", trial with { Parity = Log(BatchEntry.Measured("1", Side.A, "pH", 4.2, "pH", 0.05)) });
        yield return ("beyond the instruments", trial with
        {
            Parity = Log(BatchEntry.Measured("1", Side.A, "pH", 4.2, "pH", 0.05), BatchEntry.Measured("2", Side.B, "pH", 4.6, "pH", 0.05), BatchEntry.Measured("3", Side.A, "fermentation temperature", 18, "°C", 0.3), BatchEntry.Measured("4", Side.B, "fermentation temperature", 18.2, "°C", 0.3)),
            HeldEqual = ["pH and yeast lot", "fermentation temperature"],
        });
        yield return ("uncertainty not logged", trial with { Parity = Log(BatchEntry.Measured("1", Side.A, "colour", 20, "EBC"), BatchEntry.Measured("2", Side.B, "colour", 20.04, "EBC")) });
        yield return ("other words", trial with { Parity = Log(BatchEntry.Noted("1", Side.A, "packaging date", "2026-01-26"), BatchEntry.Noted("2", Side.B, "packaging date", "2026-01-28")), HeldEqual = ["packaging day and carbonation"] });
        yield return ("gravities apart", trial with { Parity = Log(BatchEntry.Measured("1", Side.A, BatchLog.FinalGravity, 1.010, "SG", 0.001), BatchEntry.Measured("2", Side.B, BatchLog.FinalGravity, 1.014, "SG", 0.001)) });
        yield return ("hop lots", trial with { Parity = Log(), HopConfounds = [new(HopDifference.CropYear, "2024", "2025", "Crops differ in oils."), new(HopDifference.Storage, "4 °C", "not stated", "Warmer hops age faster.")] });
        foreach (var units in new[] { UnitSystem.Metric, UnitSystem.Us })
        {
            yield return ($"doses, {units}", trial with { Parity = Log(), Units = units, Doses = Bitterness.ChargeMatch.Solve(Kettle.Metric(20, 1.050), 32, HopLot.Cones("cones", 5), HopLot.Pellets("pellets", 11)) });
        }
    }

    private static IEnumerable<(string State, TrialEvidence Evidence)> Several()
    {
        var (main, evening) = (SamplePanel.Single(Protocol.Triangle, 24, 11), SamplePanel.Single(Protocol.Tetrad, 24, 12, name: "evening"));
        var single = SamplePanel.Single(Protocol.Triangle, 24, 13, name: "main.2");
        PanelCount[] counts = [new("main", Protocol.Triangle, 24, 11), new("evening", Protocol.Tetrad, 24, 12)];
        yield return ("no panel, invented", SamplePanel.Trial() with { Invented = true });
        yield return ("one panel", SamplePanel.Trial(main));
        yield return ("one panel, an earlier one not counted", SamplePanel.Trial(main) with { NotCounted = ["first", "second"], PassedOver = ["first", "second"] });
        yield return ("one panel, a later one not counted", SamplePanel.Trial(main) with { NotCounted = ["later"] });
        yield return ("two side by side", SamplePanel.Trial(main, evening));
        yield return ("two with like names", SamplePanel.Trial(main, single));
        yield return ("two combined", SamplePanel.Trial(main, evening) with { Together = Forest.Of(counts).Combine() });
        yield return ("two combined that disagree", SamplePanel.Trial(main, evening) with { Together = Forest.Of([new("main", Protocol.Triangle, 100, 95), new("evening", Protocol.Triangle, 100, 33)]).Combine() });
        yield return ("two combined without an upper limit", SamplePanel.Trial(main, evening) with { Together = Forest.Of([new("main", Protocol.Triangle, 24, 24), new("evening", Protocol.Triangle, 24, 24)]).Combine() });
        yield return ("the same people, one task", SamplePanel.Trial(main, single) with { TogetherByPeople = People(20, Protocol.Triangle) });
        yield return ("the same people, two tasks", SamplePanel.Trial(main, evening) with { TogetherByPeople = People(20, Protocol.Tetrad) });
        yield return ("the same few people, two tasks", SamplePanel.Trial(main, evening) with { TogetherByPeople = People(5, Protocol.Tetrad) });
        yield return ("one person, two tasks", SamplePanel.Trial(main, evening) with { TogetherByPeople = People(1, Protocol.Tetrad) });
        yield return ("one of two below chance", SamplePanel.Trial(SamplePanel.Single(Protocol.Triangle, 24, 1), evening) with { Together = Forest.Of(counts).Combine() });
    }

    private static ReturningPeople People(int people, Protocol second) => ReturningPeople.Of(
        Enumerable.Range(0, people).Select(i => new TaskCount[] { new(Protocol.Triangle, 1, i % 2), new(second, 1, i % 3 == 0 ? 1 : 0) }));

    private static void Case(StringBuilder text, string name, CountedPanel panel)
    {
        var verdict = SamplePanel.Verdict(panel);
        text.Append($"## {name}\n{verdict.Headline}\n");
        Sentences(text, verdict.Findings.Where(finding => finding.About == Subject.Panel(panel.Plan.Name)));
    }

    private static void Sentences(StringBuilder text, IEnumerable<Finding> findings)
    {
        foreach (var claim in findings.Select(Claim.Of)) text.Append($"[{claim.Id}] {claim.Sentence}\n");
        text.Append('\n');
    }

    private static void Approve(string name, Action<StringBuilder> write, [CallerFilePath] string here = "")
    {
        var text = new StringBuilder();
        write(text);
        var file = Path.Combine(Path.GetDirectoryName(here)!, $"{name}.approved.txt");
        if (Environment.GetEnvironmentVariable("SPLITBATCH_ACCEPT") == "1") File.WriteAllText(file, text.ToString());
        string[] approved = File.Exists(file) ? File.ReadAllLines(file) : [], now = text.ToString().TrimEnd('\n').Split('\n');
        var changed = Enumerable.Range(0, Math.Max(approved.Length, now.Length)).FirstOrDefault(i => approved.ElementAtOrDefault(i) != now.ElementAtOrDefault(i), -1);
        Assert.True(approved.AsSpan().TrimEnd("").SequenceEqual(now.AsSpan().TrimEnd("")), $"{name}.approved.txt, line {changed + 1}:\napproved: {approved.ElementAtOrDefault(changed)}\nnow:      {now.ElementAtOrDefault(changed)}");
    }
}
