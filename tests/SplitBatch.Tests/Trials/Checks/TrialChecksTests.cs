namespace SplitBatch.Trials.Checks;

/// <summary>
/// What is legal but dubious: one trial without a warning, and one change to it for each warning, whose whole text is asserted.
/// </summary>
public sealed class TrialChecksTests : IDisposable
{
    private const string Panel = """{ "name": "main", "protocol": "triangle", "declared": "2026-04-20", "alpha": 0.05, "power": 0.80,"""
        + """ "margin": 0.30, "beta": 0.05, "tasters": 40, "seed": 5 }""";

    /// <summary>Said of every plan that nobody sealed; the seal has tests of its own.</summary>
    private const string NotSealed = "trial.json, panels[0].declared = \"2026-04-20\": The plan of panel main is not sealed yet. "
        + "Accepted: a plan that is sealed before the first cup is poured (splitbatch declare, or trial.Seal()).";

    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("trial-");

    public TrialChecksTests()
    {
        Describe();
        Write("hops.csv", "lot,form,alpha [%],crop year,assay date\nold crop,pellets,6.0,2024,2024-11-20\nnew "
            + "crop,pellets,6.2,2025,2025-10-20\ncones,whole cones,5.4,2025,2025-10-20\n");
        Write("charges.csv", "beer,lot,amount [g],stage,time [min]\nA,cones,55,boil,60\nB,new crop,46,boil,60\n");
        Log("3,2026-03-14,A,yeast lot,Y-1,,", "4,2026-03-14,B,yeast lot,Y-1,,");
        Return("S1", "S2");
    }

    public void Dispose() => folder.Delete(recursive: true);

    private void Write(string file, string text) => File.WriteAllText(Path.Combine(folder.FullName, file), text);

    private void Describe(string panel = Panel, string samples = """{ "S1": "A", "S2": "B" }""",
        string precision = """[ { "kind": "standard deviation", "condition": "repeatability", "value [BU]": 0.6 } ]""",
        string allergens = "\"allergens\": [\"none but barley\"],") =>
        Write("trial.json", $$"""
            {
              "title": "Cones or pellets?", "question": "Can tasters tell?", "variable": "hop form",
              "beers": { "A": "cones", "B": "pellets" },
              {{allergens}}
              "kettle": { "volume [L]": 20, "gravity [SG]": 1.050 },
              "lab": { "samples": {{samples}}, "precision": {{precision}} },
              "panels": [ {{panel}} ]
            }
            """);

    private void Log(params string[] rows) =>
        Write("batch-log.csv",
            "id,when,beer,quantity,value,supersedes,reason\n1,2026-03-14,A,pitching date,2026-03-14,,\n2,2026-03-14,B,pitching "
                + "date,2026-03-14,,\n" + string.Join('\n', rows) + "\n");

    private void Return(string first, string second) =>
        Write("lab-returns.csv", $"id,sample,analyte,value,unit,supersedes,reason\n1,{first},bitterness,22.5,BU,,\n2,"
            + $"{second},bitterness,23.5,BU,,\n");

    private string[] Warnings()
    {
        var found = Trial.Check(folder.FullName, new DateOnly(2026, 6, 1));
        Assert.All(found, fault => Assert.Equal(Severity.Warning, fault.Severity));
        return [.. found.Select(fault => fault.ToString()).Where(text => text != NotSealed)];
    }

    private void Warns(params string[] expected) => Assert.Equal(expected, Warnings());

    [Fact]
    public void A_sound_trial_gets_no_warning_but_that_it_is_not_sealed()
    {
        Warns();
        Assert.Equal(NotSealed, Assert.Single(Trial.Check(folder.FullName, new DateOnly(2026, 6, 1))).ToString());
    }

