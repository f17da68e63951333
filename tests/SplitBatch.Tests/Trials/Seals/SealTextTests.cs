using SplitBatch.Trials.Files;
using System.Text;
using SplitBatch.Panel.Ballots;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Trials.Seals;

public class SealTextTests
{
    private static Seal Read(byte[] bytes, string file = "seal-1.json")
    {
        var faults = new FaultList();
        var seal = SealText.Read(file, bytes, faults);
        Assert.Empty(faults);
        return seal!;
    }

    [Fact]
    public void A_seal_reads_back_as_it_was_written()
    {
        var bytes = SealText.Write(SomePlan.Seal(ballots: ("main", 0)));
        var seal = Read(bytes);
        Assert.Empty(PlanDifference.Between(SomePlan.Of(SomePlan.Main), seal.Plan));
        Assert.Equal((1, SomePlan.Evening, "SplitBatch 9.9.9", "Cool or warm?"), (seal.Number, seal.At, seal.MadeBy, seal.Title));
        Assert.Equal(SomePlan.Evening.Offset, seal.At.Offset);
        Assert.Equal(Fingerprint.Of(bytes), seal.Fingerprint);
        Assert.Equal(bytes, SealText.Write(seal));
    }

    [Fact]
    public void An_amendment_names_the_seal_before_it_and_the_reason()
    {
        var first = Fingerprint.Of("x"u8);
        var seal =
            Read(SealText.Write(SomePlan.Seal(2, before: first, because: "one of the tasters cannot come", ballots: ("evening", 3))),
                "seal-2.json");
        Assert.Equal((first, "one of the tasters cannot come", 3, 0),
            (seal.Before, seal.Because, seal.BallotsOf("Evening"), seal.BallotsOf("main")));
    }

    [Fact]
    public void A_person_can_read_it()
    {
        var text = Encoding.UTF8.GetString(SealText.Write(SomePlan.Seal()));
        Assert.StartsWith("{\n  \"seal\": 1,\n  \"//\": \"What was fixed before pouring. The fingerprint is the SHA-256 of this file, "
            + "byte for byte: sha256sum seal-1.json\",", text, StringComparison.Ordinal);
        Assert.Contains("\"sealed\": \"2026-04-20T16:05:00Z\",\n  \"local time\": \"2026-04-20 18:05:00 +02:00\",", text,
            StringComparison.Ordinal);
        Assert.Contains("\"margin\": 0.25,", text, StringComparison.Ordinal);
        Assert.EndsWith("}\n", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_property_of_a_plan_and_of_its_rules_is_sealed()
    {
        // The day of declaring is that of the seal; what follows from the others is not stored.
        string[] elsewhere = [nameof(PanelPlan.Declared)];
        foreach (var property in typeof(PanelPlan).GetProperties()
            .Where(property => property.CanWrite && !elsewhere.Contains(property.Name)))
        {
            AssertSealed(property, SomePlan.Main, changed => SomePlan.Of(changed));
        }

        foreach (var property in typeof(BallotRules).GetProperties().Where(property => property.CanWrite && !property.GetMethod!.IsStatic))
        {
            AssertSealed(property, SomePlan.Main.Rules, changed => SomePlan.Of(SomePlan.Main with { Rules = changed }));
        }

        static void AssertSealed<T>(System.Reflection.PropertyInfo property, T value, Func<T, TrialPlan> plan)
            where T : class
        {
            var copy = (T)typeof(T).GetMethod("<Clone>$")!.Invoke(value, null)!;
            var other = Other(property.PropertyType, property.GetValue(value), property.Name);
            property.SetValue(copy, other);
            var found = PlanDifference.Between(plan(value), plan(copy));
            Assert.True(found.Count > 0, $"{typeof(T).Name}.{property.Name} can change without the seal noticing.");
        }
    }

    private static object Other(Type type, object? value, string name) => value switch
    {
        null when name == nameof(PanelPlan.MarginAsDPrime) => 1.5,
        double number => number / 2,
        int number => number + 1,
        string text => text + "!",
        Protocol => Protocol.PairedDirectional,
        Side side => side == Side.A ? Side.B : Side.A,
        Enum kind => Enum.GetValues(type).Cast<object>().First(one => !one.Equals(kind)),
        DateTimeOffset time => time.AddMinutes(1),
        IReadOnlyList<string> list => (IReadOnlyList<string>)[.. list, "one more"],
        BallotRules rules => rules with { Brewers = ["T11"] },
        _ => throw new NotSupportedException(
            $"This test does not know how to change {name}, of {type.Name}; teach it, and seal the new property."),
    };

    [Theory]
    [InlineData("\"seal\": 1", "\"seal\": 2", "The number is not that of the file's name")]
    [InlineData("\"salt\"", "\"pepper\"", "The name is not known here")]
    [InlineData("\"margin\": 0.25", "\"margin\": 1.25", "out of range")]
    [InlineData("18:05:00 +02:00", "19:05:00 +02:00", "another moment")]
    [InlineData("2026-04-20T16:05:00Z", "yesterday", "cannot be read")]
    [InlineData("\"plan\": {", "\"plans\": {", "missing")]
    [InlineData("\n}\n", "\n", "cannot be read as JSON")]
    public void A_seal_that_was_spoilt_is_a_fault_that_names_the_place(string old, string by, string says)
    {
        var text = Encoding.UTF8.GetString(SealText.Write(SomePlan.Seal()));
        Assert.Contains(old, text, StringComparison.Ordinal);
        var faults = new FaultList();
        SealText.Read("seal-1.json", Encoding.UTF8.GetBytes(text.Replace(old, by, StringComparison.Ordinal)), faults);
        Assert.Contains(faults, fault => fault.File == "seal-1.json" && fault.Problem.Contains(says, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("seal-1.json", 1)]
    [InlineData("seal-12.json", 12)]
    [InlineData("Seal-2.JSON", 2)]
    [InlineData("seal-01.json", null)]
    [InlineData("seal-1.json.bak", null)]
    [InlineData("seal-one.json", null)]
    public void Only_files_named_as_seals_are_seals(string file, int? number) => Assert.Equal(number, SealText.NumberOf(file));
}
