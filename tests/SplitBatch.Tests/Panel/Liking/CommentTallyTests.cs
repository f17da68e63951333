using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;

namespace SplitBatch.Panel.Liking;

public class CommentTallyTests
{
    // Invented comments.
    private static readonly Comment[] Comments =
    [
        new("T01", Side.A, "Bitter, bitter, and a bit harsh."),
        new("T01", Side.B, "Softer; not bitter at all"),
        new("T02", Side.A, "clean"),
        new("T02", Side.B, "Grassy and BITTER, tastes of pineapple"),
        new("T03", Side.B, "grass, long finish"),
    ];

    [Fact]
    public void Tasters_and_not_mentions_are_counted()
    {
        var tally = CommentTally.Of(Comments);
        var bitter = tally.Counts.Single(c => c.Descriptor.Name == "bitter");
        Assert.Equal((1, 1, 1), (bitter.A, bitter.B, bitter.Denied));
        Assert.Equal((1, 1), (bitter.OnlyA, bitter.OnlyB));
        var grassy = tally.Counts.Single(c => c.Descriptor.Name == "grassy or vegetal");
        Assert.Equal((0, 2, 0.5), (grassy.A, grassy.B, grassy.PValue));
        Assert.True(grassy.AdjustedPValue >= grassy.PValue);
        Assert.Contains(tally.Counts, c => c.Descriptor.Name == "lingering");
        Assert.Contains(tally.Counts, c => c.Descriptor.Name == "fruity");
        Assert.DoesNotContain(tally.Counts, c => c.Descriptor.Name == "resinous or pine");
    }

    [Fact]
    public void Comments_without_a_known_word_are_kept_for_a_person_to_read()
    {
        var tally = CommentTally.Of(Comments);
        Assert.Equal("clean", Assert.Single(tally.Uncaught).Text);
        Assert.Equal(5, tally.Comments);
        Assert.EndsWith("1 hold no known word.", tally.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Own_descriptors_take_the_place_of_the_common_ones()
    {
        var tally = CommentTally.Of(Comments, [new("clean", ["clean"])]);
        Assert.Equal("clean", Assert.Single(tally.Counts).Descriptor.Name);
        Assert.Equal(4, tally.Uncaught.Count);
    }
}