    [Fact]
    public void A_plan_that_is_not_declared()
    {
        Describe(Panel.Replace("\"declared\": \"2026-04-20\", ", "", StringComparison.Ordinal));
        Warns("trial.json, panels[0].declared: The plan of panel main is not sealed yet. Accepted: a plan that is sealed before the first "
            + "cup is poured (splitbatch declare, or trial.Seal()).");
        Write("ballots-main.csv", "taster,answer,when\nT01,123,2026-04-18 20:10\n");
        Warns("trial.json, panels[0].declared: The plan of panel main was neither sealed nor declared: a result without a plan fixed "
            + "beforehand is a lead to follow and not a test. Accepted: a plan that is sealed before the first cup is poured (splitbatch "
            + "declare, or trial.Seal()).");
    }

    [Fact]
    public void A_plan_that_was_dated_and_not_sealed()
    {
        Write("ballots-main.csv", "taster,answer,when\nT01,123,2026-04-21 20:10\n");
        Warns("trial.json, panels[0].declared = \"2026-04-20\": The plan of panel main was not sealed before its first ballot, so nobody "
            + "can check that it was fixed beforehand. Accepted: a plan that is sealed before the first cup is poured (splitbatch "
            + "declare, or trial.Seal()).");
    }

    [Fact]
    public void Allergens_that_nobody_has_named()
    {
        Describe(allergens: "");
        Warns("trial.json, allergens: The trial does not say which allergens are in the beers, so its briefing and ballots are not "
            + "printed. Accepted: a list of barley, wheat, rye, oats, spelt, lactose, nuts, sulphite, fish finings, fruit, none but "
            + "barley, other: and the name. Name what is in either beer, in one list for both; it does not say which beer is which.");
    }

    [Fact]
    public void A_plan_that_is_declared_after_the_first_ballot()
    {
        Write("ballots-main.csv", "taster,answer,when\nT01,123,2026-04-18 20:10\n");
        Warns("trial.json, panels[0].declared = \"2026-04-20\": The plan of panel main was declared after its first ballot (2026-04-18), "
            + "so its result is a lead to follow and not a test. Accepted: a plan that is sealed before the first cup is poured "
            + "(splitbatch declare, or trial.Seal()).");
    }

    // ISO 4120 triangle tables as in the panel's own tests: 40 tasters for alpha 5 %, power 80 %, 30 % discriminators.
    // By hand: with 10 tasters even 3 right is more than beta allows (the chance of 3 or fewer at p = 8/15 is 0.13), and guessing gives
    // 3.3.
    [Fact]
    public void A_panel_too_small_for_its_margin()
    {
        Describe(Panel.Replace("\"tasters\": 40", "\"tasters\": 10", StringComparison.Ordinal)
            .Replace("\"power\": 0.80", "\"power\": 0.01", StringComparison.Ordinal));
        Warns("trial.json, panels[0].tasters = \"10\": 10 tasters are too few for the declared margin: no count, not even that of mere "
            + "guessing, rules out 30 % discriminators (beta 5 %). Accepted: 24 tasters or more for this margin. More tasters, a larger "
            + "margin or a larger beta; each has to be decided before pouring.");
    }

    // By hand: 9 of 15 is the critical count at 1/3 and 5 %, and at 8/15 it is reached in 40 of 100 panels (exact binomial).
    [Fact]
    public void A_panel_more_likely_to_miss_its_margin_than_to_show_it()
    {
        Describe(Panel.Replace("\"tasters\": 40", "\"tasters\": 15", StringComparison.Ordinal)
            .Replace("\"beta\": 0.05", "\"beta\": 0.5", StringComparison.Ordinal));
        Warns("trial.json, panels[0].tasters = \"15\": 15 tasters are more likely to miss a difference as large as the margin than to "
            + "show it: it is shown in 40 % of such panels, and the plan wants 80 %. Accepted: 40 tasters or more for the power that the "
            + "plan wants. Plan more tasters, or a larger margin; both have to be decided before pouring.");
    }

    [Fact]
    public void An_assay_older_than_a_year_on_brewing_day()
    {
        Write("charges.csv", "beer,lot,amount [g],stage,time [min]\nA,old crop,47,boil,60\nB,old crop,47,whirlpool,0\n");
        Warns("hops.csv, row 2, assay date = \"2024-11-20\": The assay of lot old crop is more than a year old on brewing day "
            + "(2026-03-14); hops lose alpha acid in storage, so the charge is probably weaker than its figure says. Accepted: an assay "
            + "of the last twelve months. Have the lot assayed again. Where hops.csv tells how it was kept (storage, packaging, loss in "
            + "six months) or its HSI on brew day, the figure is aged to brewing day.");
    }

