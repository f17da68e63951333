namespace SplitBatch.Proof.ErrorRates;

/// <summary>The short version of the error rates; the long one is published beside this project.</summary>
public class ErrorRateTests
{
    private const int Runs = 300, Seed = 11;

    public static TheoryData<string> Tables => [.. RateTable.All.Select(table => table.Title)];

    [Theory]
    [MemberData(nameof(Tables))]
    public void Nothing_false_is_said_more_often_than_promised(string title)
    {
        var rates = RateTable.All.Single(table => table.Title == title).Run(Runs, Seed).ToArray();
        Assert.Contains(rates, rate => rate.Promised is not null);
        Assert.All(rates, rate => Assert.True(rate.IsKept, $"{rate.Setting}: {rate.Claim}, {rate.Bad} of {rate.Runs}"));
    }

    /// <summary>
    /// The rows that show a habit: if they did not break what is promised to the rule beside them, the table would show nothing.
    /// </summary>
    [Theory]
    [InlineData("Few people, many sets", "is ruled out, as tasters", 0.10)]
    [InlineData("The same people in several panels", "it misses as independent", 0.05)]
    [InlineData("Preference", "a preference, tested against one half", 0.05)]
    [InlineData("Looking early", "a difference, as if read once", 0.05)]
    [InlineData("Several brews of one belief", "a mean difference, counts pooled", 0.05)]
    [InlineData("A control of known difference", "30 % is ruled out, without a control", 0.05)]
    [InlineData("Lab values of several runs", "a difference, by repeatability", 0.05)]
    [InlineData("Equivalence of lab means", "equivalent, the runs left out", 0.05)]
    public void A_habit_breaks_it_and_the_table_shows_it(string title, string claim, double rate) => Assert.Contains(
        RateTable.All.Single(table => table.Title == title).Run(Runs, Seed),
        found => found.Claim.EndsWith(claim, StringComparison.Ordinal) && !(found with { Promised = rate }).IsKept);

    [Fact]
    public void The_same_seed_gives_the_same_counts() => Assert.Equal(
        SwappedRates.Table.Run(50, 3).Select(rate => rate.Bad), SwappedRates.Table.Run(50, 3).Select(rate => rate.Bad));
}
