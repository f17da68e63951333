namespace SplitBatch.Numbers;

/// <summary>The root finder: as near as a double can say, in few steps even where false position would creep.</summary>
public class RootTests
{
    public static TheoryData<string, double, double, double> Functions => new()
    {
        { "cube", 0, 2, Math.Cbrt(2) },
        { "exponential", -50, 50, Math.Log(5) },
        { "step", -1, 1, 0.3 },
        { "flat", 0, 10, 1 },
        { "line", -3, 8, 0.25 },
        { "tiny", 0, 1, 1e-9 },
    };

    private static Func<double, double> Of(string name) => name switch
    {
        "cube" => x => (x * x * x) - 2,
        "exponential" => x => Math.Exp(x) - 5,
        "step" => x => Math.Atan(1000 * (x - 0.3)),
        "flat" => x => Math.Pow(x, 9) - 1,
        "tiny" => x => Math.Log((x + 1e-12) / (1e-9 + 1e-12)),
        _ => x => x - 0.25,
    };

    [Theory]
    [MemberData(nameof(Functions))]
    public void It_is_found_from_either_end_and_either_sign_in_few_steps(string name, double low, double high, double expected)
    {
        var f = Of(name);
        foreach (var (from, to) in new[] { (low, high), (high, low) })
        foreach (var sign in new[] { 1, -1 })
        {
            var steps = 0;
            var found = Root.Of(x => { steps++; return sign * f(x); }, from, to);
            Assert.Equal(expected, found, 4e-15 * Math.Max(1e-9, Math.Abs(expected)));
            Assert.InRange(steps, 2, 40);
        }
    }

    [Fact]
    public void A_root_at_an_end_is_that_end_and_no_change_of_sign_is_refused()
    {
        Assert.Equal(2, Root.Of(x => x - 2, 2, 5));
        Assert.Equal(5, Root.Of(x => x - 5, 2, 5));
        Assert.Throws<ArgumentException>(() => Root.Of(x => x, 2, 5));
        Assert.Throws<ArgumentException>(() => Root.Of(x => -x, 2, 5));
    }
}