    [Fact]
    public void An_assay_older_than_a_year_today_before_anything_is_brewed()
    {
        File.Delete(Path.Combine(folder.FullName, "batch-log.csv"));
        File.Delete(Path.Combine(folder.FullName, "charges.csv"));
        Warns("hops.csv, row 2, assay date = \"2024-11-20\": The assay of lot old crop is more than a year old today (2026-06-01); hops "
            + "lose alpha acid in storage, so the charge is probably weaker than its figure says. Accepted: an assay of the last twelve "
            + "months. Have the lot assayed again. Where hops.csv tells how it was kept (storage, packaging, loss in six months) or its "
            + "HSI on brew day, the figure is aged to brewing day.");
    }

    [Fact]
    public void Harvests_that_differ_between_the_halves()
    {
        Write("hops.csv", "lot,form,alpha [%],crop year\nnew crop,pellets,6.2,2025\ncones,whole cones,5.4,2024\n");
        Warns("hops.csv, row 2, crop year = \"2025\": Half B is hopped with new crop of 2025 and half A with cones of 2024: the harvest "
            + "differs besides the variable, and the test cannot tell the two apart. Accepted: lots of one harvest in both halves. Use "
            + "one harvest, or name the harvest as the variable.");
    }

    [Fact]
    public void Charges_of_one_half_only()
    {
        Write("charges.csv", "beer,lot,amount [g],stage,time [min]\nA,cones,55,boil,60\n");
        Warns("charges.csv, beer: Half A has hop charges and half B has none, so the doses cannot be compared. Accepted: a row for each "
            + "addition of each half, with A or B. Add what went into half B. Where both halves got an addition, it takes two rows.");
    }

    [Fact]
    public void Halves_that_differ_in_yeast()
    {
        Log("3,2026-04-03,A,yeast lot,Y-1,,", "4,2026-04-03,B,yeast lot,Y-2,,");
        Warns("batch-log.csv, row 5, value = \"Y-2\": The halves differ in yeast lot: Y-1 in A, Y-2 in B. This differs besides the "
            + "variable, and the test cannot tell the two apart. Accepted: the same in both halves. If this is a slip of the pen, log a "
            + "correction. If it follows from the variable, name it in trial.json under \"follows from the variable\". If it is so, the "
            + "write-up will say it.");
    }

    [Fact]
    public void Halves_that_were_pitched_on_different_days()
    {
        Log("3,2026-03-15,B,pitching date,2026-03-15,2,the first row named the wrong day");
        Warns("batch-log.csv, row 4, value = \"2026-03-15\": The halves differ in pitching date: 2026-03-14 in A, 2026-03-15 in B. This "
            + "differs besides the variable, and the test cannot tell the two apart. Accepted: the same in both halves. If this is a slip "
            + "of the pen, log a correction. If it follows from the variable, name it in trial.json under \"follows from the variable\". "
            + "If it is so, the write-up will say it.");
    }

    [Fact]
    public void A_lab_value_without_a_precision()
    {
        Describe(precision: "[]");
        Warns("lab-returns.csv, row 2, value = \"22.5\": No precision is stated for bitterness, so nobody can say whether two results "
            + "differ by more than the method repeats. Accepted: in trial.json under \"lab\": \"precision\": [ { \"analyte\": "
            + "\"bitterness\", \"kind\": ..., \"condition\": ..., \"value [BU]\": ... } ]. Ask the lab for the repeatability of its "
            + "method and what kind of figure it is.");
    }

