using Xunit;

namespace SplitBatch.Kernel.Jupyter.Wire;

public class CodePointsTests
{
    [Theory]
    [InlineData("abc", 2, 2)]
    [InlineData("\U0001F6E2a", 1, 2)]
    [InlineData("\U0001F6E2a", 2, 3)]
    [InlineData("½a", 2, 2)]
    [InlineData("", 0, 0)]
    public void Positions_convert_both_ways(string text, int codePoints, int utf16)
    {
        Assert.Equal(utf16, CodePoints.ToUtf16(text, codePoints));
        Assert.Equal(codePoints, CodePoints.FromUtf16(text, utf16));
    }

    [Fact]
    public void A_position_outside_moves_to_the_nearest_end()
    {
        Assert.Equal(3, CodePoints.ToUtf16("\U0001F6E2a", 99));
        Assert.Equal(0, CodePoints.ToUtf16("abc", -1));
        Assert.Equal(2, CodePoints.FromUtf16("\U0001F6E2a", 99));
    }

    [Fact]
    public void Half_a_pair_counts_as_one() => Assert.Equal(2, CodePoints.FromUtf16("\uD83Da", 2));
}
