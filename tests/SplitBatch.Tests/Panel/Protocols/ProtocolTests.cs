using SplitBatch.Panel.Counting;

namespace SplitBatch.Panel.Protocols;

public class ProtocolTests
{
    // Quadrature with SciPy 1.10; triangle, duo-trio and tetrad also by simulation. At d' = 1 the four-figure values equal
    // the tables of Ennis (1993), The power of sensory discrimination methods (from memory).
    [Theory]
    [InlineData("2-AFC", 0.5, .63816320)]
    [InlineData("2-AFC", 1, .76024994)]
    [InlineData("2-AFC", 1.5, .85557782)]
    [InlineData("2-AFC", 2, .92135040)]
    [InlineData("2-AFC", 3, .98305257)]
    [InlineData("3-AFC", 0.5, .48259287)]
    [InlineData("3-AFC", 1, .63370205)]
    [InlineData("3-AFC", 1.5, .76581196)]
    [InlineData("3-AFC", 2, .86576718)]
    [InlineData("3-AFC", 3, .96879548)]
    [InlineData("duo-trio", 0.5, .52234700)]
    [InlineData("duo-trio", 1, .58247544)]
    [InlineData("duo-trio", 1.5, .66346219)]
    [InlineData("duo-trio", 2, .74682025)]
    [InlineData("duo-trio", 3, .87645670)]
    [InlineData("triangle", 0.5, .35583465)]
    [InlineData("triangle", 1, .41804667)]
    [InlineData("triangle", 1.5, .50645610)]
    [InlineData("triangle", 2, .60480693)]
    [InlineData("triangle", 3, .78142760)]
    [InlineData("tetrad", 0.5, .37771870)]
    [InlineData("tetrad", 1, .49380843)]
    [InlineData("tetrad", 1.5, .64093656)]
    [InlineData("tetrad", 2, .77766712)]
    [InlineData("tetrad", 3, .94297162)]
    public void The_psychometric_function_equals_published_and_independent_values(string name, double d, double expected) =>
        Assert.Equal(expected, Protocol.Parse(name).CorrectShare(d), 5.1e-9);

    // One million simulated sets each, grouped by the smallest sum of squares; printed to three digits, good to 0.001.
    [Theory]
    [InlineData(0.5, .129)]
    [InlineData(1, .213)]
    [InlineData(1.5, .336)]
    [InlineData(2, .478)]
    [InlineData(3, .733)]
    public void Two_out_of_five_equals_simulation(double d, double expected) =>
        Assert.Equal(expected, Protocol.TwoOutOfFive.CorrectShare(d), 1.5e-3);

    // B = n var(d'), from the same quadrature: pc (1 - pc) / slope^2.
    [Theory]
    [InlineData("2-AFC", 1, 3.77635)]
    [InlineData("3-AFC", 1, 2.77310)]
    [InlineData("duo-trio", 1, 11.16044)]
    [InlineData("triangle", 1, 9.99828)]
    [InlineData("tetrad", 1, 3.22287)]
    [InlineData("2-AFC", 3, 18.84584)]
    [InlineData("3-AFC", 3, 10.80121)]
    [InlineData("duo-trio", 0.5, 33.00953)]
    [InlineData("triangle", 0.5, 29.49630)]
    [InlineData("tetrad", 2, 2.92416)]
    public void The_slope_gives_the_published_variance_of_d_prime(string name, double d, double expected)
    {
        var protocol = Protocol.Parse(name);
        var share = protocol.CorrectShare(d);
        Assert.Equal(expected, share * (1 - share) / Math.Pow(protocol.Slope(d), 2), 5.1e-6);
    }

    public static TheoryData<string> Names => new(Protocol.All.Select(p => p.Name));

    [Theory]
    [MemberData(nameof(Names))]
    public void D_prime_inverts_the_psychometric_function_which_rises_from_chance_to_one(string name)
    {
        var protocol = Protocol.Parse(name);
        Assert.Equal(protocol.HasKnownChance ? protocol.Chance : 0.5, protocol.CorrectShare(0), 1e-12);
        Assert.Equal(1, protocol.CorrectShare(25), 1e-9);
        var before = protocol.CorrectShare(0);
        for (var d = 0.25; d < 5; d += name == "two-out-of-five" ? 1 : 0.25)
        {
            var share = protocol.CorrectShare(d);
            Assert.True(share > before, $"{name} at {d}");
            Assert.Equal(d, protocol.DPrime(share), 1e-7);
            const double step = 1e-4;
            Assert.Equal((protocol.CorrectShare(d + step) - protocol.CorrectShare(d - step)) / (2 * step), protocol.Slope(d), 1e-7);
            before = share;
        }

        Assert.Equal(0, protocol.DPrime(0.05));
        Assert.Equal(double.PositiveInfinity, protocol.DPrime(1));
    }

    [Theory]
    [InlineData("Triangle", "triangle")]
    [InlineData("TRIANGLE TEST", "triangle")]
    [InlineData("duotrio", "duo-trio")]
    [InlineData("Duo Trio", "duo-trio")]
    [InlineData("3AFC", "3-AFC")]
    [InlineData("2-afc", "paired directional")]
    [InlineData("a/not-a", "A-not-A")]
    [InlineData("two out of five", "two-out-of-five")]
    public void Names_are_read_as_people_write_them(string written, string name) => Assert.Equal(name, Protocol.Parse(written).Name);

    [Fact]
    public void An_unknown_name_is_refused_with_the_nearest_one_and_the_whole_list()
    {
        var error = Assert.Throws<ArgumentException>(() => Protocol.Parse("traingle"));
        Assert.StartsWith("\"traingle\" is not a protocol. Did you mean \"triangle\"? Accepted: triangle, duo-trio,", error.Message,
            StringComparison.Ordinal);
        var empty = Assert.Throws<ArgumentException>(() => Protocol.Parse(" "));
        Assert.StartsWith("The protocol is missing. Accepted: triangle", empty.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_protocol_without_a_known_chance_says_what_to_use_instead()
    {
        var error = Assert.Throws<NotApplicableException>(() => DifferenceTest.Of(Protocol.ANotA, 20, 11));
        Assert.Contains("YesNoTest", error.Message, StringComparison.Ordinal);
    }
}