    [Fact]
    public void A_precision_that_can_be_read_in_several_ways()
    {
        Describe(precision: """[ { "value [%]": 5 } ]""");
        var warning = Assert.Single(Warnings());
        Assert.StartsWith("trial.json, lab.precision: The precision of bitterness can be read in several ways:", warning,
            StringComparison.Ordinal);
        Assert.EndsWith("Accepted: \"kind\": coefficient of variation, standard deviation or 95 % limit; \"condition\": repeatability or "
            + "reproducibility. Ask the lab which it is; until then every reading is worked out beside the others.", warning,
            StringComparison.Ordinal);
    }

    [Fact]
    public void A_value_that_only_one_half_has()
    {
        Return("S1", "S1");
        Warns("lab-returns.csv, row 2, analyte = \"bitterness\": Half B has no result for bitterness, so the halves cannot be compared by "
            + "it. Accepted: results of both halves, of one lab and one run where possible. Log the other sample's result, or have it "
            + "measured.");
    }

    [Fact]
    public void A_sample_that_the_key_does_not_know()
    {
        Describe(samples: """{ "K-17": "A", "K-18": "B" }""");
        Return("K-17", "K-I8");
        Warns("lab-returns.csv, row 3, sample = \"K-I8\": Sample K-I8 is not in the key of the samples, so its results belong to neither "
            + "half. Accepted: K-17, K-18. Did you mean \"K-18\"?");
    }

    [Fact]
    public void Blind_samples_are_as_they_should_be()
    {
        Describe(samples: "{}");
        Warns();
    }

    [Fact]
    public void A_column_that_is_nearly_one_that_is_read()
    {
        Write("hops.csv", "lot,form,alpha [%],crop yaer,supplier\nnew crop,pellets,6.2,2025,somebody\ncones,whole "
            + "cones,5.4,2025,somebody\n");
        Warns("hops.csv, crop yaer: No column of this name is read, so its values are passed over. Accepted: lot, form, alpha, alpha "
            + "uncertainty, beta, beta uncertainty, crop year, assay date, storage, packaging, HSI, HSI on brew day, loss in six months, "
            + "price per kg. Did you mean \"crop year\"?");
    }

    [Fact]
    public void Files_that_nothing_reads()
    {
        Write("lab-return.csv", "a,b\n");
        Write("hops.xlsx", "");
        File.Move(Path.Combine(folder.FullName, "lab-returns.csv"), Path.Combine(folder.FullName, "lab-return.csv"), overwrite: true);
        const string Known = "Accepted: hops.csv, charges.csv, batch-log.csv, lab-returns.csv, panel-log.csv, serving-main.csv, "
            + "ballots-main.csv, ratings-main.csv, comments-main.csv, codes-main.csv.";
        Warns(
            $"hops.xlsx: This is a spreadsheet's own format, which is not read. {Known} Save the sheet as CSV UTF-8 under the name of the "
                + $"file that it belongs to.",
            $"lab-return.csv: No file of this name is read. {Known} Did you mean \"lab-returns.csv\"?");
    }

    [Fact]
    public void One_serving_order_for_everybody()
    {
        Write("serving-main.csv", "protocol,taster,set,position,code,beer\n" + string.Concat(Enumerable.Range(1, 6).Select(set =>
            $"triangle,T0{set},{set},1,453,A\ntriangle,T0{set},{set},2,267,A\ntriangle,T0{set},{set},3,392,B\n")));
        Warns("serving-main.csv: The serving orders are not balanced: ABB 0, BAB 0, BBA 0, AAB 6, ABA 0, BAA 0. A taster's liking for a "
            + "position can then pass for a difference between the beers. Accepted: each order equally often, or once more than another.");
    }

    [Fact]
    public void A_sample_that_is_said_to_be_both_halves_is_a_fault_and_not_a_crash()
    {
        Write("lab-returns.csv", "id,sample,beer,analyte,value,unit,supersedes,reason\n1,S1,B,bitterness,22.5,BU,,\n");
        var fault = Assert.Single(Trial.Check(folder.FullName));
        Assert.Equal("lab-returns.csv, row 2, beer = \"B\": Sample S1 is said to be the other half elsewhere. Accepted: the same half in "
            + "every row of a sample and in trial.json.", fault.ToString());
    }
}
