namespace SplitBatch;

public class GuardTests
{
    [Theory]
    [InlineData(-0.01)]
    [InlineData(1.2)]
    [InlineData(double.NaN)]
    public void A_share_outside_zero_to_one_is_refused_with_its_name_and_value(double power)
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => Guard.Share(power));
        Assert.StartsWith(FormattableString.Invariant($"power is {power}; it must be a share between 0 and 1 (30 % is 0.30)."),
            error.Message);
    }
}
