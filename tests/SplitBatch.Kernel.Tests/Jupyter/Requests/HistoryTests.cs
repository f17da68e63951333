using Xunit;

namespace SplitBatch.Kernel.Jupyter.Requests;

public class HistoryTests
{
    private static readonly History Four = new();

    static HistoryTests()
    {
        string[] cells = ["1 + 1", "var a = 2;", "1 + 1", "foo.Bar()"];
        foreach (var (index, cell) in cells.Index())
        {
            Four.Add(new HistoryEntry(index + 1, cell, null));
        }
    }

    [Fact]
    public void Tail_gives_the_last_cells_oldest_first() => Assert.Equal([3, 4], Lines(Four.Tail(2)));

    [Fact]
    public void Tail_of_more_than_there_are_gives_all() => Assert.Equal([1, 2, 3, 4], Lines(Four.Tail(100)));

    [Theory]
    [InlineData(0)]
    [InlineData(History.Session)]
    public void Range_stops_before_its_stop(int session) => Assert.Equal([2, 3], Lines(Four.Range(session, 2, 4)));

    [Fact]
    public void Range_of_another_session_is_empty() => Assert.Empty(Four.Range(7, 1, null));

    [Theory]
    [InlineData("1*", new[] { 1, 3 })]
    [InlineData("1 ? 1", new[] { 1, 3 })]
    [InlineData("foo.Bar()", new[] { 4 })]
    [InlineData("fooxBar()", new int[0])]
    [InlineData("*", new[] { 1, 2, 3, 4 })]
    public void Search_takes_a_pattern_for_the_whole_cell(string pattern, int[] lines) =>
        Assert.Equal(lines, Lines(Four.Search(pattern, null, unique: false)));

    [Fact]
    public void Unique_keeps_the_last_of_equal_cells() => Assert.Equal([2, 3, 4], Lines(Four.Search("*", null, unique: true)));

    [Fact]
    public void Search_can_be_cut_to_the_last_few() => Assert.Equal([3, 4], Lines(Four.Search("*", 2, unique: false)));

    private static int[] Lines(IEnumerable<HistoryEntry> entries) => [.. entries.Select(e => e.Line)];
}
