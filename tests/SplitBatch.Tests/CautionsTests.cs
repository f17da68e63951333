namespace SplitBatch;

/// <summary>The one reviewed set of cautions: what it has to name, and that every step defers to whoever is licensed there.</summary>
public class CautionsTests
{
    public static TheoryData<string, string[]> Needed => new()
    {
        { "At the kettle", ["scalds", "foams over", "carbon monoxide", "outdoors only", "run dry", "liquids"] },
        { "In the cellar", ["carbon dioxide", "dry ice", "closed room", "pressure", "glass"] },
        { "When cleaning", ["Caustic", "acid", "chlorine", "never mix"] },
        { "In the laboratory", ["flammable", "lungs", "static", "waste", "sealed tubes", "fume hood", "trained", "ultraviolet"] },
        { "At the tasting", ["Adults only", "pregnant", "medicine", "Nobody who tasted drives", "allergens", "stop at any time"] },
        { "With people's answers", ["agree", "codes and not names", "consent", "personal data"] },
    };

    [Theory]
    [MemberData(nameof(Needed))]
    public void A_step_names_what_can_hurt_somebody(string step, string[] words)
    {
        var caution = Cautions.All.Single(one => one.Step == step);
        Assert.All(words, word => Assert.Contains(word, caution.ToString(), StringComparison.Ordinal));
        Assert.EndsWith("before this page.", caution.Sentences[^1], StringComparison.Ordinal);
    }

    [Fact]
    public void Every_step_is_among_those_that_were_reviewed() =>
        Assert.Equal(Needed.Select(row => (string)row[0]), Cautions.All.Select(one => one.Step));
}
